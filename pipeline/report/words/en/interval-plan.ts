import type { NO_PLAN, NOT_PLACED } from '../../../findings/interval/schedule-schema.ts';
import { format } from './format.ts';

const { integer, count, fixed } = format;

const HAZARD =
  'Caution: let the chamber cool; isolate steam, power, air and water; wear protection and ventilate; trained and authorised people only. The instructions for use of the unit and of the cleaner rule. Afterwards warm up and pass the air-removal test before any load.';

/** Words about when to clean: page, command and calendar file. */
export const intervalPlan = {
  weekday: format.weekday,
  weekdayShort: format.weekdayShort,
  /** Wall time "2026-03-03 06:30" with its day of the week. */
  dayAndTime: (day: number, wall: string): string => `${format.weekdayShort(day)} ${format.time(wall)}`,
  intro: (n: { weeks: number; cool: string; work: string; back: string }) =>
    `From the last ${count(n.weeks, 'week', 'weeks')} of the cycle log: when each unit stands idle for long enough to cool down (${n.cool} h), be cleaned (${n.work} h) and come back with warm-up and air-removal test (${n.back} h), and what a cleaning would displace. Warm-up, air-removal and leak tests are not counted as displaced: they move with the return.`,
  allSites: (count: number) => `All ${count} sites`,
  needed: {
    site: (site: string) => `${site}: the units that must stay available are those of the site file.`,
    record: (site: string) =>
      `${site}: as many units must stay available in each hour of the week as ran in it in the median week, warm-ups and tests aside.`,
  },
  worked: {
    site: 'Work is proposed in the hours of the site file.',
    record:
      'Work is proposed in hours in which cycles were started in at least half of the weeks, and the hour before each.',
  },
  patternTitle: (site: string) => `How often each unit runs, by hour of the week, ${site}`,
  patternReading: 'Darker: a cycle ran in this hour in more of the weeks. White hours are idle.',
  patternAxis: 'Hour of the week, wall time',
  patternDescription: (lines: string[]) =>
    `A row for each unit, a cell for each hour of the week. ${lines.join(' ')}`,
  patternLine: (unit: string, hours: number) =>
    `${unit}: idle in ${integer(hours)} of 168 hours in every week.`,
  share: 'Share of weeks',
  windowsCaption: 'Windows that displace the fewest cycles',
  windowHeads: {
    unit: 'Unit',
    window: 'Day of the work',
    out: 'Out of use from',
    work: 'Work',
    back: 'Back in use',
    displaced: 'Cycles displaced',
    spare: 'Units to spare',
  },
  proposalsCaption: (month: string) => `Proposed chamber cleanings, ${month}`,
  proposalHeads: {
    unit: 'Unit',
    due: 'Due',
    out: 'Out of use from',
    work: 'Work',
    back: 'Back in use',
    displaced: 'Cycles displaced',
  },
  state: {
    due: '',
    due_before_plan: 'before the first day of the plan',
    overdue: 'overdue',
    never_recorded: 'never recorded',
  },
  /** Stands above the times of work, on the page and in each entry of the calendar. */
  hazard: HAZARD,
  basis: (interval: string, earliest: string) =>
    `Proposed for an interval of ${interval}: in the week up to the due day, never after it, at the half hour that displaces the fewest cycles, one chamber at a time at a site. Nothing before ${earliest}, so that there is time to decide: units overdue, or due before that day, come in the first week from then on. The list is an offer; the calendar file holds the same.`,
  calendarFile: 'Calendar file (iCalendar)',
  notPlanned: {
    no_interval: 'Nothing is proposed: the site file states no interval, and the record names none.',
    no_units_in_use: 'Nothing is proposed: no unit was in use in the last 90 days.',
    record_too_short: 'Nothing is proposed: the cycle log of the units in use is shorter than two weeks.',
  } satisfies Record<(typeof NO_PLAN)[number], string>,
  notPlaced: {
    units_needed: 'no window leaves enough units in use',
    work_hours: 'no window with enough units in use lies in the hours of work',
    work_taken: 'the hours of work that would do are taken by other units of the site',
  } satisfies Record<(typeof NOT_PLACED)[number], string>,
  notPlacedLine: (unit: string, date: string, why: string) => `${unit}, due ${date}: ${why}.`,
  noneDue: 'No cleaning falls due in this month.',
  noWindow: (unit: string, why: string) => `${unit}: ${why}.`,
  displaced: (value: number) => fixed(value, 1),

  calendarName: (organisation: string, month: string) =>
    organisation === ''
      ? `Proposed chamber cleanings, ${month}`
      : `${organisation}: proposed chamber cleanings, ${month}`,
  eventTitle: (unit: string) => `Proposed chamber cleaning, unit ${unit}`,
  eventText: (n: { due: string | null; work: string; workTo: string; displaced: string }) =>
    [
      n.due === null ? 'No chamber cleaning is recorded.' : `Due ${n.due}.`,
      `Out of use from the start: cool down, work ${n.work} to ${n.workTo}, then warm-up and a passing air-removal test before any load.`,
      HAZARD,
      `Cycles that usually run in this time: ${n.displaced}.`,
      'A proposal from the records, for local policy and those it authorises to decide.',
    ].join(' '),
};
export type IntervalPlanWords = typeof intervalPlan;
