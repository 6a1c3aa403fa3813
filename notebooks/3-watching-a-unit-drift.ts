/*
# Watching a unit drift

A strainer that clogs says so before any test fails: evacuation takes longer. Unit Q4 of the demo data does that; here is how the watch comes to call it, what it takes out
first, and when it could have been known.
*/
import { median } from 'simple-statistics';
import { panel, review, watch } from '../pipeline/index.ts';
import { joined, MONTH, reading, site } from './demo.ts';
import { chart, numberText, same, show, table } from './runner/show.ts';

const UNIT = 'Q4';
const drift = watch(joined);
const current = drift.probes.filter(({ unit, era }) => unit === UNIT && era.current);
const evacuation = current.find(({ probe }) => probe === 'evacuation_time')!;
const report = review(site, reading, MONTH).drift;
const reported = report.probes.find(
  ({ unit, probe, era }) => unit === UNIT && probe === 'evacuation_time' && era.current,
)!;
const DAY = 86_400_000;
const dateOf = (from: string, day: number) =>
  new Date(Date.parse(from) + day * DAY).toISOString().slice(0, 10);

/*
## The empty cycles

Loads differ, so production says little. Warm-up and air-removal test run each day with the same empty chamber: what changes in them is the unit, its steam or its water.
*/
const history = joined.histories.find(({ unit }) => unit === UNIT)!;
const tests = history.cycles.filter(
  ({ kind, evacuation_s, start }) =>
    kind === 'air_removal_test' && evacuation_s !== undefined && start >= Date.parse(evacuation.era.from),
);

show(
  chart(
    `${UNIT}: evacuation time of each air-removal test since the baseline was last reset`,
    `Points: cycles since ${evacuation.era.from}, as they stand in the export.`,
    {
      width: 600,
      height: 200,
      data: {
        values: tests.map(({ start, evacuation_s }) => ({
          date: new Date(start).toISOString().slice(0, 10),
          seconds: evacuation_s!,
        })),
      },
      mark: { type: 'point', size: 14 },
      encoding: {
        x: { field: 'date', type: 'temporal', title: null, axis: { format: '%b %Y' } },
        y: { field: 'seconds', type: 'quantitative', title: 'Evacuation time, s', scale: { zero: false } },
      },
    },
  ),
);

/*
## What moves all units

Steam pressure, water temperature and season move all units of a site on the same day. That movement is no fault of one unit: it is taken out, and reported by itself.
*/
const common = drift.sites.find(
  ({ site: id, probe }) => id === evacuation.site && probe === 'evacuation_time',
)!;

show(
  chart(
    `${evacuation.site}: what moved the evacuation time of all units`,
    'Line: per cent off the usual day.',
    {
      width: 600,
      height: 130,
      data: {
        values: common.day.map((day, at) => ({
          date: dateOf(common.from, day),
          percent: common.movement[at]!,
        })),
      },
      mark: { type: 'line', strokeWidth: 1 },
      encoding: {
        x: { field: 'date', type: 'temporal', title: null, axis: { format: '%b %Y' } },
        y: { field: 'percent', type: 'quantitative', title: 'Per cent' },
      },
    },
  ),
);

/*
## The unit by itself

What is left is the unit's own. The band is the level before the movement, plus and minus two standard deviations of a usual day; two charts (EWMA and CUSUM) add up small
steps in one direction, and the first of them to signal calls it.
*/
const { series, baseline } = evacuation;
const own = series.day.map((day, at) => ({
  date: dateOf(series.from, day),
  as_it_stands: series.value[at]!,
  seconds: series.adjusted[at]!,
}));

show(
  chart(
    `${UNIT}: evacuation time without the common movement`,
    `Points: values of the day. Band: usual days. Line: ${evacuation.since}, the first day off the level.`,
    {
      width: 600,
      height: 200,
      layer: [
        {
          data: {
            values: [{ from: own[0]!.date, to: own.at(-1)!.date, low: baseline!.low, high: baseline!.high }],
          },
          mark: { type: 'rect', color: '#d7e5ec' },
          encoding: {
            x: { field: 'from', type: 'temporal' },
            x2: { field: 'to' },
            y: { field: 'low', type: 'quantitative' },
            y2: { field: 'high' },
          },
        },
        {
          data: { values: own },
          mark: { type: 'point', size: 14 },
          encoding: {
            x: { field: 'date', type: 'temporal', title: null, axis: { format: '%b %Y' } },
            y: {
              field: 'seconds',
              type: 'quantitative',
              title: 'Evacuation time, s',
              scale: { zero: false },
            },
          },
        },
        {
          data: { values: [{ date: evacuation.since }] },
          mark: { type: 'rule', color: '#a4370f', strokeWidth: 1.5 },
          encoding: { x: { field: 'date', type: 'temporal' } },
        },
      ],
    },
  ),
);

const level = median(series.value.slice(-5));
show(
  same({
    state: [evacuation.state, reported.state],
    'off its level since': [evacuation.since, reported.since],
    'level now, s': [level, reported.level_now],
    'rate, s a week': [evacuation.rate_per_week!.value, reported.rate_per_week!.value],
  }),
);

/*
## How fast

A second opinion on the rate: the median of the slopes between all pairs of days since the movement began (Theil 1950, Sen 1968), which a few odd days can't turn. It should lie
near the report's, which is made on a logarithmic scale and stated at the present level.
*/
const moving = own
  .filter(({ date }) => date >= evacuation.since!)
  .map(({ date, seconds }) => ({ day: Date.parse(date) / DAY, seconds }));
const slopes = moving.flatMap((a, at) =>
  moving.slice(at + 1).map((b) => (b.seconds - a.seconds) / (b.day - a.day)),
);
const { value, low, high } = evacuation.rate_per_week!;
show(
  `By pairs of days: **${numberText(7 * median(slopes))} s** a week. In the report: ${numberText(value)} s, 90 % interval ${numberText(low)} to ${numberText(high)}.`,
);

/*
## The other probes

One probe that moves may have many causes. Several together make a pattern: evacuation and exhaust slow down while the leak rate stays. The hint is a hint, no diagnosis.
*/
show(
  table(`All probes of ${UNIT}`, current, {
    probe: ({ probe }) => probe.replaceAll('_', ' '),
    state: ({ state }) => state.replaceAll('_', ' '),
    since: ({ since }) => since ?? '',
    now: ({ level_now }) => level_now,
    'usual, low': ({ baseline: usual }) => usual?.low,
    'usual, high': ({ baseline: usual }) => usual?.high,
    measure: ({ measure }) => measure,
  }),
);
const { cause } = drift.units.find(({ unit }) => unit === UNIT)!;
show(`What the pattern fits best: **${cause?.fits_best.join(', or ') ?? 'nothing that is known'}**.`);

/*
## When could it have been known?

The panel can be cut at any month, so that a past day is judged with what was known then. No test of the unit failed in these months.
*/
const months = ['2026-06', '2026-07', '2026-08', '2026-09'].map((month) => {
  const then = watch(panel(site, reading, { month })).probes.find(
    ({ unit, probe, era }) => unit === UNIT && probe === 'evacuation_time' && era.current,
  )!;
  return { month, ...then };
});
show(
  table(`${UNIT}, evacuation time, as it would have been told at the end of each month`, months, {
    month: ({ month }) => month,
    state: ({ state }) => state.replaceAll('_', ' '),
    since: ({ since }) => since ?? '',
    'level, s': ({ level_now }) => level_now,
    's a week': ({ rate_per_week }) => rate_per_week?.value,
  }),
);
const failed = history.tests.filter(
  ({ result, time }) => result === 'fail' && time >= Date.parse(evacuation.since!),
);
show(same({ 'failed tests since it began': [failed.length, 0] }));
show('No flag does not mean no fault: a fault that comes at once gives no drift.');
