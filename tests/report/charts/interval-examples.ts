import { intervalAppearanceChart } from '../../../pipeline/report/charts/interval-appearance.ts';
import { intervalClockChart } from '../../../pipeline/report/charts/interval-clock.ts';
import { intervalCumulativeChart } from '../../../pipeline/report/charts/interval-cumulative.ts';
import { intervalCurveChart } from '../../../pipeline/report/charts/interval-curve.ts';
import { intervalWeekChart } from '../../../pipeline/report/charts/interval-week.ts';
import { toldText } from '../../../pipeline/report/charts/told.ts';
import type { ChartExample } from './examples.ts';

const CLASSES = ['0 to 6', '7 to 13', '14 to 20', '21 to 27', '28 or more'];
const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const told = (tip: string, unit = ''): string => toldText({ unit, tip });

/** Charts of the case for a cleaning interval, with rows written by hand. */
export function intervalExamples(): ChartExample[] {
  const appearance = CLASSES.flatMap((class_label, index) =>
    [8 - index, index].map((count, score) => ({
      class_label,
      score: score * 2,
      from_count: score === 0 ? 0 : 8 - index,
      to_count: score === 0 ? count : 8,
      middle: score === 0 ? count / 2 : 8 - index / 2,
      label: String(score * 2),
      told: told(`${class_label}: ${count} with ${score * 2}`),
    })),
  ).filter((row) => row.to_count > row.from_count);
  const clock = CLASSES.map((class_label, index) => ({
    class_label,
    per_100: index === 4 ? null : 1 + index,
    low: index === 4 ? null : 0.4 + index / 2,
    high_drawn: index === 4 ? null : Math.min(8, 3 + index * 2),
    arrow_high: index === 3 ? 8 : null,
    fitted_per_100: 1.2 + index * 0.9,
    label: index === 4 ? 'no days' : `${1 + index} of 100`,
    told: told(class_label),
  }));
  const cumulative = Array.from({ length: 12 }, (_, index) => ({
    at: index * 3,
    observed: (index * index) / 100,
    low: (index * index) / 160,
    high_drawn: (index * index) / 60,
    fitted: (index * index) / 105,
    told: told(`up to ${index * 3}`),
  }));
  const curve = Array.from({ length: 40 }, (_, index) => {
    const interval = index + 5;
    const value = 900 / interval + interval * 3;
    return { interval, value, low: value * 0.8, high_drawn: value * 1.3, told: told(`${interval} days`) };
  });
  const week = ['A1', 'A2', 'A3'].flatMap((unit, of) =>
    Array.from({ length: 7 * 9 }, (_, index) => {
      const hour = Math.floor(index / 9) * 24 + 7 + (index % 9);
      const share = ((index * 7 + of * 3) % 11) / 10;
      return { unit, hour, hour_end: hour + 1, share, told: told(`hour ${hour}`, unit) };
    }),
  );
  return [
    {
      name: 'interval-appearance',
      rows: appearance,
      spec: intervalAppearanceChart(appearance, {
        classes: CLASSES,
        clockTitle: 'Days since cleaning',
        countTitle: 'Inspections',
      }),
    },
    {
      name: 'interval-clock',
      rows: clock,
      spec: intervalClockChart(clock, {
        valueTitle: 'Failures per 100 days',
        clockTitle: 'Days since cleaning',
        max: 8,
      }),
    },
    {
      name: 'interval-cumulative',
      rows: cumulative,
      spec: intervalCumulativeChart(cumulative, {
        clockTitle: 'Days since cleaning',
        valueTitle: 'Expected failures',
        observedName: 'record',
        fittedName: 'fit',
      }),
    },
    {
      name: 'interval-curve',
      rows: curve,
      spec: intervalCurveChart(curve, {
        intervalTitle: 'Interval, days',
        valueTitle: 'Hours a year',
        range: { low: 14, high: 21 },
        marks: [{ interval: 17, value: 104, name: 'best: 17' }],
        max: 300,
      }),
    },
    {
      name: 'interval-week',
      rows: week,
      spec: intervalWeekChart(week, {
        units: ['A1', 'A2', 'A3'],
        days: DAYS,
        title: 'Hour of the week',
        shareTitle: 'Share of weeks in use',
        labelWidth: 40,
      }),
    },
  ];
}
