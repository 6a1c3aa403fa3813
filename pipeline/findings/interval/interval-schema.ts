import { z } from 'zod';
import { rateSchema } from '../review-schema.ts';
import { bestSchema, candidateSchema, inputInForceSchema, sensitivitySchema } from './argument-schema.ts';
import { CLOCK_OUTCOMES, CLOCKS } from './clocks.ts';
import { measuredSchema } from './measured.ts';
import { scheduleSchema } from './schedule-schema.ts';
import { SPELL_ENDS } from './spells.ts';
import { surfaceSchema } from './surface-schema.ts';

/**
 * The case for a cleaning interval: everything that the command prints and the page shows, as data. Intervals and clocks are in what the case counts (`clock`);
 * expectations are of one year, for all units in use together.
 */

const count = z.number().int().min(0);
const date = z.string().describe('Operating day, yyyy-MM-dd');
const clock = z.enum(CLOCKS);
const outcome = z.enum(CLOCK_OUTCOMES);
export const ANSWERS = ['supported', 'not_supported', 'cannot_tell'] as const;
export const REASONS = [
  'shape_above_1',
  'shape_at_or_below_1',
  'shape_not_above_1_beyond_chance',
  'not_above_1_between_units',
  'too_few_to_show',
  'all_records_differ',
  'no_cleaning_recorded',
  'all_reactive',
  'all_contradicted',
  'no_cleaning_twice',
  'same_clock',
  'too_few_failures',
  'no_fit',
] as const;
export type Reason = (typeof REASONS)[number];

/** Stated outcomes beside the answer: what the case had to do without. */
export const NOTES = [
  'costs_missing',
  'limit_not_given',
  'no_interval_in_force',
  'units_with_other_intervals',
  'limit_beyond_record',
  'in_force_beyond_record',
  'in_force_beyond_instructions',
  'candidates_beyond_instructions',
  'candidates_beyond_record',
  'candidates_without_limit',
  'few_unit_eras',
  'mostly_reactive',
  'no_units_in_use',
] as const;
export type Note = (typeof NOTES)[number];

export const shapeFitSchema = z.strictObject({
  outcome,
  clock,
  reading: z.enum(['site', 'all_records']).describe('How records that the cycle log contradicts are read'),
  events: count.describe('Failure episodes that began at risk, or aborts'),
  chances: count.describe('Days at risk, or production cycles on them'),
  spells: count,
  clusters: count.describe('Units between resets of their baseline; each has its own level (frailty)'),
  shape: z.number().nullable().describe('Above 1: the risk rises with the clock'),
  low: z.number().nullable(),
  high: z.number().nullable().describe('Null also where the data set no upper bound'),
  likelihood_ratio: z.number().nullable().describe('Twice the log-likelihood lost with shape 1'),
  p: z.number().nullable().describe('Two-sided p of the likelihood-ratio test of shape 1'),
  scale: z.number().nullable().describe('Clock at which one event is expected for each chance'),
  rate: z.number().nullable().describe('Expected events for each chance up to clock 1'),
  spread: z.number().nullable().describe('Standard deviation of the frailties, whose mean is 1'),
  smallest_detectable_shape: z
    .number()
    .nullable()
    .describe('Smallest shape above 1 that this record had the power to tell from 1'),
  data_needed_factor: z
    .number()
    .nullable()
    .describe('Times as much record as there is would tell a shape of 1.5 from 1'),
  method: z.string(),
  not_computable: z.string().nullable().describe('Why there is no fit, in a sentence'),
});
export type ShapeFit = z.infer<typeof shapeFitSchema>;

export const clockClassSchema = z.strictObject({
  level: z.enum(['fleet', 'site', 'unit']),
  scope: z.string().describe('Site or unit; "fleet"'),
  from: count.describe('First clock of the class'),
  to: count.nullable().describe('Last clock of the class; null for the open one'),
  failures: rateSchema.describe('Failure episodes that began, of days at risk'),
  aborts: rateSchema.describe('Aborts plausibly about cleanliness, of production cycles'),
  fitted_failures: z.number().nullable().describe('Failures that the fit expects in the class'),
  fitted_aborts: z.number().nullable(),
});
export type ClockClass = z.infer<typeof clockClassSchema>;

const level = z
  .strictObject({
    events: count,
    chances: count,
    raw: z.number().nullable().describe('Events over chances'),
    factor: z
      .number()
      .nullable()
      .describe('Level beside the mean of the fleet for the same clock, shrunk to it'),
    low: z.number().nullable(),
    high: z.number().nullable(),
  })
  .describe('Level of a unit or site, standardised for its clock and drawn to the mean (partial pooling)');
export const levelRowSchema = z.strictObject({
  level: z.enum(['site', 'unit']),
  scope: z.string(),
  spells: count,
  failures: level,
  aborts: level,
  shape: z
    .strictObject({
      estimate: z.number(),
      low: z.number(),
      high: z.number().nullable(),
      p: z.number(),
      adjusted_p: z
        .number()
        .nullable()
        .describe('Benjamini-Hochberg over the units (or sites) that have a shape'),
      shrunk: z.number().nullable().describe('Drawn to the mean of all (partial pooling)'),
      shrunk_low: z.number().nullable(),
      shrunk_high: z.number().nullable(),
    })
    .nullable()
    .describe('Shape of its own failures; null where it has too few'),
  best: z.number().nullable().describe('Best interval at this level; null where none can be named'),
});
export type LevelRow = z.infer<typeof levelRowSchema>;

export const intervalCaseSchema = z.strictObject({
  format: z.literal('cleaning-evidence interval 1'),
  record_from: date.nullable(),
  record_to: date.nullable(),
  answer: z.strictObject({
    code: z.enum(ANSWERS),
    because: z.array(z.enum(REASONS)),
    aborts: z.enum(ANSWERS).describe('The same question put to the aborts, which decide nothing alone'),
    all_records: z
      .enum(ANSWERS)
      .nullable()
      .describe('The answer with contradicted records counted as done; null where there are none'),
    robust_low: z.number().nullable().describe('Bootstrap interval of the shape of failures'),
    robust_high: z.number().nullable(),
  }),
  notes: z.array(z.enum(NOTES)),
  clock: clock.describe('What the case counts in'),
  clock_origin: z.enum(['site', 'policy', 'default']),
  in_force: z.number().int().nullable().describe('Interval of the chamber policy of most units'),
  units_otherwise: z.array(z.string()).describe('Units whose policy states another interval'),
  longest_by_instructions: z.number().int().nullable(),
  longest_observed: z.number().int().nullable().describe('Longest clock with enough days at risk'),
  longest_considered: z.number().int().nullable(),
  cleanings: z
    .strictObject({
      records: count.describe('Chamber cleanings that were done by their record'),
      routine: count,
      reactive: count,
      supported: count,
      no_return: count,
      not_judged: count.describe('Of the record or of the passing test after it only the date is known'),
      contradicted: count,
      starts: count.describe('Records that start a spell'),
    })
    .describe('Chamber cleaning records, and what the cycle log says of them'),
  spells: z.strictObject({
    spells: count,
    unit_eras: count,
    units: count,
    days_at_risk: count,
    ended_by: z.record(z.enum(SPELL_ENDS), count),
    median_length: z.number().nullable().describe('Of spells that ended with a cleaning'),
  }),
  by_clock: z.array(clockClassSchema),
  cumulative: z
    .array(
      z.strictObject({
        at: z.number(),
        observed: z.number().describe('Nelson-Aalen: failures expected of a unit up to this clock'),
        low: z.number(),
        high: z.number(),
        fitted: z.number().nullable(),
      }),
    )
    .describe('Cumulative failures by clock, all units, beside the fit'),
  fits: z.array(shapeFitSchema),
  fit_check: z
    .strictObject({
      chi_square: z.number().nullable(),
      degrees: count.nullable(),
      p: z.number().nullable(),
      not_computable: z.string().nullable(),
    })
    .describe('Failures of the classes of the clock beside those that the fit expects'),
  levels: z.array(levelRowSchema),
  after_failure: z.strictObject({
    in_force: z.enum(['clock_goes_on', 'cleaned']),
    origin: z.enum(['site', 'record']),
    failures: count,
    followed_by_cleaning: count,
  }),
  inputs: z.array(inputInForceSchema),
  currency: z.string(),
  objective: z
    .enum(['cost', 'hours'])
    .nullable()
    .describe('What is made small; null where nothing could be compared'),
  units_in_use: z.array(z.string()).describe('Units whose years are summed'),
  candidates: z.array(candidateSchema),
  curve: z
    .array(
      z.strictObject({ interval: z.number().int(), value: z.number(), low: z.number(), high: z.number() }),
    )
    .describe('Cost or hours of a year by interval, with the bootstrap interval'),
  best: bestSchema.nullable(),
  sensitivity: z
    .array(sensitivitySchema)
    .describe('Best interval when one input alone is changed, most moving first'),
  bootstrap: z.strictObject({
    drawn: z.enum(['unit_eras', 'spells']),
    samples: count,
    seed: z.number().int(),
    level: z.number(),
  }),
  measured: measuredSchema
    .nullable()
    .describe('How often such a case was right on simulated fleets; null where it was not measured'),
  schedule: scheduleSchema,
  surfaces: surfaceSchema,
});
export type IntervalCase = z.infer<typeof intervalCaseSchema>;
