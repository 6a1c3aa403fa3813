import { z } from 'zod';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import { CAUSES } from './cause-pattern.ts';
import { PROBES } from './probes.ts';

/**
 * The drift section: how the empty daily cycles of each unit move. Values are in the probe's measure (s, kPa/min or K) and at the level of the unit's
 * air-removal test, rounded to four digits; dates are operating days.
 */

const count = z.number().int().min(0);
const date = z.string().describe('Operating day, yyyy-MM-dd');

export const DRIFT_STATES = ['steady', 'moving', 'near_limit', 'stepped', 'not_enough_data'] as const;
export type DriftState = (typeof DRIFT_STATES)[number];

export const DRIFT_NOTES = [
  'whole_minutes',
  'stuck',
  'measure_changed',
  'missing_values',
  'no_recent_values',
  'after_cleaning',
  'controller_replaced',
  'common_movement_not_removed',
  'undecided',
] as const;
export type DriftNote = (typeof DRIFT_NOTES)[number];

const intervalSchema = z.strictObject({
  value: z.number(),
  low: z.number(),
  high: z.number(),
});

export const driftSeriesSchema = z
  .strictObject({
    from: date.describe('Day 0'),
    day: z.array(z.number().int()).describe('Days after `from`'),
    value: z.array(z.number()).describe('Value of the day, all kinds of cycles put together'),
    adjusted: z
      .array(z.number())
      .describe('The same without the common movement of the site and without a saw-tooth'),
    left_out: z
      .array(
        z.strictObject({
          day: z.number().int(),
          value: z.number(),
          why: z.enum(['stuck', 'after_cleaning']),
        }),
      )
      .describe('Values that are shown and not judged'),
  })
  .describe(
    'Series for drawing, arrays of one length; the common movement is in `sites`. A review of more than 120 units holds the days of the last two years, its table drift all',
  );

export const probeDriftSchema = z.strictObject({
  unit: z.string(),
  site: z.string(),
  probe: z.enum(PROBES),
  measure: z.enum(['s', 'kPa/min', 'K']),
  era: z.strictObject({
    index: count,
    from: date.describe('First operating day of the era with records'),
    to: date,
    opened_by: z.string().nullable(),
    current: z.boolean().describe('Whether this is the era in force; the others are judged at their end'),
  }),
  values: count.describe('Days with a value that is judged'),
  state: z.enum(DRIFT_STATES),
  direction: z.enum(['up', 'down']).nullable(),
  since: date.nullable().describe('First day off the level: of the movement, or of the step'),
  rate_per_week: intervalSchema
    .nullable()
    .describe(
      'Of a movement, at the present level, with its 90 % interval; of a saw-tooth between cleanings',
    ),
  level_now: z.number().nullable().describe('Median of the last five days'),
  baseline: z
    .strictObject({
      centre: z.number().describe('Level before the movement, since the last step'),
      low: z.number(),
      high: z.number().describe('Centre less and plus two standard deviations of a usual day'),
      autocorrelation: z.number().describe('As it matters for slow movements'),
    })
    .nullable(),
  step: z
    .strictObject({ date, before: z.number(), after: z.number() })
    .nullable()
    .describe('The last step in the era'),
  limit: z
    .strictObject({
      value: z.number(),
      source: z.enum(['configured', 'alarm_time', 'failed_before']),
      seen: count.describe('Records that it rests on'),
    })
    .nullable(),
  days_to_limit: z
    .strictObject({
      days: z.number().nullable().describe('Null where it is over two years'),
      low: z.number(),
      high: z.number().nullable().describe('Null where the record sets no upper bound within two years'),
    })
    .nullable()
    .describe('Calendar days from the last value, if the movement goes on as it does; 90 % interval'),
  saw_tooth: z
    .strictObject({
      falls_back_at: z.enum(CLEANING_TASKS),
      cleanings: count.describe('Cleanings at which the fall was seen'),
      fall: z.number().describe('Typical change at a cleaning, at the present level'),
    })
    .nullable(),
  signal: z.enum(['ewma', 'cusum']).nullable().describe('Chart that signalled first'),
  notes: z.array(
    z.strictObject({
      code: z.enum(DRIFT_NOTES),
      since: date.nullable(),
      number: z
        .number()
        .nullable()
        .describe('Share of cycles without a value, factor of a changed measure, leak tests left out, days'),
    }),
  ),
  series: driftSeriesSchema,
});
export type ProbeDrift = z.infer<typeof probeDriftSchema>;

export const siteMovementSchema = z
  .strictObject({
    site: z.string(),
    probe: z.enum(PROBES),
    measure: z.enum(['percent', 'kPa/min', 'K']),
    change_4_weeks: z
      .number()
      .nullable()
      .describe('Median of the last seven days less that of the seven days four weeks before'),
    from: date.describe('Day 0'),
    day: z.array(z.number().int()),
    movement: z.array(z.number()).describe('What moved all units of the site; 0 is the usual day'),
    units: z.array(z.number().int()).describe('Units with a value on the day'),
  })
  .describe(
    'Common movement of a site: steam, water, season. Several units together point to supply, not to a strainer',
  );
export type SiteMovement = z.infer<typeof siteMovementSchema>;

export const unitDriftSchema = z.strictObject({
  unit: z.string(),
  site: z.string(),
  state: z.enum(DRIFT_STATES).describe('The most pressing state of its probes in the era in force'),
  days_to_limit: z.number().nullable().describe('The shortest of its probes'),
  saw_tooth: z.boolean(),
  cause: z
    .strictObject({
      fits_best: z.array(z.enum(CAUSES)).min(1).max(2),
      probes: z.array(z.enum(PROBES)).describe('Probes that move'),
    })
    .nullable()
    .describe('A hint, no diagnosis; only where two or more probes move'),
  events: z
    .array(
      z.strictObject({
        date,
        kind: z.enum([
          'failed_test',
          'repair',
          'controller_replaced',
          'professional_cleaning',
          'chamber',
          'drain_flush',
        ]),
      }),
    )
    .describe('What to mark on the time axis'),
});
export type UnitDrift = z.infer<typeof unitDriftSchema>;

export const driftSchema = z.strictObject({
  to: date.describe('Last operating day that was looked at'),
  units: z.array(unitDriftSchema).describe('By days to the limit, then by state'),
  probes: z.array(probeDriftSchema),
  sites: z.array(siteMovementSchema),
  heat_up_passes: z
    .array(
      z.strictObject({
        unit: z.string(),
        date,
        heat_up_s: z.number(),
        low_s: z.number(),
        high_s: z.number(),
        slow: z.boolean(),
      }),
    )
    .describe('Passing air-removal tests whose heat-up time lies outside the unit’s own limits'),
  leak_tests_after_cleaning: z
    .array(
      z.strictObject({
        unit: z.string(),
        date,
        leak_rate_kpa_min: z.number(),
        task: z.enum(CLEANING_TASKS),
        hours: z.number().nullable().describe('Hours since the cleaning; null where only its date is known'),
      }),
    )
    .describe('A wet chamber reads as a leak: these are shown and not judged'),
});
export type Drift = z.infer<typeof driftSchema>;
