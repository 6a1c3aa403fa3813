import { z } from 'zod';

/**
 * Inputs of the case for a cleaning interval. All may be left out: what the record can say is then taken from it, the rest from the defaults named here, and the case prints
 * where each value came from. Costs have no default: without them the case is made in hours and failures.
 */

/** A description with its measure after the first clause, before what rules or stands where it is left out. */
const measured = (description: string, measure: string): string =>
  description.replace(/[;:]|$/, (end) => `, ${measure}${end}`);
const hours = (description: string) => z.number().min(0).max(1000).describe(measured(description, 'hours'));
const minutes = (description: string) =>
  z.number().min(0).max(10_080).describe(measured(description, 'minutes'));
const price = (description: string) => z.number().min(0).describe(measured(description, 'in the currency'));

const cleaningSchema = z
  .strictObject({
    cool_down_hours: hours(
      'Cool-down before a chamber cleaning: 4 to 5 hours is common practice, the middle is taken; the instructions for use rule',
    ).default(4.5),
    work_minutes: minutes(
      'Work at the chamber; left out: the median of the records of routine cleanings, else 45 (our choice)',
    ).optional(),
    warm_up_minutes: minutes(
      'Warm-up before the test; left out: the median of the cycle log, else 20 (10 to 30 is usual, no source)',
    ).optional(),
    test_minutes: minutes(
      'Air-removal test before the return; left out: the median of the cycle log, else 25 (20 to 30 is usual, no source)',
    ).optional(),
    people: z.number().min(0).max(20).default(1).describe('People at work on a chamber cleaning, number'),
    sprayer_litres: z
      .number()
      .min(0)
      .max(100)
      .default(1.5)
      .describe('Diluted cleaner in one filling of the sprayer, litres'),
    fillings: z
      .number()
      .min(0)
      .max(100)
      .default(1)
      .describe('Fillings of the sprayer used on a chamber cleaning, number'),
    cleaner_ml_per_litre: z
      .number()
      .min(0)
      .max(1000)
      .default(3.90625)
      .describe(
        'Dose of the cleaner, ml per litre of water: half a US fluid ounce a US gallon (5.86 ml in 1.5 l) is common practice; the label rules',
      ),
  })
  .describe('What a chamber cleaning takes');

const failureSchema = z
  .strictObject({
    hours_out_of_use: hours(
      'Time that a unit stays out of use after a failed test; left out: the mean from failed test to next passing test in the record',
    ).optional(),
    retests: z
      .number()
      .min(0)
      .max(100)
      .optional()
      .describe('Further tests after a failed test, number; left out: the mean in the record'),
    delayed_loads: z
      .number()
      .min(0)
      .max(1000)
      .optional()
      .describe('Loads delayed by a failed test, number; left out: not counted'),
    hours_per_abort: hours(
      'Time lost by an abort plausibly about cleanliness; left out: the mean length of such aborted cycles in the record',
    ).optional(),
  })
  .describe('What a failed air-removal test and an aborted cycle take');

const costsSchema = z
  .strictObject({
    currency: z.string().max(12).default('').describe('Currency to print beside the costs'),
    labour_hour: price('An hour of labour').optional(),
    hour_out_of_use: price('An hour of a unit out of use').optional(),
    cleaner_litre: price('A litre of cleaner, undiluted').optional(),
    other_per_cleaning: price('Other material of a chamber cleaning').optional(),
    retest: price('A further air-removal test').optional(),
    repair_per_failure: price('Repair and service that a failed test brings on average').optional(),
    delayed_load: price('A delayed load').optional(),
    abort: price('An aborted cycle, beside the hours that it loses').optional(),
  })
  .describe(
    'Costs, none with a default: with a price on the side of cleaning and one on the side of failure the case is made in money too',
  );

const planningSchema = z
  .strictObject({
    units_in_use: z
      .union([z.number().int().min(0), z.array(z.number().int().min(0)).length(24)])
      .optional()
      .describe(
        'Units of a site that must be available, one number or 24 by hour of the day; left out: as many as were in use at once in that hour of the week in the median week',
      ),
    work_from: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time like "06:00"')
      .optional()
      .describe(
        'Time of day from which the work may begin; left out: hours in which the site starts cycles in at least half of the weeks, and the hour before',
      ),
    work_to: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time like "22:00"')
      .optional()
      .describe('Time of day by which the work must be over; needs work_from'),
    weeks: z
      .number()
      .int()
      .min(2)
      .max(104)
      .default(13)
      .describe('Last weeks of the cycle log from which the weekly pattern is taken, number (a quarter)'),
  })
  .refine(
    ({ work_from, work_to }) => (work_from === undefined) === (work_to === undefined),
    'must hold work_from and work_to together',
  )
  .describe('When cleanings may be proposed');

const waterLimitSchema = z
  .strictObject({
    kind: z.enum(['feed_water', 'condensate']).describe('Kind of water for which the limit holds'),
    determinand: z.string().min(1).describe('Determinand as it stands in the water records'),
    measure: z.string().min(1).describe('Unit of measure as it stands in the water records'),
    low: z.number().optional().describe('Lowest value in order, in the measure'),
    high: z.number().optional().describe('Highest value in order, in the measure'),
    edition: z.string().default('').describe('Standard and edition from which the limit comes'),
  })
  .refine(({ low, high }) => low !== undefined || high !== undefined, 'must hold low or high')
  .describe('A limit of the site; it takes the place of the default of its kind and determinand');

const waterSchema = z
  .strictObject({
    condensate_points: z
      .array(z.string().min(1))
      .default(['condensate'])
      .describe(
        'Phrases in the name of a sampling point that mark it as condensate; other points are feed water',
      ),
    limits: z
      .array(waterLimitSchema)
      .default([])
      .describe('Limits of the site, before the default ones, which follow EN 285 and are partly unverified'),
  })
  .describe('Limits for water and condensate');

export const intervalInputsSchema = z
  .strictObject({
    counted_in: z
      .enum(['calendar_days', 'days_of_use', 'cycles'])
      .optional()
      .describe(
        'What the interval counts; left out: as in the chamber policy of most units, else calendar days',
      ),
    longest_by_instructions: z
      .number()
      .int()
      .positive()
      .optional()
      .describe(
        'Longest interval that the instructions for use allow, in what the interval counts; no candidate lies beyond it. Left out: none lies beyond the interval in force',
      ),
    candidates: z
      .array(z.number().int().positive())
      .min(1)
      .max(20)
      .optional()
      .describe(
        'Intervals to compare, in what the interval counts; left out: weeks (1, 2, 3, 4, 6, 8, 12) or their like in days of use or cycles, and the interval in force',
      ),
    after_failure: z
      .enum(['from_record', 'clock_goes_on', 'cleaned'])
      .default('from_record')
      .describe(
        'What a failed test does to the clock: nothing, or a cleaning starts it anew; from_record: cleaned where at least half of the failures in the record were followed by a reactive cleaning',
      ),
    cleaning: cleaningSchema.prefault({}),
    failure: failureSchema.prefault({}),
    costs: costsSchema.prefault({}),
    planning: planningSchema.prefault({}),
    water: waterSchema.prefault({}),
    draws: z
      .number()
      .int()
      .min(100)
      .max(10_000)
      .default(400)
      .describe('Bootstrap samples behind the intervals of the case, number'),
    seed: z.number().int().default(20260102).describe('Seed of the bootstrap samples'),
  })
  .describe('The case for a cleaning interval: what it costs, how far it may go, when work may be done');
export type IntervalInputs = z.output<typeof intervalInputsSchema>;
