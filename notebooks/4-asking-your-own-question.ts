/*
# Asking your own question

The review asks three questions about cleaning. Yours may be another: did it help that the operators were trained? This notebook joins an invented training date of each
site to the panel, measures it as the review measures its own questions, and shows how to keep from fooling yourself.
*/
import { compareBy, type UnitDay } from '../pipeline/index.ts';
import { joined } from './demo.ts';
import { chart, numberText, same, show, table } from './runner/show.ts';

/*
## The table to join

One row for each site: the day from which its operators had been trained. The dates are invented, and so were the records, in which training does nothing. A table of
your own may come from a file; what matters is what is checked before it is joined: one row a site, and a row for each site of the panel.
*/
const TRAINING = [
  { site: 'Quillhaven', trained_from: '2026-02-01' },
  { site: 'Tornfell', trained_from: '2026-01-12' },
];
const trainedFrom = new Map(TRAINING.map(({ site, trained_from }) => [site, trained_from]));
const sites = [...new Set(joined.panel.map(({ site }) => site))];
const without = sites.filter((site) => !trainedFrom.has(site));
if (trainedFrom.size !== TRAINING.length || without.length > 0)
  throw new Error(`Training: must have one row for each site, lacks ${without.join(', ')}`);
show(
  table('Training dates joined to the panel', TRAINING, {
    site: ({ site }) => site,
    'trained from': ({ trained_from }) => trained_from,
    'rows of the panel': ({ site }) => joined.panel.filter((row) => row.site === site).length,
    'of these after': ({ site, trained_from }) =>
      joined.panel.filter((row) => row.site === site && row.date >= trained_from).length,
  }),
);

/*
## The question

A question is a function of a row: 1 on days to which it applies, 0 on others, null where it is not known. Here, 1 after training. The outcomes are those of the review: failed
tests, aborts plausibly about cleanliness, and as a control aborts with unrelated causes.
*/
const trained = (row: UnitDay): 0 | 1 => (row.date >= trainedFrom.get(row.site)! ? 1 : 0);
const OUTCOMES = ['failed_test', 'cleanliness_abort', 'unrelated_abort'] as const;
const answers = OUTCOMES.map((outcome) => ({ outcome, ...compareBy(joined, trained, outcome) }));
show(
  table('Days after training beside days before, over the fleet', answers, {
    outcome: ({ outcome }) => outcome.replaceAll('_', ' '),
    'after, events': ({ exposed }) => exposed.events,
    'after, of': ({ exposed }) => exposed.trials,
    'before, events': ({ unexposed }) => unexposed.events,
    'before, of': ({ unexposed }) => unexposed.trials,
    ratio: ({ ratio }) => ratio.ratio,
    low: ({ ratio }) => ratio.low,
    high: ({ ratio }) => ratio.high,
    'p of shifts': ({ p }) => p,
  }),
);
const [failures] = answers;
show(
  same({
    'days on both sides and left out, and the rows of the panel': [
      failures!.exposed.days +
        failures!.unexposed.days +
        failures!.stratified.notAtRisk +
        failures!.stratified.exposureUnknown,
      joined.panel.length,
    ],
  }),
);

/*
## What a date can tell, and what not

A date splits each unit's record once. The comparison is within half years of a unit, so that only those in which the date falls have both sides: the rest stand in the table
above and carry nothing. That is as it should be. Over longer times much else changes, and all of it would be put down to training.
*/
const speaking = failures!.stratified.strata.filter(
  ({ exposed, unexposed }) => exposed.days > 0 && unexposed.days > 0,
);
show(
  table('The parts of the record that have days on both sides', speaking, {
    unit: ({ unit }) => unit,
    from: ({ first_date }) => first_date,
    to: ({ last_date }) => last_date,
    'after, days': ({ exposed }) => exposed.days,
    'after, failed': ({ exposed }) => exposed.events,
    'before, days': ({ unexposed }) => unexposed.days,
    'before, failed': ({ unexposed }) => unexposed.events,
  }),
);
show(
  `${speaking.length} of ${failures!.stratified.strata.length} parts speak, with ${speaking.reduce((sum, { exposed, unexposed }) => sum + exposed.events + unexposed.events, 0)} of ${failures!.exposed.events + failures!.unexposed.events} failures.`,
);

/*
## Dates on which nothing happened

The best protection costs one loop: put the same question to other dates, on which nobody was trained. If the true date looks like the others, it says nothing.
*/
const others =
  '2025-07 2025-08 2025-09 2025-10 2025-11 2025-12 2026-01 2026-03 2026-04 2026-05 2026-06'.split(' ');
const dated = [
  ...others.map((month) => ({ date: `${month}-01`, what: 'nothing happened' })),
  { date: '2026-02-01', what: 'training' },
];
const placebos = dated.map(({ date, what }) => {
  const from = (row: UnitDay): 0 | 1 =>
    row.date >= (what === 'training' ? trainedFrom.get(row.site)! : date) ? 1 : 0;
  const { ratio, p } = compareBy(joined, from, 'failed_test');
  return { date, what, ratio: ratio.ratio!, low: ratio.low!, high: Math.min(ratio.high!, 30), p };
});

show(
  chart(
    'The same question put to other dates',
    'Points: odds ratio of failed tests after and before the date, with its 95 % interval. Diamond: the training.',
    {
      width: 560,
      height: 240,
      data: { values: placebos },
      layer: [
        {
          mark: { type: 'rule' },
          encoding: {
            x: { field: 'date', type: 'temporal', title: null, axis: { format: '%b %Y' } },
            y: {
              field: 'low',
              type: 'quantitative',
              scale: { type: 'log' },
              title: 'Odds ratio (log scale)',
            },
            y2: { field: 'high' },
          },
        },
        {
          mark: { type: 'point', size: 70 },
          encoding: {
            x: { field: 'date', type: 'temporal' },
            y: { field: 'ratio', type: 'quantitative' },
            shape: {
              field: 'what',
              type: 'nominal',
              scale: { domain: ['nothing happened', 'training'], range: ['circle', 'diamond'] },
              title: null,
            },
            color: {
              field: 'what',
              type: 'nominal',
              scale: { domain: ['nothing happened', 'training'], range: ['#23536b', '#a4370f'] },
              title: null,
            },
          },
        },
        {
          data: { values: [{ one: 1 }] },
          mark: { type: 'rule', strokeDash: [4, 3] },
          encoding: { y: { field: 'one', type: 'quantitative' } },
        },
      ],
    },
  ),
);

const training = placebos.at(-1)!;
const apart = placebos.filter(({ what, low, high }) => what !== 'training' && (low > 1 || high < 1));
const farther = placebos.filter(
  ({ what, ratio }) => what !== 'training' && Math.abs(Math.log(ratio)) >= Math.abs(Math.log(training.ratio)),
);
show(
  `The training gives ${numberText(training.ratio)}; ${farther.length} of ${others.length} dates on which nothing happened lie as far from 1 or farther. Of these, ${apart.length} ${apart.length === 1 ? 'has' : 'have'} an interval that leaves 1 out: chance does that to about one in twenty, and a long record has many dates.`,
);

/*
## No verdict

`compareBy` gives counts, ratio, interval and p, and no verdict. A question that is thought of after a look at the data is not one of the family over which p was adjusted. Where it
is worth asking each month, it belongs into the review, with a test first.
*/
