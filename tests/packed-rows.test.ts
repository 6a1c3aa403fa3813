import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PackedRows, packRows, unpackRows } from '../pipeline/packed-rows.ts';

/** The rows as objects of their own, since views only compare by what is read of them. */
function plain<Row extends object>(packed: PackedRows<Row>): Row[] {
  return unpackRows(packed).map(
    (row) => Object.fromEntries(packed.columns.map(([name]) => [name, row[name]])) as Row,
  );
}

describe('packed rows', () => {
  it('give back any rows of numbers, texts and nothing', () => {
    const number = fc.oneof(
      fc.double({ noNaN: true }),
      fc.integer({ min: -130, max: 130 }),
      fc.integer({ min: -32770, max: 32770 }),
      fc.integer(),
      fc.constantFrom(60_000, -1000, 2 ** 52, -128, 127, -32768, 32767, -(2 ** 31), 2 ** 31, -0),
    );
    const row = fc.record(
      {
        number: fc.option(number, { nil: null }),
        text: fc.option(fc.string(), { nil: undefined }),
        nothing: fc.constant(null),
      },
      { noNullPrototype: true },
    );
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        const packed = packRows(rows, ['number', 'text', 'nothing']);
        expect(plain(structuredClone(packed))).toStrictEqual(rows);
      }),
    );
  });

  it.each([
    [[-127, 127, null], 1],
    [[-128], 2],
    [[32_767, null], 2],
    [[-32_768], 4],
    [[2 ** 31 - 1], 4],
    [[-(2 ** 31)], 8],
    [[Date.UTC(2040, 0, 1, 6, 30), null], 4],
    [[Date.UTC(2026, 0, 1, 6, 30, 1)], 4],
    [[Date.UTC(2026, 0, 1, 6, 30, 1, 5)], 8],
    [[0.5, -12.7], 1],
    [[0.001234, 123.4], 4],
    [[0.1 + 0.2], 8],
    [[-0], 8],
  ])('take as few bytes as hold %j', (numbers, bytes) => {
    const rows = (numbers as (number | null)[]).map((number) => ({ number }));
    const packed = packRows(rows, ['number']);
    expect(packed.columns[0]![1].values.BYTES_PER_ELEMENT).toBe(bytes);
    expect(plain(packed)).toStrictEqual(rows);
  });

  it('are read only', () => {
    const [row] = unpackRows(packRows([{ number: 1 }], ['number']));
    expect(() => {
      row!.number = 2;
    }).toThrow(TypeError);
    expect({ ...row }).toStrictEqual({});
  });

  it('refuse what they could not give back', () => {
    expect(() => packRows([{ a: 1 }, { a: 'x' }], ['a'])).toThrow('found x');
    expect(() => packRows([{ a: null }, { a: undefined }], ['a'])).toThrow('found undefined');
    expect(() => packRows([{ a: 1 }, { a: Number.NaN }], ['a'])).toThrow('found NaN');
    expect(() => packRows([{ a: true }], ['a'])).toThrow('found true');
  });
});
