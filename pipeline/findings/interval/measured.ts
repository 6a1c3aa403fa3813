import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';

const share = z.strictObject({
  count: z.number().int().min(0),
  of: z.number().int().min(0),
  low: z.number().nullable().describe('Exact 95 % interval of the share'),
  high: z.number().nullable(),
});

/** How often the case was right on simulated fleets of known shape, level and costs; made by `npm run calibrate:interval -- --write`. */
export const measuredSchema = z.strictObject({
  version: z.string().describe('Version of the program that was measured'),
  made: z.string().describe('Date of the measurement'),
  scenarios: z.array(
    z.strictObject({
      scenario: z.string(),
      says: z.string(),
      shape: z.number().describe('True shape'),
      failures: z.number().describe('Mean number of failures in the record'),
      supported: share.describe('Fleets in which a rise was called supported'),
      shape_held: share.describe('Intervals of the shape that hold the true one'),
      range_held: share.describe('Printed ranges that hold the true best interval'),
    }),
  ),
});
export type Measured = z.infer<typeof measuredSchema>;

const KEPT = new URL('./measured.json', import.meta.url);

/** The measurement kept with this version of the program; null where none was made. */
export const MEASURED: Measured | null = existsSync(KEPT)
  ? measuredSchema.parse(JSON.parse(readFileSync(KEPT, 'utf8')))
  : null;
