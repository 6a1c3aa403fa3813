import fc from 'fast-check';
import { expect, it } from 'vitest';
import { outermost } from '../../../pipeline/ingest/receipts/receipt.ts';

it('keeps the five least and five greatest numbers, each once, the same by files and of all at once', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 80 }), fc.nat(80), (values, at) => {
      const sorted = [...new Set(values)].sort((a, b) => a - b);
      const expected = sorted.length > 10 ? [...sorted.slice(0, 5), ...sorted.slice(-5)] : sorted;
      expect(outermost(values)).toEqual(expected);
      expect(outermost([...outermost(values.slice(0, at)), ...outermost(values.slice(at))])).toEqual(
        expected,
      );
    }),
  );
});
