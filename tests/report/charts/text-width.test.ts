import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../pipeline/report/charts/text-width.ts';

describe('textWidth', () => {
  // Adobe Core 14 font metrics, Helvetica: H 722, e 556, l 222, o 556 thousandths; times 1.15 for the widest common system fonts.
  it('sums the advance widths of Helvetica with room for wider fonts', () => {
    expect(textWidth('Hello', 100)).toBeCloseTo((72.2 + 55.6 + 22.2 + 22.2 + 55.6) * 1.15, 10);
  });

  it('takes bold text as wider', () => {
    expect(textWidth('Hello', 12, true)).toBeGreaterThan(textWidth('Hello', 12));
  });
});
