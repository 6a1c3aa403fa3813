import { describe, expect, it } from 'vitest';
import type { ChartRuntimes } from '../../../pipeline/report/charts/chart-runtimes.ts';
import { clockHistogramChart } from '../../../pipeline/report/charts/clock-histogram.ts';
import { renderChart } from '../../../pipeline/report/charts/render-chart.ts';
import type { HistogramRow } from '../../../pipeline/report/rows/histogram-rows.ts';

/** A bar of so many days. */
function histogram(days: number, clockTitle = 'days') {
  const bar = { class_label: '1 to 7', result: 'passed', from_count: 0, to_count: days, label: '', told: '' };
  return clockHistogramChart([bar as unknown as HistogramRow], { clockTitle, daysTitle: 'n' });
}
const text = { id: 'figure', title: 'Days', description: 'Days since the last cleaning' };
const drawn = async (days: number, runtimes: ChartRuntimes, title?: string): Promise<string> =>
  (await renderChart(histogram(days, title), text, runtimes)).svg.toString();

describe('charts of one shape', () => {
  it('are compiled once, whatever their rows and the ends of their scales, and drawn as each by itself', async () => {
    const together: ChartRuntimes = new Map();
    for (const days of [3, 40, 700, 40])
      expect(await drawn(days, together)).toBe(await drawn(days, new Map()));
    expect(together.size).toBe(1);
    expect(await drawn(3, together)).not.toBe(await drawn(40, together));
  });

  it('are not those whose words differ', async () => {
    const together: ChartRuntimes = new Map();
    await drawn(3, together);
    await drawn(3, together, 'weeks');
    expect(together.size).toBe(2);
  });
});
