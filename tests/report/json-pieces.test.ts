import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonPieces } from '../../pipeline/report/json-pieces.ts';

describe('JSON in pieces', () => {
  it('is the JSON of the language, whatever the data', () => {
    const member = fc.oneof(fc.jsonValue(), fc.constant(undefined), fc.string());
    const value = fc.oneof(fc.dictionary(fc.string(), member), fc.array(member));
    fc.assert(
      fc.property(value, (data) => {
        expect([...jsonPieces(data)].join('')).toBe(JSON.stringify(data, null, 2));
      }),
      { numRuns: 500 },
    );
  });

  it('gives the members of lists one by one', () => {
    const pieces = [...jsonPieces({ series: { list: [{ a: 1 }, { a: 2 }] } })];
    expect(pieces.filter((piece) => piece.includes('"a"'))).toHaveLength(2);
  });
});
