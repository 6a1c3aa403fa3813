import { expect, it } from 'vitest';
import { historyChart } from '../../../pipeline/report/charts/history.ts';
import { renderChart } from '../../../pipeline/report/charts/render-chart.ts';
import type { HistoryRow } from '../../../pipeline/report/rows/history-rows.ts';

const SERVICE: HistoryRow = {
  unit: 'B1',
  lane: 'service',
  lane_label: 'service',
  from: '2025-03-03',
  to: '2025-03-03',
  mark: 'event',
  detail: 'controller_replaced',
  detail_label: 'control replaced',
  count: 1,
  told: 'control replaced',
};
const OPTIONS = {
  timeTitle: 'Operating day',
  from: '2025-01-01',
  to: '2025-06-30',
  monthFrom: '2025-06-01',
  lanes: ['Cleaning', 'Failed test'],
  contradictedLetter: 'C',
  months: [{ date: '2025-01-01', label: ['Jan'] }],
};

it('keeps its lanes where a unit has nothing but service in its record', async () => {
  const { svg, height } = await renderChart(historyChart([SERVICE], OPTIONS), {
    id: 'history',
    title: 'History',
    description: 'History of B1',
  });
  expect(String(svg)).toContain('>Cleaning</text>');
  expect(String(svg)).toContain('>control replaced</text>');
  expect(height).toBeGreaterThan(2 * 24);
});
