import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { PROBES } from './probes.ts';

const whole = z.number().int().min(0);
const shareSchema = z
  .strictObject({ count: whole, of: whole, low: z.number(), high: z.number() })
  .describe('A share with its exact 95 % interval');
const medianSchema = z
  .strictObject({ of: whole, median: z.number(), low: z.number().nullable(), high: z.number().nullable() })
  .describe('A median with its 95 % interval');

/** How good the drift watch was on simulated sites; made by `npm run calibrate:drift -- --write`. */
export const driftOperatingCharacteristicsSchema = z.strictObject({
  version: z.string().describe('Version of the program that was measured'),
  made: z.string().describe('Date of the measurement'),
  first_seed: whole.describe('Seeds from here on; others served for setting the thresholds'),
  stride: z.number().int().min(1).describe('Days between two looks of the watch'),
  scenarios: z.array(
    z.strictObject({
      scenario: z.string(),
      says: z.string(),
      sites: whole,
      unit_years: z.number().describe('Years of units without a drift of their own'),
      false_calls: z
        .strictObject({ count: whole, per_unit_year: z.number(), low: z.number(), high: z.number() })
        .describe('Calls of a movement where none was, over all probes of a unit; exact 95 % interval'),
      false_by_probe: z.record(z.enum(PROBES), whole),
      found: shareSchema.nullable().describe('Drifts called before the failure'),
      lead_share: medianSchema
        .nullable()
        .describe('Days between call and failure over the length of the drift, 0 where missed'),
      lead_days: medianSchema.nullable(),
      attention_share: medianSchema
        .nullable()
        .describe(
          'As lead_share, from the first day on which the unit stood as moving, stepped or near its limit for it',
        ),
      steps_called_slopes: shareSchema
        .nullable()
        .describe('Steps that were called a movement of their direction within 60 days'),
      steps_named: shareSchema
        .nullable()
        .describe('Steps that were named as such within 60 days, to within ten days'),
      first_intervals: shareSchema
        .nullable()
        .describe('Intervals of the days to the limit at the first call that held the true day'),
      later_intervals: shareSchema.nullable().describe('The same each week after'),
      teeth_named: shareSchema.nullable().describe('Looks at units with a saw-tooth at which it was named'),
      teeth_invented: shareSchema.nullable().describe('Looks at units without one at which one was named'),
    }),
  ),
  run_lengths: z
    .array(
      z.strictObject({
        chart: z.enum(['ewma', 'cusum']),
        autocorrelation: z.number(),
        noise: z.enum(['normal', 'heavy tails']),
        mean: z.number(),
        low: z.number(),
        high: z.number(),
      }),
    )
    .describe('Values to the first false signal of each chart, simulated, with 95 % interval of the mean'),
});
export type DriftOperatingCharacteristics = z.infer<typeof driftOperatingCharacteristicsSchema>;

const KEPT = new URL('./operating-characteristics.json', import.meta.url);

/** The measurement kept with this version of the program; null where none was made. */
export const DRIFT_OPERATING_CHARACTERISTICS: DriftOperatingCharacteristics | null = existsSync(KEPT)
  ? driftOperatingCharacteristicsSchema.parse(JSON.parse(readFileSync(KEPT, 'utf8')))
  : null;
