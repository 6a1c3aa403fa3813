import { z } from 'zod';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import { DRIFT_STATES } from '../drift/drift-schema.ts';
import { PROBES } from '../drift/probes.ts';

/**
 * What moved since the review before. It sets two reviews beside each other and tests nothing: both stand on nearly the same record, and counts of two months
 * differ by chance too.
 */

/** `none`: no file was at hand. `damaged`: no JSON, or not of the shape. `other_format`: made by a version whose fields differ. `not_earlier`: of this month or a later one. */
export const PREVIOUS_STATES = ['read', 'none', 'damaged', 'other_format', 'not_earlier'] as const;

const count = z.number().int().min(0);

export const previousSchema = z.strictObject({
  state: z.enum(PREVIOUS_STATES),
  file: z.string().nullable().describe('Where it was looked for, relative to the output folder; or as given'),
  bytes: count.nullable(),
  sha256: z.string().nullable().describe('SHA-256 of the file, hexadecimal'),
  fingerprint: z.string().nullable().describe('Fingerprint of the inputs that it was made from'),
  month: z.string().nullable(),
  version: z.string().nullable().describe('Version of the program that made it'),
  found: z.string().nullable().describe('What was found in place of a review that can be read'),
});
export type Previous = z.infer<typeof previousSchema>;

const dueSchema = z.strictObject({ due: count, done: count, missed: count, not_recorded: count });

export const changesSchema = z.strictObject({
  previous: previousSchema,
  verdicts: z
    .array(
      z.strictObject({
        id: z.string(),
        unit: z.string().nullable(),
        exposure: z.string(),
        outcome: z.string(),
        before: z.string().nullable().describe('Null where the comparison was not made'),
        now: z.string().nullable(),
        ratio_before: z.number().nullable(),
        ratio_now: z.number().nullable(),
      }),
    )
    .describe('Comparisons whose verdict is another'),
  verdicts_same: count,
  drift: z
    .array(
      z.strictObject({
        unit: z.string(),
        probe: z.enum(PROBES),
        before: z.enum(DRIFT_STATES).nullable().describe('State in the era that was in force then'),
        now: z.enum(DRIFT_STATES).nullable(),
        new_era: z.boolean().describe('A baseline was reset between the two reviews'),
      }),
    )
    .describe('Probes whose state is another, each in the era in force'),
  drift_same: count,
  attention: z
    .array(
      z.strictObject({
        unit: z.string(),
        code: z.string(),
        about: z.string().nullable().describe('Probe or comparison that the reason is about'),
        change: z.enum(['new', 'gone', 'stays']),
        level_before: z.enum(['act', 'decide', 'look']).nullable(),
        level_now: z.enum(['act', 'decide', 'look']).nullable(),
      }),
    )
    .describe('Reasons for attention: new, gone, and those that stay'),
  cleaning: z
    .array(
      z.strictObject({
        unit: z.string(),
        task: z.enum(CLEANING_TASKS),
        before: dueSchema.nullable().describe('Null where nothing fell due'),
        now: dueSchema.nullable(),
        moved: z.enum(['fewer_missed', 'more_missed', 'same']).describe('By the share missed of those due'),
      }),
    )
    .describe('Tasks due and done (late ones included) in the two months'),
  settings: z
    .array(z.strictObject({ name: z.string(), before: z.string().nullable(), now: z.string().nullable() }))
    .describe('Settings that were changed between the reviews: what moved may have moved by them'),
  units_new: z.array(z.string()),
  units_gone: z.array(z.string()),
});
export type Changes = z.infer<typeof changesSchema>;
