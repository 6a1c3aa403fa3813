import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';

const shareSchema = z.strictObject({
  of: z.number().int(),
  count: z.number().int(),
  share: z.number(),
  low: z.number(),
  high: z.number(),
});

/** How often the verdicts were wrong on simulated fleets; made by `npm run calibrate -- --write`. */
export const operatingCharacteristicsSchema = z.strictObject({
  version: z.string().describe('Version of the program that was measured'),
  made: z.string().describe('Date of the measurement'),
  fleets: z.number().int().describe('Fleets simulated for each scenario'),
  scenarios: z.array(
    z.strictObject({
      scenario: z.string(),
      says: z.string(),
      fleets: z.number().int(),
      false_shown: shareSchema,
      false_shown_or_suggested: shareSchema,
      units_shown: shareSchema.nullable(),
      units_shown_or_suggested: shareSchema.nullable(),
      fleet_shown: shareSchema.nullable(),
      wrong_exposure_shown: shareSchema.nullable(),
      coverage: shareSchema.nullable(),
      fleet_coverage: shareSchema.nullable(),
      verdicts: z.record(z.string(), z.number()),
    }),
  ),
});
export type OperatingCharacteristics = z.infer<typeof operatingCharacteristicsSchema>;

const KEPT = new URL('./operating-characteristics.json', import.meta.url);

/** The measurement kept with this version of the program; null where none was made. */
export const OPERATING_CHARACTERISTICS: OperatingCharacteristics | null = existsSync(KEPT)
  ? operatingCharacteristicsSchema.parse(JSON.parse(readFileSync(KEPT, 'utf8')))
  : null;
