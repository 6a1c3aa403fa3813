import { z } from 'zod';

/** What inspections and water samples say beside the failures. Both sources are optional: without them the lists are empty. */

const count = z.number().int().min(0);
const date = z.string().describe('yyyy-MM-dd');

export const waterRowSchema = z.strictObject({
  point: z.string(),
  site: z.string(),
  units: z.array(z.string()).describe('Units served; empty: not said'),
  kind: z.enum(['feed_water', 'condensate']),
  determinand: z.string(),
  measure: z.string(),
  samples: count.describe('Samples of the last year of the record'),
  out: count.describe('Of these out of limits'),
  last_date: date,
  last_value: z.number(),
  last_out: z.boolean().nullable().describe('Null where there is no limit to compare with'),
  low: z.number().nullable(),
  high: z.number().nullable(),
  edition: z.string().nullable().describe('Standard and edition of the limit'),
  status: z
    .enum(['site', 'verified', 'unverified'])
    .nullable()
    .describe(
      'site: the site’s own limit; verified: seen in a public reproduction; unverified: an example that was not checked, from which nothing follows',
    ),
  not_compared: z.enum(['no_limit', 'other_measure', 'example_limit']).nullable(),
});
export type WaterRow = z.infer<typeof waterRowSchema>;

export const surfaceSchema = z.strictObject({
  inspections: count,
  inspections_without_clock: count.describe('Before the first counted cleaning of the unit'),
  by_clock: z.array(
    z.strictObject({
      from_day: count,
      to_day: count.nullable(),
      inspections: count,
      mean: z.number().nullable().describe('Mean appearance, 0 clean to 4'),
      scores: z.array(count).length(5).describe('Inspections by appearance 0 to 4'),
      residue: count.describe('Residue left after rinsing'),
      residue_said: count.describe('Inspections that say whether there was any'),
    }),
  ),
  trend: z
    .strictObject({
      answer: z.enum(['rises', 'not_shown', 'cannot_tell']),
      z: z.number().nullable(),
      p: z.number().nullable(),
      gamma: z
        .number()
        .nullable()
        .describe(
          'Of pairs of one unit that differ, the share worse with a later clock less the share better',
        ),
      units: count,
      inspections: count,
      method: z.string(),
      not_computable: z.string().nullable(),
    })
    .describe('Appearance by days since the last counted chamber cleaning, within units'),
  residue_trend: z
    .strictObject({
      z: z.number().nullable(),
      p: z.number().nullable(),
      not_computable: z.string().nullable(),
    })
    .describe('Share with residue after rinsing over the classes of the clock (Cochran-Armitage)'),
  water_samples: count,
  water: z.array(waterRowSchema),
  deposits: z
    .array(
      z.strictObject({
        unit: z.string(),
        site: z.string(),
        residue: count.describe('Inspections with residue after rinsing among the last four that say so'),
        of: count,
        last_date: date,
        water_out: z.array(
          z.strictObject({ point: z.string(), determinand: z.string(), status: z.string() }),
        ),
        water_within: z.array(z.string()).describe('Determinands within limits that were checked'),
        water_examples: z.array(z.string()).describe('Determinands beside an example limit only'),
        advice: z
          .enum(['water_and_professional', 'sample_water', 'compare_water', 'look_again'])
          .describe(
            'water_and_professional: deposits stay and water is out of limits; sample_water: no sample; compare_water: samples, but no checked limit to compare them with; look_again: water in checked limits',
          ),
      }),
    )
    .describe('Units with deposits that rinsing does not take away'),
});
export type Surfaces = z.infer<typeof surfaceSchema>;
