/*
# How a verdict is made

From the rows of the exports to the word *shown* beside one unit of the demo data: unit Q2, and whether its air-removal tests fail more often while the chamber
is overdue for cleaning. Each number is made here once more in a few lines and compared with the report's; where they differ, this notebook fails.
*/
import { readFile } from 'node:fs/promises';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import {
  benjaminiHochberg,
  circularShiftTest,
  compare,
  review,
  stratifiedRatio,
  stratify,
  sumSide,
  type UnitDay,
} from '../pipeline/index.ts';
import { FOLDER, joined, MONTH, reading, site } from './demo.ts';
import { chart, numberText, same, show, table } from './runner/show.ts';

const UNIT = 'Q2';
const report = review(site, reading, MONTH);
const verdict = report.comparisons.find(({ id }) => id === `${UNIT}/chamber_overdue/failed_test`)!;

/*
## The row

A record knows where it came from. Here is a failed test of the unit that counted, as it stands in the export and as it was read. Times are milliseconds since 1970 in
UTC; the site file says on which clock the export was written.
*/
const days = joined.panel.filter((row) => row.unit === UNIT);
const failedDay = days.find((row) => row.failed === 1 && row.chamber_overdue === 1 && row.at_risk === 1)!;
const test = joined.histories
  .find(({ unit }) => unit === UNIT)!
  .tests.find(({ day, result }) => day === failedDay.day && result === 'fail')!;
const lines = (await readFile(`${FOLDER}/${test.origin.file}`, 'utf8')).split(/\r?\n/);
show(`In \`${test.origin.file}\`, row ${test.origin.row}: \`${lines[test.origin.row - 1]}\``);
show(
  table(
    'The same row as a record',
    Object.entries(test).filter(([, value]) => typeof value === 'string' || typeof value === 'number'),
    { field: ([name]) => name, value: ([, value]) => String(value) },
  ),
);

/*
## The day

Records are joined to a panel with one row for each unit and day of use. What counts is what held when the day's first cycle started: a cleaning later that day
changes nothing. This is the row of the same day.
*/
const fields =
  /^(?:date|era|stratum|test_result|at_risk|failed|chamber_(?:clock_days|days_past_due|overdue))$/;
show(
  table(
    'One row of the panel, the fields that matter here',
    Object.entries(failedDay).filter(([name]) => fields.test(name)),
    { field: ([name]) => name, value: ([, value]) => String(value) },
  ),
);

/*
## Days that enter

A day enters when it has a day result, is not inside a failure episode that began before, and the unit was in service: only such a day could have failed. And it must be
known whether the chamber was overdue, which it is not before the first cleaning on record.
*/
const atRisk = days.filter((row) => row.at_risk === 1);
const known = atRisk.filter((row) => row.chamber_overdue !== null);
show(
  same({
    'days left out, not at risk': [days.length - atRisk.length, verdict.days_left_out.not_at_risk],
    'days left out, not known': [atRisk.length - known.length, verdict.days_left_out.exposure_unknown],
  }),
);

show(
  chart(
    `${UNIT}: overdue spells and failed tests`,
    'Bars: days on which the chamber was overdue. Diamonds: failed day results at risk.',
    {
      width: 600,
      height: 60,
      data: { values: known.map(({ date, chamber_overdue, failed }) => ({ date, chamber_overdue, failed })) },
      encoding: { x: { field: 'date', type: 'temporal', title: null, axis: { format: '%b %Y' } } },
      layer: [
        {
          transform: [{ filter: 'datum.chamber_overdue == 1' }],
          mark: { type: 'tick', color: '#f0b95b', thickness: 1.5, size: 40 },
        },
        {
          transform: [{ filter: 'datum.failed == 1' }],
          mark: { type: 'point', shape: 'diamond', size: 80, color: '#a4370f' },
        },
      ],
    },
  ),
);

/*
## Strata

Overdue days are compared with days in time of the same unit and the same half year, inside an era: between two events that reset the unit's baseline. So a bad year, or a
unit that is worse than others, does not speak for cleaning.
*/
const count = (rows: readonly UnitDay[], overdue: 0 | 1) => {
  const side = rows.filter((row) => row.chamber_overdue === overdue);
  return { days: side.length, failed: side.filter((row) => row.failed === 1).length };
};
const nameOf = ({ era, stratum }: UnitDay) => `${era}.${stratum}`;
const strata = [...new Set(known.map(nameOf))].map((name) => {
  const rows = known.filter((row) => nameOf(row) === name);
  return {
    name,
    from: rows[0]!.date,
    to: rows.at(-1)!.date,
    overdue: count(rows, 1),
    inTime: count(rows, 0),
  };
});
show(
  table('Days and failures by stratum', strata, {
    'era.part': ({ name }) => name,
    days: ({ from, to }) => `${from} to ${to}`,
    'overdue, days': ({ overdue }) => overdue.days,
    'overdue, failed': ({ overdue }) => overdue.failed,
    'in time, days': ({ inTime }) => inTime.days,
    'in time, failed': ({ inTime }) => inTime.failed,
  }),
);

const total = (of: (stratum: (typeof strata)[number]) => number) =>
  strata.reduce((sum, one) => sum + of(one), 0);
show(
  same({
    'overdue, days': [total(({ overdue }) => overdue.days), verdict.exposed.days],
    'overdue, failed': [total(({ overdue }) => overdue.failed), verdict.exposed.events],
    'in time, days': [total(({ inTime }) => inTime.days), verdict.unexposed.days],
    'in time, failed': [total(({ inTime }) => inTime.failed), verdict.unexposed.events],
  }),
);

/*
## The ratio

With paper and pencil: Mantel and Haenszel's odds ratio (1959) over the strata, failed overdue times passed in time over failed in time times passed overdue, each stratum
weighted by its size. Within one unit the counts are small, so that the report gives the exact conditional estimate and interval in its place; both should lie near one
another.
*/
const size = (stratum: (typeof strata)[number]) => stratum.overdue.days + stratum.inTime.days;
const byHand =
  total((one) => (one.overdue.failed * (one.inTime.days - one.inTime.failed)) / size(one)) /
  total((one) => (one.inTime.failed * (one.overdue.days - one.overdue.failed)) / size(one));
show(`By hand, Mantel-Haenszel: an odds ratio of **${numberText(byHand)}**.`);

const sorted = stratify(days, 'chamber_overdue', 'failed_test', 'site');
const ratio = stratifiedRatio(sorted.strata, 'failed_test', 'unit', site.rules.comparison.level);
show(
  same({
    'exact odds ratio': [ratio.ratio, verdict.ratio],
    'lower end of its interval': [ratio.low, verdict.low],
    'upper end': [ratio.high, verdict.high],
  }),
);

/*
## Could it be chance?

Failures come in spells and so does being overdue, so that days are not independent throws. The test therefore shifts: in each stratum the overdue days are moved along the
calendar, wrapping round, and the failures stay. That keeps both in their spells and breaks whatever ties them. Compared is the number of failures on overdue days beyond
those expected by the stratum's shares.
*/
function excess(overdue: ArrayLike<number>, failed: ArrayLike<number>, shift: number): number {
  const n = overdue.length;
  let [exposed, failures, both] = [0, 0, 0];
  for (let day = 0; day < n; day++) {
    const held = overdue[(day + shift) % n]!;
    exposed += held;
    failures += failed[day]!;
    both += held * failed[day]!;
  }
  return both - (exposed * failures) / n;
}

const series = sorted.strata.map((stratum) => stratum.series);
const observed = series.reduce((sum, one) => sum + excess(one.exposure, one.events, 0), 0);
const random = xoroshiro128plus(7);
const draw = (n: number) => Math.floor(((random.next() >>> 0) / 2 ** 32) * n);
const shifted = Array.from({ length: 4000 }, () =>
  series.reduce((sum, one) => sum + excess(one.exposure, one.events, draw(one.events.length)), 0),
);
const asHigh = shifted.filter((value) => value >= observed - 1e-9).length;

show(
  chart(
    'Failures on overdue days beyond those expected, over 4000 shifts',
    'Bars: shifts of the calendar. Line: the record as it stands.',
    {
      width: 560,
      height: 180,
      layer: [
        {
          data: { values: shifted.map((value) => ({ value })) },
          mark: { type: 'bar' },
          encoding: {
            x: { field: 'value', bin: { step: 1 }, title: 'Excess of failures on overdue days' },
            y: { aggregate: 'count', title: 'Shifts' },
          },
        },
        {
          data: { values: [{ value: observed }] },
          mark: { type: 'rule', color: '#a4370f', strokeWidth: 2.5 },
          encoding: { x: { field: 'value', type: 'quantitative' } },
        },
      ],
    },
  ),
);

const { shifts: maxShifts, seed } = site.rules.comparison;
const tested = circularShiftTest(series, { design: 'events-of-trials', maxShifts, seed });
show(
  `Here ${asHigh} of ${shifted.length} shifts reach what was seen, ${numberText(observed)}. The report draws ${verdict.shifts} with a fixed seed, counts both directions and the record itself.`,
);
show(same({ 'p of the shift test': [tested.computable ? tested.pValue : null, verdict.p] }));

/*
## Would anything have moved?

Aborts for want of steam, because of a door or by the operator have nothing to do with a dirty chamber. If they too rose on overdue days, those days would be worse for another
reason, and the verdict would fall by one step.
*/
const control = stratify(days, 'chamber_overdue', 'unrelated_abort', 'site').strata;
const controlRatio = stratifiedRatio(control, 'unrelated_abort', 'unit', site.rules.comparison.level);
const [overdue, inTime] = [sumSide(control, 'exposed'), sumSide(control, 'unexposed')];
show(same({ 'ratio of their rates': [controlRatio.ratio, verdict.control.ratio] }));
show(
  `Overdue: ${overdue.events} such aborts of ${overdue.trials} production cycles. In time: ${inTime.events} of ${inTime.trials}. The interval of the ratio runs from ${numberText(controlRatio.low)} to ${numberText(controlRatio.high)}: it ${verdict.control.moved ? 'moved' : 'did not move'}.`,
);

/*
## One of many questions

Each review asks this of each unit, exposure and outcome. With so many questions some p are small by chance alone; Benjamini and Hochberg's adjustment (1995) allows for that.
*/
const family = compare(joined).comparisons.filter(({ adjusted_p }) => adjusted_p !== null);
const adjusted = benjaminiHochberg(family.map(({ p }) => p!)).adjusted;
show(
  same({
    'questions of the family': [family.length, report.family_size],
    'adjusted p': [adjusted[family.findIndex(({ id }) => id === verdict.id)]!, verdict.adjusted_p],
  }),
);

const ranked = family.map(({ p }) => p!).sort((a, b) => a - b);

show(
  chart(
    'All p of the family in order, and the line that they are held against',
    'Points: p. Line: rank over size of the family, times 0.05. A point under the line, and all before it, pass.',
    {
      width: 560,
      height: 220,
      data: { values: ranked.map((p, at) => ({ rank: at + 1, p, line: (0.05 * (at + 1)) / ranked.length })) },
      encoding: { x: { field: 'rank', type: 'quantitative', title: 'Rank' } },
      layer: [
        {
          mark: { type: 'point', size: 30 },
          encoding: {
            y: { field: 'p', type: 'quantitative', scale: { type: 'log' }, title: 'p (log scale)' },
          },
        },
        {
          mark: { type: 'line', color: '#a4370f' },
          encoding: { y: { field: 'line', type: 'quantitative' } },
        },
      ],
    },
  ),
);

/*
## The verdict

*Shown* asks for three things: an interval that lies above 1, an adjusted p at or under 0.05, and a control outcome that stayed still. How often that word is wrong where
nothing is going on is the subject of [the last notebook](5-when-nothing-is-going-on.html).
*/
const conditions = [
  { asked: 'interval above 1', holds: verdict.low !== null && verdict.low > 1 },
  { asked: 'adjusted p at or under 0.05', holds: verdict.adjusted_p !== null && verdict.adjusted_p <= 0.05 },
  { asked: 'control outcome still', holds: !verdict.control.moved },
];
show(table('What was asked', conditions, { asked: ({ asked }) => asked, holds: ({ holds }) => holds }));
show(
  same({ verdict: [conditions.every(({ holds }) => holds) ? 'shown' : 'something else', verdict.verdict] }),
);
show(
  'An association may have other causes: workload, steam, repairs. It is a reason to look at the unit, not the proof that cleaning would have prevented a failure.',
);
