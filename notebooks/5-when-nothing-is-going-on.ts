/*
# When nothing is going on

A tool that finds something each month is of no use. How often are its answers wrong where nothing is there to be found? First what was measured on many simulated fleets and is
kept with this version, then a small fleet of your own, so that you can see how it is done.
*/
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import {
  benjaminiHochberg,
  calibration,
  clopperPearsonInterval,
  compareBy,
  review,
  type UnitDay,
} from '../pipeline/index.ts';
import { joined, MONTH, reading, site } from './demo.ts';
import { chart, numberText, same, show, table } from './runner/show.ts';

const kept = calibration();

/*
## Verdicts on simulated fleets

Each scenario is a way in which records can look as if cleaning mattered though it does not: bad spells, cleaning after failures, busy units, false records. The share is that of
fleets with at least one *shown* that was wrong. In the last scenarios an effect was built into some units: there only a *shown* where none was built in counts as wrong, and the last column says
how many of the effects were shown.
*/
const scenarios = kept.comparisons?.scenarios ?? [];
show(
  table('Fleets with a wrong "shown"', scenarios, {
    scenario: ({ scenario }) => scenario,
    'what it is': ({ says }) => says,
    fleets: ({ false_shown }) => false_shown.of,
    wrong: ({ false_shown }) => false_shown.count,
    'up to, per cent': ({ false_shown }) => 100 * false_shown.high,
    'effects found, per cent': ({ units_shown }) => (units_shown === null ? null : 100 * units_shown.share),
  }),
);
const [first] = scenarios;
const ofReview = review(site, reading, MONTH).operating_characteristics?.scenarios[0];
const again = clopperPearsonInterval(first!.false_shown.count, first!.false_shown.of);
show(
  same({
    'wrong fleets of the first scenario': [first!.false_shown.count, ofReview!.false_shown.count],
    'its exact interval, upper end': [
      again.computable ? Number(again.interval.high.toFixed(4)) : null,
      ofReview!.false_shown.high,
    ],
  }),
);

show(
  chart('Share of fleets with a wrong "shown"', 'Points with exact 95 % intervals, per cent.', {
    width: 480,
    height: { step: 24 },
    data: {
      values: scenarios.map(({ scenario, false_shown }) => ({
        scenario,
        share: 100 * false_shown.share,
        low: 100 * false_shown.low,
        high: 100 * false_shown.high,
      })),
    },
    layer: [
      {
        mark: { type: 'rule' },
        encoding: {
          y: { field: 'scenario', type: 'nominal', sort: null, title: null },
          x: { field: 'low', type: 'quantitative', title: 'Per cent of fleets' },
          x2: { field: 'high' },
        },
      },
      {
        mark: { type: 'point', size: 50 },
        encoding: {
          y: { field: 'scenario', type: 'nominal', sort: null },
          x: { field: 'share', type: 'quantitative' },
        },
      },
    ],
  }),
);

/*
## The watch and the interval

The drift watch was measured by its false calls in a unit's year, the case for an interval by how often it called earlier cleaning supported where the clock does nothing. What was not
measured is not claimed.
*/
const driftScenarios = kept.drift?.scenarios ?? [];
const intervalScenarios = (kept.interval?.scenarios ?? []).filter(({ shape }) => shape === 1);
show(
  driftScenarios.length === 0
    ? 'Of the drift watch no measurement is kept with this version.'
    : table('False calls of a movement', driftScenarios, {
        scenario: ({ scenario }) => scenario,
        'unit years': ({ unit_years }) => unit_years,
        'false calls': ({ false_calls }) => false_calls.count,
        'in a unit’s year': ({ false_calls }) => false_calls.per_unit_year,
        'at most': ({ false_calls }) => false_calls.high,
      }),
);
show(
  intervalScenarios.length === 0
    ? 'Of the case for an interval no measurement is kept with this version.'
    : table('Earlier cleaning called supported where the clock does nothing', intervalScenarios, {
        scenario: ({ scenario }) => scenario,
        'what it is': ({ says }) => says,
        fleets: ({ supported }) => supported.of,
        wrong: ({ supported }) => supported.count,
        'up to, per cent': ({ supported }) => (supported.high === null ? null : 100 * supported.high),
      }),
);

/*
## A small fleet of one's own

Six units, a year of 365 test days each, in fifty worlds. Being overdue comes in spells of one to three weeks, failures fall on any day with one chance in forty, and neither knows
of the other. Rows are made as the panel holds them, and go through the same comparison.
*/
const random = xoroshiro128plus(2026);
const chance = (oneIn: number) => uniformInt(random, 1, oneIn) === 1;
const sample = joined.panel[0]!;
function simulatedUnit(unit: string): UnitDay[] {
  let overdue: 0 | 1 = 0;
  let left = uniformInt(random, 7, 28);
  return Array.from({ length: 365 }, (_, day) => {
    if (left-- === 0) {
      overdue = overdue === 1 ? 0 : 1;
      left = overdue === 1 ? uniformInt(random, 7, 21) : uniformInt(random, 14, 28);
    }
    const failed = chance(40) ? 1 : 0;
    return {
      ...sample,
      unit,
      day,
      era: 0,
      stratum: day < 182 ? 0 : 1,
      at_risk: 1,
      inside_episode: 0,
      failed,
      test_result: failed === 1 ? 'fail' : 'pass',
      chamber_overdue: overdue,
    };
  });
}

const UNITS = ['A', 'B', 'C', 'D', 'E', 'F'];
const worlds = Array.from({ length: 50 }, () => {
  const family = UNITS.map((unit) =>
    compareBy(joined, (row) => row.chamber_overdue, 'failed_test', {
      rows: simulatedUnit(unit),
      scope: 'unit',
    }),
  ).filter(({ p }) => p !== null);
  const adjusted = benjaminiHochberg(family.map(({ p }) => p!)).adjusted;
  return family.map(({ p, ratio }, at) => ({
    p: p!,
    covers: ratio.low !== null && ratio.low <= 1 && ratio.high !== null && ratio.high >= 1,
    shown: ratio.low !== null && ratio.low > 1 && adjusted[at]! <= 0.05,
  }));
});
const all = worlds.flat();

show(
  chart(
    'p of all comparisons of the small fleets',
    'Where nothing is going on each twentieth should hold as many; exact tests of small counts have more near 1.',
    {
      width: 560,
      height: 180,
      data: { values: all.map(({ p }) => ({ p })) },
      mark: { type: 'bar' },
      encoding: {
        x: { field: 'p', bin: { step: 0.05 }, title: 'p' },
        y: { aggregate: 'count', title: 'Comparisons' },
      },
    },
  ),
);

const small = all.filter(({ p }) => p <= 0.05).length;
const wrong = worlds.filter((world) => world.some(({ shown }) => shown)).length;
const covered = all.filter(({ covers }) => covers).length;
const shares = [
  { what: 'comparisons with p at or under 0.05', count: small, of: all.length },
  { what: 'intervals that hold the true ratio, 1', count: covered, of: all.length },
  { what: 'fleets with a wrong "shown"', count: wrong, of: worlds.length },
].map((row) => {
  const share = clopperPearsonInterval(row.count, row.of);
  return {
    ...row,
    low: share.computable ? share.interval.low : null,
    high: share.computable ? share.interval.high : null,
  };
});
show(
  table('What the small fleets gave, with exact 95 % intervals', shares, {
    what: ({ what }) => what,
    count: ({ count }) => count,
    of: ({ of }) => of,
    'per cent': ({ count, of }) => (100 * count) / of,
    low: ({ low }) => (low === null ? null : 100 * low),
    high: ({ high }) => (high === null ? null : 100 * high),
  }),
);
if (shares[0]!.low! > 0.05) throw new Error('The test must keep its level in the small fleets');

/*
## What a suggestion is worth

*Suggested* asks less, and is wrong more often: it is a reason to keep looking, not to act. With dozens of questions a month a few will be suggested where nothing is.
*/
show(
  table(
    'Fleets with a wrong "shown" or "suggested", where nothing is going on',
    scenarios.filter(({ units_shown }) => units_shown === null),
    {
      scenario: ({ scenario }) => scenario,
      fleets: ({ false_shown_or_suggested }) => false_shown_or_suggested.of,
      'per cent': ({ false_shown_or_suggested }) => 100 * false_shown_or_suggested.share,
    },
  ),
);
show(
  `For comparison, a wrong *shown*: at most ${numberText(100 * Math.max(...scenarios.filter(({ units_shown }) => units_shown === null).map(({ false_shown }) => false_shown.share)))} % of fleets in any of these scenarios.`,
);
