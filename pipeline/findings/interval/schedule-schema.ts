import { z } from 'zod';

/** When to clean: the weekly pattern of each unit, windows that fit, and proposals for a month. Hours of the week run from Monday 00:00, wall time of the site. */

const count = z.number().int().min(0);
const date = z.string().describe('Operating day, yyyy-MM-dd');
const wall = z.string().describe('Wall time of the site, yyyy-MM-dd HH:mm');
const instant = z.number().int().describe('ms since 1970');
const hours168 = z.array(z.number()).length(168);

export const NO_PLAN = ['no_interval', 'no_units_in_use', 'record_too_short'] as const;
export const NOT_PLACED = ['units_needed', 'work_hours', 'work_taken'] as const;

export const windowSchema = z.strictObject({
  weekday: z.number().int().min(1).max(7).describe('Day on which the work begins, 1 is Monday'),
  out_from: z
    .string()
    .describe('HH:mm at which the unit goes out of use to cool down; it may be the day before'),
  work_from: z.string().describe('HH:mm'),
  work_to: z.string().describe('HH:mm'),
  back: z.string().describe('HH:mm at which warm-up and air-removal test are over'),
  displaced: z.number().describe('Cycles a week that usually run in it, tests and warm-ups left out'),
  spare_units: z.number().int().describe('Units of the site left beyond those needed, at the tightest hour'),
});
export type Window = z.infer<typeof windowSchema>;

export const proposalSchema = z.strictObject({
  unit: z.string(),
  site: z.string(),
  due: date.nullable().describe('Last operating day of the interval; null where no cleaning is recorded'),
  state: z
    .enum(['due', 'due_before_plan', 'overdue', 'never_recorded'])
    .describe(
      'Due before plan: not overdue when the record ends, but before units may go out of use by the plan',
    ),
  out_at: instant,
  work_at: instant,
  work_to_at: instant,
  back_at: instant,
  out: wall,
  work: wall,
  work_to: wall,
  back: wall,
  displaced: z.number(),
});
export type Proposal = z.infer<typeof proposalSchema>;

export const scheduleSchema = z.strictObject({
  not_planned: z.enum(NO_PLAN).nullable().describe('Why nothing is proposed'),
  interval: z.number().int().nullable().describe('Interval on which the proposals stand'),
  month: z.string().describe('yyyy-MM'),
  from: date,
  earliest: date.describe(
    'Calendar day from which units may go out of use: some days after the newest event',
  ),
  to: date,
  weeks: count.describe('Weeks of the cycle log behind the pattern'),
  cool_down_hours: z.number(),
  work_hours: z.number(),
  return_hours: z.number().describe('Warm-up and air-removal test'),
  sites: z.array(
    z.strictObject({
      site: z.string(),
      units: count.describe('Units in use'),
      needed: hours168.describe('Units that must be available, by hour of the week'),
      needed_origin: z.enum(['site', 'record']),
      worked: hours168.describe('1: work may be done in this hour of the week'),
      worked_origin: z.enum(['site', 'record']),
    }),
  ),
  units: z.array(
    z.strictObject({
      unit: z.string(),
      site: z.string(),
      in_use: hours168.describe('Share of weeks in which a cycle ran in this hour of the week'),
      windows: z
        .array(windowSchema)
        .describe('Windows that displace the fewest cycles, one a weekday at most'),
      no_window: z.enum(['units_needed', 'work_hours']).nullable(),
    }),
  ),
  proposals: z.array(proposalSchema),
  not_placed: z.array(
    z.strictObject({ unit: z.string(), site: z.string(), due: date, why: z.enum(NOT_PLACED) }),
  ),
  newest_event_at: instant.nullable().describe('Newest record: the stamp of the calendar file'),
});
export type Schedule = z.infer<typeof scheduleSchema>;
