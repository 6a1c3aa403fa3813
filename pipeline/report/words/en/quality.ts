import type {
  CleaningClock,
  ClockDifference,
  CounterHistory,
} from '../../../findings/record-quality/record-quality-schema.ts';
import type { UNIT_EVENTS } from '../../../findings/review-schema.ts';
import { format } from './format.ts';

const { integer, count, fixed } = format;

const minutesOf = (value: number): string => fixed(Math.abs(value), Number.isInteger(value) ? 0 : 1);
/** Minutes with a sign that is said in words. */
const minutes = (value: number): string => {
  if (value === 0) return 'at its end';
  return value < 0 ? `${minutesOf(value)} min before` : `${minutesOf(value)} min after`;
};

const signed = (value: number): string => `${value < 0 ? '\u2212' : '+'}${integer(Math.abs(value))}`;

/** Words about how good the records are. They speak of records and clocks, never of people. */
export const quality = {
  heading: 'How good the records are',
  intro:
    'Clocks, times and counters of the records set beside each other. This says how far a finding can be trusted, and nothing about people: rounding minutes and typing at the end of a shift are usual where the work comes first. Nothing is corrected by it.',
  none: 'There is nothing to set beside each other: no test with a time of day and a cycle, no cleaning record, no counter.',
  short: (clocks: number, sources: number, counters: number) =>
    `${count(clocks, 'clock', 'clocks')} of test records not in step with the cycle log; ${count(sources, 'source', 'sources')} with minutes more often on fives than a clock gives; ${count(counters, 'cycle counter', 'cycle counters')} with a jump or a reset.`,
  cleaningShort: (logs: number) =>
    `${count(logs, 'cleaning log', 'cleaning logs')} with a clock that is not in step with the cycle log.`,
  more: 'Clocks, entries and counters in full',
  clocksCaption: 'Time of the test against the end of its cycle',
  clockHeads: {
    source: 'Source',
    unit: 'Unit',
    matched: 'Tests with their cycle',
    unmatched: 'Without',
    median: 'Recorded, median',
    before: 'Before the end',
    verdict: 'Clocks',
    offset: 'Offset that would fit',
  },
  minutes,
  /** Bounds with one sign say before or after once. */
  interval: (low: number, high: number) =>
    low === high
      ? minutes(low)
      : low * high > 0
        ? `${minutesOf(low < 0 ? high : low)} to ${minutes(low < 0 ? low : high)}`
        : `${minutes(low)} to ${minutes(high)}`,
  clock: {
    agree: 'agree',
    test_clock_behind: 'clock of the tests runs behind, or that of the log ahead',
    test_clock_ahead: 'clock of the tests runs ahead, or tests are read late',
    changes: 'the difference changes from month to month',
    too_few: 'too few to say',
  } satisfies Record<ClockDifference['verdict'], string>,
  clocksNote:
    'A test is usually recorded from the end of its cycle to an hour after it. The interval is that of the median, 95%. An offset that fits can be set for the source as clock_offset_minutes; it is never applied by itself.',
  offset: (value: number) => `${signed(value)} min`,
  monthsSummary: (source: string, unit: string) => `By month: ${source}, unit ${unit}`,
  monthsCaption: (unit: string) => `Time of the test against the end of its cycle, by month, unit ${unit}`,
  monthHeads: { month: 'Month', matched: 'Tests', median: 'Recorded, median' },
  cleaningCaption: 'Clock of the cleaning logs: records beside the cycle log',
  cleaningHeads: {
    source: 'Source',
    site: 'Site',
    records: 'Records with a time',
    leftOut: 'Left out',
    fit: 'In a pause as they are',
    fitWith: 'With the offset',
    verdict: 'Clock',
    offset: 'Offset that would fit',
  },
  /** Range of offsets. */
  offsets: (low: number, high: number) =>
    low === high ? 'this one only' : `${signed(low)} to ${signed(high)} min`,
  cleaningClock: {
    agree: 'the records fit as they are',
    cleaning_clock_behind: 'clock of the cleaning log runs behind, or that of the cycle log ahead',
    cleaning_clock_ahead: 'clock of the cleaning log runs ahead, or work is written down late',
    changes: 'the difference changes from month to month',
    too_few: 'too few to say',
    cannot_tell: 'many stand in running cycles, and no clock explains it',
  } satisfies Record<CleaningClock['verdict'], string>,
  cleaningNote:
    'While a chamber, a strainer or a drain is cleaned no cycle runs. A clock is called off only where many records stand in running cycles, and one offset brings nearly all of them into pauses and half of them within 30 minutes of a cycle. Work that lies in a pause at both times shows nothing: a clock that is behind is often not seen. Left out: a date alone, a minute that three or more records share, no cycle within a day. Look at the clock itself first; then an offset can be set for the source as clock_offset_minutes. It is never applied by itself.',
  cleaningMonthsSummary: (source: string, site: string) => `By month: ${source}, ${site}`,
  cleaningMonthsCaption: (source: string, site: string) =>
    `Cleaning records beside the cycle log, by month: ${source}, ${site}`,
  cleaningMonthHeads: {
    month: 'Month',
    records: 'Records',
    fit: 'In a pause as they are',
    offset: 'Best offset',
  },
  entryCaption: 'How records were entered, by source',
  entryHeads: {
    source: 'Source',
    records: 'Records',
    timed: 'With a time of day',
    fives: 'Minutes on fives',
    typed: 'With a time of typing',
    median: 'Typed after, median',
    late: 'Over 12 h after',
    before: 'Before the event',
    batches: 'In batches of 5 and more',
    largest: 'Largest batch',
  },
  hours: (hours: number) => `${fixed(hours, 1)} h`,
  fives: (n: number, of: number) => `${integer(n)} of ${integer(of)}`,
  entryNote:
    'A clock gives one minute in five on fives. Minutes on fives are rounded times: good enough for the day, not for the order of events within minutes. A batch is a minute that five or more records share.',
  countersCaption: 'Cycle counters',
  counterHeads: {
    unit: 'Unit',
    numbered: 'Cycles with a number',
    unnumbered: 'Without',
    missing: 'Numbers passed over',
    repeated: 'Numbers twice',
    events: 'Jumps and resets',
  },
  countersNote:
    'Numbers passed over are cycles that no file holds: export them if they exist. Jumps and resets are usual when a control is replaced.',
  eventsCaption: 'Jumps and resets of cycle counters',
  eventHeads: { unit: 'Unit', time: 'When', from: 'From', to: 'To', what: 'What', near: 'Control replaced' },
  counter: {
    rollover: 'rolled over at its last number',
    reset: 'set back to its start',
    back: 'stepped back',
    jump: 'jumped forward',
  } satisfies Record<CounterHistory['events'][number]['what'], string>,
  near: 'within 7 days',
  notNear: 'no record of it',
  unitHeading: 'How good these records are',
  unitEvents: (n: number) => `${count(n, 'event', 'events')} of the whole record`,
  unitEventsCaption: (unit: string) => `Events of unit ${unit}`,
  unitEventHeads: { day: 'Operating day', what: 'What', detail: 'Detail', where: 'Where' },
  event: {
    chamber_cleaning: 'chamber cleaning',
    professional_cleaning: 'professional cleaning',
    repair: 'repair',
    controller_replaced: 'controller replaced',
    out_of_service: 'out of service',
    maintenance: 'maintenance',
    failed_test: 'failed air-removal test',
  } satisfies Record<(typeof UNIT_EVENTS)[number], string>,
  eventDetail: {
    counts: 'counts as done',
    contradicted: 'the cycle log contradicts it',
    major: 'major',
  },
};
export type QualityWords = typeof quality;
