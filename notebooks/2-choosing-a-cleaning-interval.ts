/*
# Choosing a cleaning interval

Nobody prescribes how often a chamber is to be cleaned; the instructions for use say no more than what is the longest. A record of failures and cleanings can say
whether earlier cleaning would have helped, and what each interval costs. Here is the case of the demo data, piece by piece.
*/
import { clopperPearsonInterval, interval } from '../pipeline/index.ts';
import { joined } from './demo.ts';
import { chart, numberText, same, show, table } from './runner/show.ts';

const report = interval(joined);

/*
## The clock

Each unit carries a clock: days since its last chamber cleaning that the cycle log supports. A cleaning because of a failure stops the clock and starts none, since what
comes after it is not what comes after routine. If dirt makes tests fail, failures should come more often as the clock runs.
*/
const classes = report.by_clock.filter(({ level }) => level === 'fleet');
const first = classes[0]!.failures;
const exact = clopperPearsonInterval(first.events, first.of);
show(
  table('Failures by days since cleaning', classes, {
    'days since cleaning': ({ from, to }) => (to === null ? `${from} or more` : `${from} to ${to}`),
    'days at risk': ({ failures }) => failures.of,
    'failures that began': ({ failures }) => failures.events,
    'per cent': ({ failures }) => (failures.rate === null ? null : 100 * failures.rate),
    'expected by the fit': ({ fitted_failures }) => fitted_failures,
  }),
);
show(
  same({
    'first class, exact interval from': [exact.computable ? exact.interval.low : null, first.low],
    to: [exact.computable ? exact.interval.high : null, first.high],
  }),
);

show(
  chart('Failures of a hundred days at risk, by days since cleaning', 'Points with exact 95 % intervals.', {
    width: 560,
    height: 200,
    data: {
      values: classes.map(({ from, to, failures }) => ({
        clock: to === null ? `${from}+` : `${from}-${to}`,
        percent: 100 * failures.rate!,
        low: 100 * failures.low!,
        high: 100 * failures.high!,
      })),
    },
    layer: [
      {
        mark: { type: 'rule' },
        encoding: {
          x: {
            field: 'clock',
            type: 'ordinal',
            sort: null,
            title: 'Days since cleaning',
            axis: { labelAngle: 0 },
          },
          y: { field: 'low', type: 'quantitative', title: 'Per cent of days at risk' },
          y2: { field: 'high' },
        },
      },
      {
        mark: { type: 'point', size: 50 },
        encoding: {
          x: { field: 'clock', type: 'ordinal', sort: null },
          y: { field: 'percent', type: 'quantitative' },
        },
      },
    ],
  }),
);

/*
## Does the risk rise?

The classes are laid over a curve with one number that matters, the shape. At 1 the clock does not matter; above 1 failures come more often as it runs. Only an interval of
the shape that lies above 1 supports earlier cleaning. The curve says how many failures are expected up to a clock: the clock over its scale, to the power of the shape.
*/
const fit = report.fits.find(
  ({ outcome, clock, reading }) => outcome === 'failed_test' && clock === report.clock && reading === 'site',
)!;
const expectedUpTo = (clock: number) => (clock / fit.scale!) ** fit.shape!;
show(
  `Shape **${numberText(fit.shape)}**, 95 % interval ${numberText(fit.low)} to ${numberText(fit.high)}; over resampled spells ${numberText(report.answer.robust_low)} to ${numberText(report.answer.robust_high)}. The smallest shape that this record could have told from 1: ${numberText(fit.smallest_detectable_shape)}.`,
);
show(same({ 'expected up to clock 1, from the scale': [expectedUpTo(1), fit.rate] }));

show(
  chart(
    'Failures that a unit has had up to a clock',
    'Steps: observed (Nelson-Aalen), band: its 95 % interval. Line: the fit.',
    {
      width: 560,
      height: 200,
      data: {
        values: report.cumulative.map(({ at, observed, low, high, fitted }) => ({
          at,
          observed,
          low,
          high,
          fitted,
        })),
      },
      layer: [
        {
          mark: { type: 'area', color: '#d7e5ec', interpolate: 'step-after' },
          encoding: {
            x: { field: 'at', type: 'quantitative', title: 'Days since cleaning' },
            y: { field: 'low', type: 'quantitative', title: 'Failures' },
            y2: { field: 'high' },
          },
        },
        {
          mark: { type: 'line', interpolate: 'step-after' },
          encoding: {
            x: { field: 'at', type: 'quantitative' },
            y: { field: 'observed', type: 'quantitative' },
          },
        },
        {
          mark: { type: 'line', color: '#a4370f' },
          encoding: {
            x: { field: 'at', type: 'quantitative' },
            y: { field: 'fitted', type: 'quantitative' },
          },
        },
      ],
    },
  ),
);

/*
## What an interval costs

Two costs pull in opposite directions. Each cleaning takes the unit out of use: cool-down, work, warm-up, test. Each failure does so too. Times are taken from the record where it
has them, prices from the site file; nothing is guessed, and what was not given is left out and named.
*/
const input = (name: string) => report.inputs.find((one) => one.name === name)?.value ?? 0;
const hoursOfCleaning =
  input('cool_down_hours') + (input('work_minutes') + input('warm_up_minutes') + input('test_minutes')) / 60;
const compared = report.candidates.filter(({ year }) => year !== null);
const inForce = compared.find(({ interval: days }) => days === report.in_force)!.year!;
show(
  table('A year of all units in use, by interval', compared, {
    'interval, days': ({ interval: days }) => days,
    cleanings: ({ year }) => Math.round(year!.cleanings.estimate),
    'failures expected': ({ year }) => year!.failures.estimate,
    'hours out of use': ({ year }) => Math.round(year!.hours_total.estimate),
    [`cost, ${report.currency}`]: ({ year }) =>
      year!.cost_total === null ? null : Math.round(year!.cost_total.estimate),
  }),
);
show(
  same({
    'hours of one cleaning, times cleanings a year': [
      hoursOfCleaning * inForce.cleanings.estimate,
      inForce.hours_cleanings.estimate,
    ],
  }),
);
show(
  `Not given, and so left out: ${report.inputs
    .filter(({ origin }) => origin === 'not_given')
    .map(({ name }) => name.replaceAll('_', ' '))
    .join(', ')}.`,
);

const named = new Set([report.in_force, report.best?.interval]);

show(
  chart(
    `Cost of a year by interval, ${report.currency}`,
    'Line with its 95 % band, from 10 days. Points: the interval in force and the best.',
    {
      width: 560,
      height: 220,
      data: { values: report.curve.filter((point) => point.interval >= 10).map((point) => ({ ...point })) },
      layer: [
        {
          mark: { type: 'area', color: '#d7e5ec' },
          encoding: {
            x: { field: 'interval', type: 'quantitative', title: 'Days between cleanings' },
            y: { field: 'low', type: 'quantitative', title: 'Cost of a year' },
            y2: { field: 'high' },
          },
        },
        {
          mark: { type: 'line' },
          encoding: {
            x: { field: 'interval', type: 'quantitative' },
            y: { field: 'value', type: 'quantitative' },
          },
        },
        {
          data: {
            values: report.curve.filter((point) => named.has(point.interval)).map((point) => ({ ...point })),
          },
          mark: { type: 'point', size: 70, color: '#a4370f' },
          encoding: {
            x: { field: 'interval', type: 'quantitative' },
            y: { field: 'value', type: 'quantitative' },
          },
        },
      ],
    },
  ),
);

/*
## The best, and how sure

The lowest point of the curve, within what the instructions for use allow and what the record has seen. The range around it within five per cent matters more than the point.
*/
const cheapest = report.curve
  .filter((point) => point.interval <= report.longest_considered!)
  .reduce((a, b) => (b.value < a.value ? b : a));
show(
  same({
    'lowest of the curve, days': [cheapest.interval, report.best!.interval],
    'its cost': [cheapest.value, report.best!.value],
  }),
);
show(
  table(
    'What would change the answer: each input alone, halved and doubled; the five that move it most',
    report.sensitivity.slice(0, 5),
    {
      input: ({ input: name }) => name.replaceAll('_', ' '),
      low: ({ low_value }) => low_value,
      'best then': ({ best_at_low }) => best_at_low,
      high: ({ high_value }) => high_value,
      'best then too': ({ best_at_high }) => best_at_high,
    },
  ),
);

/*
## The answer
*/
const WORDS = {
  supported: 'supported by this record',
  not_supported: 'not supported by this record',
  cannot_tell: 'a question that this record can’t answer',
};
show(
  `Earlier cleaning is **${WORDS[report.answer.code]}** (${report.answer.because.join(', ').replaceAll('_', ' ')}). The lowest cost lies at ${report.best!.interval} days${report.best!.at_longest ? ', the longest that is allowed' : ''}; in force are ${report.in_force}.`,
);
show(
  'This is the fleet as a whole. One unit may differ, as Q2 does in [how a verdict is made](1-how-a-verdict-is-made.html). Never clean less often than the instructions for use of the unit ask, whatever a curve says.',
);
