import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonPieces } from '../../pipeline/report/json-pieces.ts';

describe('JSON in pieces', () => {
  it('is the JSON of the language, whatever the data, but for lists of numbers far inside', () => {
    const member = fc.oneof(fc.jsonValue(), fc.constant(undefined), fc.string());
    const value = fc.oneof(fc.dictionary(fc.string(), member), fc.array(member));
    fc.assert(
      fc.property(value, (data) => {
        const text = [...jsonPieces(data)].join('');
        expect(JSON.stringify(JSON.parse(text), null, 2)).toBe(JSON.stringify(data, null, 2));
        const plain = JSON.stringify(data, null, 2);
        if (!/\[\n[^[\]{}"]*\]/.test(plain)) expect(text).toBe(plain);
      }),
      { numRuns: 500 },
    );
  });

  it('has lists of numbers on one line', () => {
    const text = [...jsonPieces({ series: { list: [{ a: [1, null, -2.5e-7], b: [['[\n1]']] }] } })].join('');
    expect(text.split('\n').map((line) => line.trim())).toContain('"a": [1, null, -2.5e-7],');
    expect(text).toContain('"[\\n1]"');
  });

  it('gives the members of lists one by one', () => {
    const pieces = [...jsonPieces({ series: { list: [{ a: 1 }, { a: 2 }] } })];
    expect(pieces.filter((piece) => piece.includes('"a"'))).toHaveLength(2);
  });
});
