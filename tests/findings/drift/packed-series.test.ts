import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { packSeries, unpackSeries } from '../../../pipeline/findings/drift/packed-series.ts';
import { rounded } from '../../../pipeline/findings/drift/robust.ts';

const value = fc.double({ noNaN: true, noDefaultInfinity: true }).map(rounded);
const series = fc.array(fc.tuple(fc.integer({ min: 0, max: 7000 }), value, value)).map((rows) => ({
  from: '2024-02-01',
  day: rows.map(([day]) => day),
  value: rows.map(([, of]) => of),
  adjusted: rows.map(([, , of]) => of),
  left_out: [{ day: 3, value: 0.1, why: 'stuck' as const }],
}));

it('gives back a series as it was, written as the same text, after it went to another thread', () => {
  fc.assert(
    fc.property(series, (of) => {
      const again = unpackSeries(structuredClone(packSeries(of)));
      expect({ ...again }).toStrictEqual(of);
      expect(structuredClone(again)).toStrictEqual(of);
      expect(JSON.stringify(again)).toBe(JSON.stringify(of));
    }),
  );
});

it('takes two bytes for a time in seconds with four digits', () => {
  const packed = packSeries({
    from: '2024-02-01',
    day: [0, 1, 400],
    value: [298.4, 301, 1204],
    adjusted: [300.2, 300.1, 1199],
    left_out: [],
  });
  for (const numbers of [packed.day, packed.value, packed.adjusted])
    expect(numbers.values.BYTES_PER_ELEMENT).toBe(2);
});
