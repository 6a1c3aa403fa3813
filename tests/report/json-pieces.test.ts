import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonIndentedPieces, jsonLinePieces, jsonPieces } from '../../pipeline/report/json-pieces.ts';

describe('JSON in pieces', () => {
  it('is the JSON of the data, whatever they are', () => {
    const member = fc.oneof(fc.jsonValue(), fc.constant(undefined), fc.string());
    const value = fc.oneof(fc.dictionary(fc.string(), member), fc.array(member));
    fc.assert(
      fc.property(value, (data) => {
        const text = [...jsonPieces(data)].join('');
        expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(data));
        expect([...jsonLinePieces(data)].join('')).toBe(JSON.stringify(data));
        expect([...jsonIndentedPieces(data)].join('')).toBe(JSON.stringify(data, null, 2));
      }),
      { numRuns: 500 },
    );
  });

  it('has a line for each row', () => {
    const text = [
      ...jsonPieces({ series: { list: [{ a: [1, null], b: '[\n1]' }, { a: [] }], n: 3 }, of: [] }),
    ];
    expect(text.join('')).toBe(
      '{\n  "series": {\n    "list": [\n      {"a":[1,null],"b":"[\\n1]"},\n      {"a":[]}\n    ],\n    "n": 3\n  },\n  "of": []\n}',
    );
  });

  it('gives the members of lists one by one', () => {
    const pieces = [...jsonPieces({ series: { list: [{ a: 1 }, { a: 2 }] } })];
    expect(pieces.filter((piece) => piece.includes('"a"'))).toHaveLength(2);
  });
});
