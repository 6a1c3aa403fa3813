import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packRows, unpackRows } from '../pipeline/packed-rows.ts';

describe('packed rows', () => {
  it('give back any rows of numbers, texts and nothing', () => {
    const row = fc.record(
      {
        number: fc.option(fc.double({ noNaN: true }), { nil: null }),
        text: fc.option(fc.string(), { nil: undefined }),
        nothing: fc.constant(null),
      },
      { noNullPrototype: true },
    );
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        const packed = packRows(rows, ['number', 'text', 'nothing']);
        expect(unpackRows(structuredClone(packed))).toStrictEqual(rows);
      }),
    );
  });

  it('refuse what they could not give back', () => {
    expect(() => packRows([{ a: 1 }, { a: 'x' }], ['a'])).toThrow('found x');
    expect(() => packRows([{ a: null }, { a: undefined }], ['a'])).toThrow('found undefined');
    expect(() => packRows([{ a: 1 }, { a: Number.NaN }], ['a'])).toThrow('found NaN');
    expect(() => packRows([{ a: true }], ['a'])).toThrow('found true');
  });
});
