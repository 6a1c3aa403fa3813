import { z } from 'zod';
import { DEFAULT_ABORT_TEXTS } from './abort-texts.ts';
import { ABORT_CLASSES } from './vocabulary.ts';

/** Rules of reading, joining and judging, each with a default that the site may change; the review prints the values in force. */

const purgeSchema = z
  .strictObject({
    under_minutes: z.number().positive().default(5).describe('A drain purge is shorter than this, minutes'),
    within_hours_after_cleaning: z
      .number()
      .min(0)
      .default(4)
      .describe('A drain purge starts within this time after a cleaning record of its unit, hours'),
    until_next_warm_up: z
      .boolean()
      .default(true)
      .describe(
        'Also between a cleaning record and the next warm-up (any cycle that ran to its end) on that operating day',
      ),
    before_exposure: z.boolean().default(true).describe('A drain purge ends before exposure'),
    stopped_by_operator: z
      .boolean()
      .default(true)
      .describe('A drain purge is stopped by the operator (abort text of class operator)'),
    blank_text_is_operator: z
      .boolean()
      .default(true)
      .describe('An abort with no text is read as stopped by the operator with no alarm'),
  })
  .describe(
    'Drain purge: a cycle stopped soon after its start to empty rinse water (common practice, no source)',
  );

const comparisonSchema = z
  .strictObject({
    stratum_days: z
      .number()
      .int()
      .min(30)
      .default(180)
      .describe('Length of a stratum, days: each era is cut into equal parts nearest to it'),
    strainer_window_days: z
      .number()
      .int()
      .min(1)
      .default(7)
      .describe('Days of use over which missed strainer cleanings are counted'),
    level: z.number().min(0.8).max(0.999).default(0.95).describe('Level of the intervals'),
    alpha: z.number().min(0.001).max(0.2).default(0.05).describe('Line for p and adjusted p'),
    power: z.number().min(0.5).max(0.99).default(0.8).describe('Power at which a ratio counts as detectable'),
    ratio_of_interest: z
      .number()
      .min(1.1)
      .max(10)
      .default(2)
      .describe('Ratio that the record should have been able to show'),
    shifts: z
      .number()
      .int()
      .min(999)
      .max(99_999)
      .default(9999)
      .describe('Circular shifts drawn where not all are taken'),
    seed: z.number().int().default(20260101).describe('Seed of the drawn shifts'),
    least_days_each_side: z
      .number()
      .int()
      .min(1)
      .default(10)
      .describe('Fewest days at risk with and without the exposure; fewer: it hardly varies'),
    reactive_share: z
      .number()
      .min(0)
      .max(1)
      .default(0.5)
      .describe('Share of reactive chamber cleanings from which a unit is not comparable'),
  })
  .describe('Comparison of days after missed cleaning with the other days');

const driftSchema = z
  .strictObject({
    least_values: z
      .number()
      .int()
      .min(12)
      .max(200)
      .default(20)
      .describe(
        'Days with a value before a probe is judged in an era, days; half as many where values come once a week. Fewer give no baseline worth the name',
      ),
    least_units: z
      .number()
      .int()
      .min(3)
      .default(3)
      .describe(
        'Units of a site with a value on a day before their common movement is taken out, units; at a site with two each is compared with the other',
      ),
    memory_days: z
      .number()
      .int()
      .min(180)
      .max(1100)
      .default(400)
      .describe(
        'Days back to which a probe is judged, days: a little over a year, so that a season is seen whole',
      ),
    show_step_days: z
      .number()
      .int()
      .min(1)
      .default(60)
      .describe('A step is shown as the probe’s state for so long, days; then the new level is the baseline'),
    near_limit_share: z
      .number()
      .min(0.3)
      .max(1)
      .default(0.8)
      .describe(
        'A probe is near its limit from this share of the way from baseline to limit on (our choice)',
      ),
    wet_hours: z
      .number()
      .min(0)
      .default(12)
      .describe(
        'A leak test so soon after a chamber cleaning or drain flush is shown and not judged, hours: rinse water reads as a leak',
      ),
    heat_up_deviations: z
      .number()
      .min(2)
      .max(10)
      .default(4)
      .describe(
        'Own limits of the heat-up time of a passing test, robust standard deviations either side: about one false mark in 50 unit-years',
      ),
  })
  .describe('Watch on the empty daily cycles');

export const rulesSchema = z.strictObject({
  purge: purgeSchema.prefault({}),
  comparison: comparisonSchema.prefault({}),
  drift: driftSchema.prefault({}),
  cool_down_hours: z
    .number()
    .min(0)
    .default(4)
    .describe('Idle time that a chamber needs before it is cleaned, hours; the instructions for use rule'),
  contradicted_counts_as_done: z
    .boolean()
    .default(false)
    .describe('Whether a chamber cleaning that the cycle log contradicts counts as done'),
  reactive_within_days: z
    .number()
    .int()
    .min(0)
    .default(2)
    .describe('A cleaning within so many days after a failure is reactive'),
  leak_limit_kpa_min: z
    .number()
    .positive()
    .default(0.13)
    .describe('Leak limit of tests whose record gives none, kPa/min (EN 285; editions differ, check yours)'),
  heat_up_limits: z
    .enum(['own_baseline', 'off'])
    .default('own_baseline')
    .describe('Whether a pass with a heat-up time outside the unit’s own limits is marked'),
  requalification_tests: z
    .number()
    .int()
    .min(0)
    .default(3)
    .describe('Passing air-removal tests in a row before production after a major repair'),
  abort_texts: z
    .array(
      z.strictObject({
        contains: z
          .string()
          .min(1)
          .describe(
            'Phrase in the abort text; letter case, runs of blanks and the way in which accents are encoded don’t count',
          ),
        class: z.enum(ABORT_CLASSES).describe('Abort class'),
      }),
    )
    .default([])
    .transform((own) => [...own, ...DEFAULT_ABORT_TEXTS])
    .describe('Rows of the table from abort text to class, before the default rows'),
});
export type Rules = z.output<typeof rulesSchema>;
