import type { Cause } from '../../../findings/drift/cause-pattern.ts';
import type { Probe } from '../../../findings/drift/probes.ts';
import type {
  AttentionCode,
  AttentionReason,
  Exposure,
  OutcomeName,
} from '../../../findings/review-schema.ts';
import type { CleaningTask } from '../../../site/vocabulary.ts';
import { type Numbers, num, text } from '../attention-numbers.ts';
import { causesIn } from '../causes.ts';
import { attentionShort } from './attention-short.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

/** What a reason says (evidence in numbers), what to do next and who decides. */
export interface ReasonWords {
  evidence: string;
  next: string;
  decides: string;
}

const { count, ratio, pValue, date, time } = format;

const LEAD = 'department lead';
const LEAD_AND_ENGINEERING = 'department lead with biomedical engineering';
const COMMITTEE = 'the committee, with biomedical engineering and the instructions for use';

const of = (numbers: Numbers, part: string, whole: string, one: string, many: string): string =>
  `${format.integer(num(numbers, part))} of ${count(num(numbers, whole), one, many)}`;

/** Several failed days may be one spell; episodes are those that began in the month. */
const spells = (numbers: Numbers): string =>
  num(numbers, 'failures') > 1 && num(numbers, 'episodes') > 0
    ? `, in ${count(num(numbers, 'episodes'), 'episode', 'episodes')} that began this month`
    : '';

/** From the first such cycle to the last. */
const between = (numbers: Numbers): string => {
  const [first, last] = [text(numbers, 'first'), text(numbers, 'last')];
  if (first === last) return time(first);
  const sameDay = first.slice(0, 10) === last.slice(0, 10);
  return `${time(first)} to ${sameDay ? last.slice(11) : time(last)}`;
};
const unsure = (numbers: Numbers): string =>
  num(numbers, 'certain') < num(numbers, 'cycles')
    ? `; of ${format.integer(num(numbers, 'cycles') - num(numbers, 'certain'))} not sure, since only the date of a test is known`
    : '';

/** ", 4 cycles" of a day with no test in time. */
const cyclesThen = (numbers: Numbers): string =>
  num(numbers, 'cycles') > 0 ? ` (${count(num(numbers, 'cycles'), 'cycle', 'cycles')} ran)` : '';

const association = (numbers: Numbers, verdict: string, level: string): string => {
  const exposure = terms.exposure[text(numbers, 'exposure') as Exposure];
  const outcome = terms.outcomes[text(numbers, 'outcome') as OutcomeName];
  const bounds =
    numbers.high === null || numbers.high === undefined
      ? `${level} interval from ${ratio(num(numbers, 'low'))} with no upper bound`
      : `${level} interval ${ratio(num(numbers, 'low'))} to ${ratio(num(numbers, 'high'))}`;
  const estimate =
    numbers.ratio === null || numbers.ratio === undefined
      ? 'no event without it'
      : `ratio ${ratio(num(numbers, 'ratio'))}`;
  const adjusted = typeof numbers.adjusted_p === 'number' ? `, adjusted p ${pValue(numbers.adjusted_p)}` : '';
  return `More ${outcome} with ${exposure}: ${verdict} (${estimate}, ${bounds}${adjusted}).`;
};

const interval = (numbers: Numbers): string => {
  const [every, unit] = text(numbers, 'interval').split(' ');
  return every && unit ? `${format.integer(Number(every))} ${terms.countedIn[unit] ?? unit}` : 'stated';
};

const probeOf = (numbers: Numbers): Probe => text(numbers, 'probe') as Probe;
const probeName = (numbers: Numbers): string => format.sentence(terms.probe[probeOf(numbers)]);

const amount = (numbers: Numbers, key: string): string =>
  `${format.figures(num(numbers, key))} ${text(numbers, 'measure')}`;

const causes = (numbers: Numbers): string =>
  causesIn(text(numbers, 'cause'))
    .map((cause) => terms.cause[cause])
    .join(' or ');

/** "Evacuation time of the empty daily cycles has been rising since 13 August 2026, by 17 s a week (16 to 18)." and what follows from it. */
const movement = (numbers: Numbers): string => {
  const rate =
    typeof numbers.rate === 'number'
      ? `, by ${amount(numbers, 'rate')} a week (${format.level(0.9)} interval ${amount(numbers, 'rate_low')} to ${amount(numbers, 'rate_high')})`
      : '';
  const days =
    typeof numbers.days === 'number'
      ? ` At this pace its limit is ${count(num(numbers, 'days'), 'day', 'days')} away (from ${format.integer(num(numbers, 'days_low'))}${
          typeof numbers.days_high === 'number' ? ` to ${format.integer(num(numbers, 'days_high'))}` : ' on'
        }).`
      : '';
  const cause =
    numbers.cause === null ? '' : ` The pattern fits best: ${causes(numbers)} (a hint, no diagnosis).`;
  const going = text(numbers, 'direction') === 'down' ? 'falling' : 'rising';
  return `${probeName(numbers)} of the ${terms.cyclesOfProbe(probeOf(numbers))} has been ${going} since ${date(text(numbers, 'since'))}${rate}.${days}${company(numbers)}${cause}${done(numbers)}`;
};

/** The probes that one cause moves with the first. */
const company = (numbers: Numbers): string => {
  if (typeof numbers.with !== 'string') return '';
  const names = numbers.with.split(' ').map((probe) => terms.probe[probe as Probe]);
  const moves = names.length === 1 ? 'moves' : 'move';
  return ` ${format.sentence(format.list(names))} ${moves} with it${numbers.with_since === numbers.since ? '' : `, the first since ${date(text(numbers, 'with_since'))}`}.`;
};

/** What the list of actions has as done since a movement began. */
const done = (numbers: Numbers): string => {
  if (typeof numbers.done_action !== 'string') return '';
  const more = num(numbers, 'done_more');
  return ` Since it began this was done: “${numbers.done_action}” on ${date(text(numbers, 'done_on'))}${more > 0 ? ` and ${count(more, 'more action', 'more actions')}` : ''}; it goes on.`;
};

/** What to look at where a cause fits, else by the probe: common practice, no source. */
const STEP_OF_CAUSE: Record<Cause, string> = {
  'clogged strainer or drain':
    'Have strainer and drain cleaned, and the unit inspected if the movement goes on.',
  'door gasket or valve leak': 'Have door gasket, valves and fittings looked at, and the leak test repeated.',
  'pump or ejector wear, or warm or weak water':
    'Have the pump or ejector looked at, and warmth and pressure of its water.',
  'chamber or jacket scale': 'Have chamber and jacket looked at for scale, and the water values with it.',
  'poor steam (wet or with gases)': 'Have the steam looked at: dryness, gases and pressure.',
};
const STEP_OF_PROBE: Record<Probe, string> = {
  evacuation_time: 'Look at strainer and drain, then have pump, its water and the door gasket looked at.',
  heat_up_time: 'Have steam supply and steam admission looked at.',
  exhaust_time: 'Look at strainer and drain, then have the exhaust line looked at.',
  leak_rate: 'Have door gasket, valves and fittings looked at, and the leak test repeated.',
  exposure_spread: 'Have steam supply and temperature sensors looked at.',
  saturation_residual: 'Have gases in the steam and the sensors looked at.',
};
const step = (numbers: Numbers): string => {
  const [cause] = causesIn(text(numbers, 'cause'));
  return cause === undefined ? STEP_OF_PROBE[probeOf(numbers)] : STEP_OF_CAUSE[cause];
};

const ran = (numbers: Numbers): string =>
  count(num(numbers, 'cycles'), 'production or liquids cycle', 'production or liquids cycles');
const THOSE_RESPONSIBLE = 'those who are responsible decide about them';

/** One function for each code; `level` is that of the intervals as text, such as "95%". Nothing here releases or holds back a load: it points to records, and names who decides. */
export const attention: Record<AttentionCode, (numbers: Numbers, level: string) => ReasonWords> = {
  ran_after_failure: (n) => ({
    evidence: `${format.sentence(ran(n))} ran after a failed air-removal test and before one passed (${between(n)}${unsure(n)}).`,
    next: `Go through the list of these cycles: ${THOSE_RESPONSIBLE}.${n.ended === null ? ' None passed since: make sure that the unit is out of use until it passes.' : ''}`,
    decides: 'department lead with infection prevention and biomedical engineering',
  }),
  ran_after_failure_perhaps: (n) => ({
    evidence: `${format.sentence(ran(n))} may have run after a failed air-removal test and before one passed (${between(n)}): only the date of a test is known.`,
    next: `Find the times of these tests; where cycles ran between, ${THOSE_RESPONSIBLE}.`,
    decides: 'department lead with infection prevention',
  }),
  episode_open: (n) => ({
    evidence: `Failed air-removal tests since ${date(text(n, 'since'))} and no day since that began with a passing one (${count(num(n, 'failed_days'), 'failed test day', 'failed test days')}).`,
    next: 'Make sure that the unit is out of use until inspected and passing, and go through its look-back list.',
    decides: LEAD_AND_ENGINEERING,
  }),
  failed_test: (n) => ({
    evidence: `${of(n, 'failures', 'day_results', 'test day', 'test days')} failed${spells(n)}.`,
    next: 'Go through the look-back list and file what was decided.',
    decides: 'department lead with infection prevention',
  }),
  test_missing: (n) => ({
    evidence: `Production on ${of(n, 'missing', 'production_days', 'production day', 'production days')} with no air-removal test on record${cyclesThen(n)}.`,
    next: 'Find the test record, or file that there was none and what follows for the cycles listed.',
    decides: LEAD,
  }),
  test_late: (n) => ({
    evidence: `On ${of(n, 'late', 'production_days', 'production day', 'production days')} the air-removal test ended after production had started${cyclesThen(n)}.`,
    next: 'Go through the cycles that started before it, and the order of work at the start of these days.',
    decides: LEAD,
  }),
  return_incomplete: (n) => ({
    evidence: `After ${count(num(n, 'cleanings'), 'chamber cleaning', 'chamber cleanings')} (the last on ${time(text(n, 'last'))}) production came before a warm-up and a passing air-removal test.`,
    next: 'Check the records of these days, and that a warm-up and a passing test come first after the next cleaning.',
    decides: LEAD,
  }),
  requalification_incomplete: (n) => ({
    evidence: `After major service that ended on ${time(text(n, 'ended'))}, ${format.integer(num(n, 'passes'))} of ${count(num(n, 'wanted'), 'passing air-removal test', 'passing air-removal tests')} in a row came before production.`,
    next: 'Check the requalification records; complete what is missing.',
    decides: `${LEAD_AND_ENGINEERING} or the authorised person`,
  }),
  comparison_shown: (n, level) => ({
    evidence: association(n, 'shown', level),
    next: 'Decide whether this task is to be enforced, or done more often, on this unit. Other causes are to be ruled out first.',
    decides: COMMITTEE,
  }),
  chamber_overdue_now: (n) => ({
    evidence: `Chamber cleaning is ${count(num(n, 'days_past_due'), 'day', 'days')} past due at the end of the month${
      typeof n.clock_days === 'number'
        ? ` (${count(n.clock_days, 'day', 'days')} since the last one that counts; interval ${interval(n)})`
        : ''
    }.`,
    next: 'Plan the cleaning, or find the record of it.',
    decides: LEAD,
  }),
  task_outstanding: (n) => ({
    evidence: `${format.sentence(terms.task[text(n, 'task') as CleaningTask])} fell due on ${date(text(n, 'due'))} and is not on record as done (${count(num(n, 'days_past_due'), 'day', 'days')} past due at the end of the month; ${
      typeof n.last_done === 'string' ? `last on ${date(n.last_done)}` : 'none on record before'
    }).`,
    next: 'Plan it, or find the record of it.',
    decides: LEAD,
  }),
  records_contradicted: (n) => ({
    evidence: `The cycle log contradicts ${count(num(n, 'in_month'), 'chamber cleaning record', 'chamber cleaning records')} of this month; ${format.integer(num(n, 'running') + num(n, 'hot'))} of ${format.integer(num(n, 'records'))} over the whole record.`,
    next: 'Compare record and cycle log; clocks and units first, then how the work is written down.',
    decides: LEAD,
  }),
  leak_over_limit: (n) => ({
    evidence: `The last leak test (${time(text(n, 'at'))}) gave ${amount(n, 'last')}, over the limit of ${amount(n, 'limit')}.`,
    next: 'Make sure that the unit is out of use until the leak is found and the test passes.',
    decides: LEAD_AND_ENGINEERING,
  }),
  leak_near_limit: (n) => ({
    evidence: `The last leak test (${time(text(n, 'at'))}) gave ${amount(n, 'last')}, near the limit of ${amount(n, 'limit')}.`,
    next: 'Have door gasket and fittings looked at before the limit is reached.',
    decides: 'biomedical engineering',
  }),
  drift_near_limit: (n) => ({
    evidence: `${movement(n)} It is near its limit.`,
    next: `${step(n)} Before the limit is reached; in doubt take the unit out of use.`,
    decides: LEAD_AND_ENGINEERING,
  }),
  drift_moving: (n) => ({
    evidence: movement(n),
    next:
      n.falls_back_at === null ? step(n) : 'It falls back at each cleaning: clean, and look at the interval.',
    decides: LEAD_AND_ENGINEERING,
  }),
  drift_stepped: (n) => ({
    evidence: `${probeName(n)} stepped ${text(n, 'direction')} on ${date(text(n, 'since'))}${
      typeof n.before === 'number' && typeof n.after === 'number'
        ? `, from ${amount(n, 'before')} to ${amount(n, 'after')}`
        : ''
    }.`,
    next: 'Ask what was changed on that day: a repair, a part, a setting.',
    decides: LEAD_AND_ENGINEERING,
  }),
  heat_up_out_of_range: (n) => ({
    evidence: `${count(num(n, 'passes'), 'passing test', 'passing tests')} with a heat-up time outside the unit’s own limits; slow admission of steam can hide trapped air.`,
    next: 'Have the steam admission and the test cycles looked at.',
    decides: 'biomedical engineering',
  }),
  abort_rate_signal: (n) => ({
    evidence: `The abort rate of this month lies outside its limits${
      typeof n.events === 'number'
        ? ` (${format.integer(num(n, 'events'))} aborts in ${count(num(n, 'of'), 'production cycle', 'production cycles')})`
        : ''
    }.`,
    next: 'Look at the abort texts of the month for a common cause.',
    decides: LEAD_AND_ENGINEERING,
  }),
  early_stops: (n) => ({
    evidence: `${format.sentence(count(num(n, 'early_stops'), 'unexplained early stop', 'unexplained early stops'))}: short cycles stopped by hand with no cleaning record near.`,
    next: 'Ask whether these were cleanings that nobody recorded.',
    decides: LEAD,
  }),
  strainers_missed: (n) => ({
    evidence: `${of(n, 'missed', 'due', 'strainer cleaning', 'strainer cleanings')} due were missed.`,
    next: 'Look at who cleans the strainer and when, before the first cycle.',
    decides: LEAD,
  }),
};

export const attentionWords = {
  level: {
    act: 'Before the next load',
    decide: 'At this review',
    look: 'Soon',
  } satisfies Record<AttentionReason['level'], string>,
  levelLetter: { act: '1', decide: '2', look: '3' } satisfies Record<AttentionReason['level'], string>,
  next: 'Next',
  decides: 'Decides',
  evidence: 'Evidence',
  none: 'No unit has a reason on record to need attention this month. No flag does not mean no fault.',
  short: attentionShort,
  /** The rule of the order, for the reader: in one sentence on the first page, in full among the methods. */
  orderShort:
    'Order: use after a failed test, failed tests by share, tests missing or late, chamber overdue, a shown rise, drift; then the rest.',
  orderName: 'Order of need',
  order:
    'Units stand by their most pressing reason. First cycles that ran after a failed test and before one passed, tests that still fail, leaks over the limit and incomplete returns; then several failed test days by their share, one failed test day, production with no test or a late one, chamber overdue, a rise that is shown, drift, contradicted records; then what is for soon. Where units are alike the next reason decides, then the order of the units.',
  more: (n: number): string => `${count(n, 'more unit', 'more units')} with reasons, in order`,
  reason: attention,
};
export type AttentionWords = typeof attentionWords;
