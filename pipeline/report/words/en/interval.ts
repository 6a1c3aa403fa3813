import type { Best } from '../../../findings/interval/argument-schema.ts';
import type { Clock } from '../../../findings/interval/clocks.ts';
import type { IntervalCase, Note, Reason } from '../../../findings/interval/interval-schema.ts';
import { format } from './format.ts';

type Answer = IntervalCase['answer']['code'];

const { integer, count, fixed, list, twoFigures, pValue } = format;

const UNITS: Record<Clock, [string, string]> = {
  calendar_days: ['day', 'days'],
  days_of_use: ['day of use', 'days of use'],
  cycles: ['cycle', 'cycles'],
};

/** An interval with what it counts: "28 days". */
const interval = (every: number, clock: Clock): string => count(every, ...UNITS[clock]);
const between = (low: string, high: string | null): string =>
  high === null ? `${low} or more` : `${low} to ${high}`;

/** Words of the argument: what the page says on its first sheet and the command prints. */
export const intervalArgument = {
  interval,
  clockNames: {
    calendar_days: 'calendar days',
    days_of_use: 'days of use',
    cycles: 'cycles',
  } satisfies Record<Clock, string>,
  between,
  headings: {
    question: 'The question',
    records: 'The records',
    finding: 'What they show',
    cost: 'Cost and benefit',
    mind: 'What would change our mind',
    limits: 'Limits of the method',
    cautions: 'Cautions',
  },
  question: (units: number) =>
    `How often is a chamber to be cleaned? Nobody prescribes it: within the instructions for use the site decides, and has to defend it. Here from the records of ${count(units, 'unit', 'units')}.`,
  inForce: (every: number | null, clock: Clock, otherwise: number) => {
    if (every === null) return 'The site file states no interval for the chamber.';
    const others = otherwise > 0 ? ` (${integer(otherwise)} of the units have another)` : '';
    return `Stated: every ${interval(every, clock)}${others}.`;
  },
  kept: (every: number, median: number, clock: Clock) =>
    `Stated: ${interval(every, clock)}; kept: median ${interval(median, clock)} between cleanings that count. Keeping the stated interval comes before shortening it.`,
  instructions: (longest: number | null, clock: Clock) =>
    longest === null
      ? 'The limit by the instructions for use is not given in the site file: nothing longer is considered.'
      : `The instructions for use allow ${interval(longest, clock)} at most: nothing longer is considered.`,
  records: (n: {
    records: number;
    starts: number;
    reactive: number;
    contradicted: number;
    notJudged: number;
  }) =>
    [
      `${count(n.records, 'chamber cleaning is', 'chamber cleanings are')} recorded; ${integer(n.starts)} start a clock: routine, and not contradicted by the cycle log.`,
      n.reactive > 0 &&
        `${integer(n.reactive)} followed a failure: these end the observation and start none, so that a unit just mended is not taken for one just cleaned.`,
      n.contradicted > 0 && `${integer(n.contradicted)} are contradicted (unit running or hot).`,
      n.notJudged > 0 && `${integer(n.notJudged)} hold a date only.`,
    ]
      .filter(Boolean)
      .join(' '),
  observed: (n: {
    failures: number;
    days: number;
    aborts: number;
    cycles: number;
    spells: number;
    span: string;
  }) =>
    `${n.span}, over ${count(n.spells, 'spell', 'spells')} between cleanings: ${count(n.failures, 'failed test', 'failed tests')} (episodes) on ${integer(n.days)} test days at risk, ${count(n.aborts, 'abort', 'aborts')} plausibly about cleanliness in ${integer(n.cycles)} production cycles.`,

  /** @param own units of which a rise is shown by themselves; at most five are named */
  answer: (code: Answer, own: string[], of: number): string => {
    const units = own.length <= 5 ? list(own) : `${integer(own.length)} of ${integer(of)} units`;
    if (code === 'supported') return 'The risk of a failed test rises with the time since the last cleaning.';
    if (code === 'not_supported')
      return own.length === 0
        ? 'It is not shown that the risk of a failed test rises with the time since the last cleaning. Earlier cleaning is not supported by this record.'
        : `Over all units it is not shown that the risk of a failed test rises with the time since the last cleaning; for ${units} by itself it is.`;
    return own.length === 0
      ? 'These records cannot tell whether the risk of a failed test rises with the time since the last cleaning.'
      : `Over all units these records cannot tell whether the risk of a failed test rises with the time since the last cleaning; for ${units} by itself it does.`;
  },
  shape: (n: { shape: number; low: number; high: number | null; p: number; level: string }) =>
    `Shape ${fixed(n.shape, 2)} (${n.level} interval ${between(fixed(n.low, 2), n.high === null ? null : fixed(n.high, 2))}, p ${pValue(n.p)}); 1 would mean no dependence on the clock, more a rise.`,
  risk: (late: number, early: number, ratio: number, clock: Clock) =>
    `At ${interval(late, clock)} it is by this fit ${twoFigures(ratio)} times that at ${integer(early)}.`,
  because: (code: Reason): string => REASONS[code],
  allRecords: (answer: Answer) =>
    ({
      supported:
        'If the contradicted records counted as done, a rise would be supported: the answer depends on them.',
      not_supported:
        'If the contradicted records counted as done, a rise would not be shown: the answer depends on them.',
      cannot_tell:
        'If the contradicted records counted as done, these records could not tell: the answer depends on them.',
    })[answer],
  /** @param other clocks on which p is at or under the line though the answer is none */
  aborts: (answer: Answer, shape: string, other: string[]): string => {
    const says = {
      supported: 'a rise with the clock',
      not_supported: 'a rise with the clock is not shown',
      cannot_tell: 'too few to tell',
    }[answer];
    return `Aborts plausibly about cleanliness, shape ${shape}: ${says}${other.length === 0 ? '' : `; but counted in ${list(other)}`}.`;
  },
  shapeInShort: (n: { shape: number; low: number; high: number | null; p: number }) =>
    `${fixed(n.shape, 2)} (${between(fixed(n.low, 2), n.high === null ? null : fixed(n.high, 2))}, p ${pValue(n.p)})`,
  onClock: (clock: string, p: number) => `${clock} p ${pValue(p)}`,
  ownShape: (unit: string, shape: string) =>
    `${unit} by itself: shape ${shape}, p adjusted for the number of units. A rise in a unit speaks first for keeping its interval.`,
  units: (units: number, of: number) =>
    `By itself, adjusted for the number of units: a rise in ${integer(units)} of ${integer(of)} units; see their table.`,
  noUnits: 'No single unit shows a rise by itself, adjusted for the number of units.',
  appearance: {
    rises: (p: number) =>
      `Inspections learn faster: the chambers look worse with the days since cleaning (p ${pValue(p)}). That speaks of deposits, not of failures.`,
    not_shown: 'The inspections show no worsening of the chambers with the days since cleaning.',
  },

  year: (n: {
    every: string;
    cleanings: number;
    failures: string;
    aborts: string;
    hours: string;
    labour: number;
  }) =>
    `Cleaned every ${n.every}, the units in use together would see in a year ${integer(n.cleanings)} cleanings, ${n.failures} failed tests, ${n.aborts} aborts and ${n.hours} hours out of use, with ${integer(n.labour)} hours of labour.`,
  withInterval: (estimate: number, low: number, high: number) =>
    `${twoFigures(estimate)} (${twoFigures(low)} to ${twoFigures(high)})`,
  money: (value: number, currency: string) => `${integer(value)}${currency === '' ? '' : ` ${currency}`}`,
  hours: (value: number) => count(Math.round(value), 'hour', 'hours'),
  best: (n: { best: string; low: string; high: string; value: string; money: boolean }) =>
    `The least ${n.money ? 'cost' : 'time out of use'} is at ${n.best} (range ${n.low} to ${n.high}), ${n.value} a year.`,
  advice: {
    earlier: 'The stated interval lies beyond that range: cleaning earlier would cost less than it saves.',
    keep: 'The stated interval lies in that range: nothing speaks for changing it.',
    longer_within_instructions:
      'The stated interval is shorter than that range, within what the instructions for use allow. Whether to lengthen it is for local policy, not for this record alone.',
    none_in_force: 'The site states no interval to compare it with.',
  } satisfies Record<Best['advice'], string>,
  notBest:
    'As the rise is not supported, no interval is named as the best; the table shows what each would take.',
  atLongest: 'It is the longest that was looked at; the true one may lie beyond.',
  breakEven: (n: {
    from: string;
    to: string;
    avoided: string;
    line: string;
    range: string;
    money: boolean;
  }) =>
    `From ${n.from} to ${n.to}: ${n.avoided} failed tests a year fewer by the fit. It pays where a failed test ${n.money ? 'costs' : 'takes'} more than ${n.line} ${n.range}.`,
  breakEvenHours: (value: number) => `${twoFigures(value)} hours`,
  breakEvenCost: (value: number, currency: string) =>
    `${twoFigures(value)} ${currency === '' ? 'in money' : currency}`,
  breakEvenRange: (low: number | null, high: number | null) =>
    low === null && high === null
      ? '(no bounds)'
      : `(${low === null ? 'no lower bound' : twoFigures(low)} to ${high === null ? 'no upper bound' : twoFigures(high)})`,
  noBreakEven: (to: string) => `Going to ${to} would avoid no failed test by the fit, so that it never pays.`,
  notCounted: (names: string[]) => {
    if (names.length === 0) return null;
    return names.length <= 3
      ? `Not counted, as the site file gives no value: ${list(names)}.`
      : `Not counted: ${integer(names.length)} inputs to which the site file gives no value; they stand in the table of inputs.`;
  },

  more: (factor: number) =>
    `About ${twoFigures(factor)} times this record would tell a shape of 1.5 (a risk that rises with the square root of the clock) from 1.`,
  detectable: (shape: number, power: string) =>
    `With ${power} power this record could have shown a shape of ${twoFigures(shape)} or more.`,
  sensitive: (n: { input: string; values: [string, string]; at: [string, string] }) =>
    `The input that moves the best interval most: ${n.input}. From ${n.values[0]} to ${n.values[1]} it moves the best from ${n.at[0]} to ${n.at[1]}.`,
  notSensitive: 'No input alone, halved or doubled, moves the best interval.',
  mind: {
    supported:
      'A longer record in which the rise is gone, or a cause other than deposits that goes with the clock, such as workload.',
    not_supported:
      'A record long enough to show a rise that is there, or cleanings at intervals that differ more: the clock says little where all spells are alike.',
    cannot_tell: 'A longer record, or what is missing, named above.',
  },
  limits: [
    'Failures count by episode and at risk alone. The fit is a power law (Weibull) with a level for each unit between repairs; observation ends with a reactive cleaning, a repair or the record.',
    'The intervals come from drawing whole units between repairs (or their spells) anew. They do not know what changes next year.',
    'A rise with the clock is a link, not a cause: workload, season or people may go with it. A risk that jumps at some day fits badly; see the classes of the clock.',
  ],
  cautions: [
    'This describes records; it never releases, rejects or recalls a load. After a failed test the unit stays out of use until it is inspected and passes.',
    'The instructions for use of sterilizer and cleaner rule: no interval may be lengthened beyond them on this evidence. Local policy, infection prevention, biomedical engineering and those authorised decide.',
  ],
  note: (note: Note): string => NOTES[note],
};

const REASONS: Record<Reason, string> = {
  shape_above_1: 'The interval of the shape lies above 1, and so it does between units and eras.',
  shape_at_or_below_1: 'The shape is not above 1: failures do not come more often as the clock runs on.',
  shape_not_above_1_beyond_chance: 'That is not beyond what chance does with so few failures.',
  not_above_1_between_units:
    'The interval of the shape lies above 1, but not once bad spells and bad units are allowed for.',
  all_records_differ: 'The answer differs if records that the cycle log contradicts count as done.',
  too_few_to_show:
    'There are too few failures to have shown a rise with the square root of the clock (shape 1.5). This is not the same as no rise.',
  no_cleaning_recorded: 'No chamber cleaning is recorded.',
  all_reactive:
    'Every chamber cleaning followed a failure. Such cleanings say when failures came, not what cleaning does.',
  all_contradicted: 'Every routine chamber cleaning is contradicted by the cycle log.',
  no_cleaning_twice:
    'No unit was cleaned twice in the record, so that no spell between cleanings is complete.',
  same_clock:
    'All test days stand at the same time since cleaning, so that nothing can rise or fall with it.',
  too_few_failures: 'Fewer than five failures began on the clock.',
  no_fit: 'The failures stand in a way that fixes no shape.',
};

const NOTES: Record<Note, string> = {
  costs_missing: 'No prices for both cleaning and failure are given: the case is in hours and failures.',
  limit_not_given:
    'The longest interval by the instructions for use is not given: nothing longer than the stated interval is considered.',
  no_interval_in_force: 'The site file states no interval for the chamber.',
  units_with_other_intervals: 'Units with another stated interval are counted with the others.',
  limit_beyond_record:
    'The instructions allow more than any interval in the record: only what was observed is considered.',
  in_force_beyond_record:
    'The stated interval is longer than any clock in the record: its year can’t be given.',
  in_force_beyond_instructions:
    'The stated interval is longer than the instructions for use allow, by the limit in the site file. That is to be settled first.',
  candidates_beyond_instructions: 'Candidates beyond the instructions for use are left out.',
  candidates_beyond_record: 'Candidates longer than any clock in the record are left out.',
  candidates_without_limit:
    'Candidates longer than the stated interval are left out, as the limit by the instructions is not given.',
  few_unit_eras: 'There are few units between repairs: the bootstrap draws spells inside them.',
  mostly_reactive: 'Half or more of the chamber cleanings followed a failure.',
  no_units_in_use:
    'No unit was in use in the last 90 days of the record, so that there is no year to expect.',
};
export type IntervalArgumentWords = typeof intervalArgument;
