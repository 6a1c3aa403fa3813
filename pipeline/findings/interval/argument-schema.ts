import { z } from 'zod';

/** The argument in numbers: inputs, candidates with their expected year, the best interval, and what it leans on. */

const expected = z
  .strictObject({ estimate: z.number(), low: z.number(), high: z.number() })
  .describe('Expectation of a year with its bootstrap interval');
export type Expected = z.infer<typeof expected>;

export const inputInForceSchema = z.strictObject({
  name: z.string(),
  unit: z.string().describe('Unit of measure; "cost": money'),
  value: z.number().nullable().describe('Null where it is not given and has no default: not counted'),
  origin: z.enum(['site', 'record', 'default', 'not_given']),
  from_records: z.number().int().min(0).nullable().describe('Values in the record behind it'),
});
export type InputInForce = z.infer<typeof inputInForceSchema>;

const yearSchema = z.strictObject({
  cleanings: expected,
  failures: expected,
  aborts: expected,
  hours_cleanings: expected,
  hours_failures: expected,
  hours_aborts: expected,
  hours_total: expected,
  labour_hours: expected,
  cleaner_litres: expected,
  retests: expected,
  delayed_loads: expected,
  cost_cleanings: expected.nullable(),
  cost_failures: expected.nullable(),
  cost_aborts: expected.nullable(),
  cost_total: expected.nullable(),
});
export type ExpectedYear = z.infer<typeof yearSchema>;

export const candidateSchema = z.strictObject({
  interval: z.number().int().positive(),
  standing: z
    .enum(['compared', 'beyond_record', 'beyond_instructions', 'limit_not_given'])
    .describe(
      'Only a compared candidate has a year. beyond_record: longer than any clock with enough days at risk; limit_not_given: longer than the interval in force, and the instructions’ limit is not given',
    ),
  in_force: z.boolean(),
  year: yearSchema.nullable(),
  break_even: z
    .strictObject({
      failures_avoided: z.number(),
      hours: z.number().nullable(),
      hours_low: z.number().nullable(),
      hours_high: z.number().nullable(),
      cost: z.number().nullable(),
      cost_low: z.number().nullable(),
      cost_high: z.number().nullable(),
    })
    .nullable()
    .describe(
      'Against the interval in force: hours (cost) of a failure from which the shorter of the two pays. Null for the interval in force, and where no failure would be avoided',
    ),
});
export type Candidate = z.infer<typeof candidateSchema>;

export const bestSchema = z.strictObject({
  interval: z.number().int(),
  value: z.number().describe('Cost or hours of a year at it'),
  near_low: z.number().int().describe('Shortest interval within 5 % of the best value'),
  near_high: z.number().int(),
  low: z.number().int().describe('Range to print: within 5 % of the best, or best in the bootstrap (90 %)'),
  high: z.number().int(),
  at_longest: z.boolean().describe('The best is the longest that was looked at: the true one may lie beyond'),
  value_in_force: z.number().nullable(),
  advice: z
    .enum(['earlier', 'keep', 'longer_within_instructions', 'none_in_force'])
    .describe('Where the interval in force stands to the range'),
});
export type Best = z.infer<typeof bestSchema>;

export const sensitivitySchema = z.strictObject({
  input: z.string(),
  low_value: z.number(),
  high_value: z.number(),
  best_at_low: z.number().int(),
  best_at_high: z.number().int(),
  moves: z.number().describe('Log of the longer of the two best intervals over the shorter'),
});
export type Sensitivity = z.infer<typeof sensitivitySchema>;
