import { createHash } from 'node:crypto';
import { z } from 'zod';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import { DRIFT_STATES } from '../drift/drift-schema.ts';
import { PROBES } from '../drift/probes.ts';
import { fingerprintOf } from '../fingerprint.ts';
import type { Previous } from './changes-schema.ts';

/** The earlier review as it came: the bytes of its `review.json`, and the name under which it is listed. */
export interface PreviousFile {
  file: string;
  bytes: Uint8Array;
}

const count = z.number().int().min(0);
const level = z.enum(['act', 'decide', 'look']);

/** The fields of a review that are set beside those of the next; other fields are left unread. */
const neededSchema = z.object({
  version: z.string().max(40),
  period: z.object({ month: z.string().regex(/^\d{4}-\d{2}$/) }),
  files: z.array(z.object({ sha256: z.string().regex(/^[0-9a-f]{64}$/) })),
  units: z.array(
    z.object({
      unit: z.string(),
      attention: z.array(
        z.object({
          code: z.string(),
          level,
          numbers: z.record(z.string(), z.union([z.number(), z.string(), z.null()])),
          comparison: z.string().nullable(),
        }),
      ),
    }),
  ),
  comparisons: z.array(
    z.object({
      id: z.string(),
      unit: z.string().nullable(),
      exposure: z.string(),
      outcome: z.string(),
      verdict: z.string(),
      ratio: z.number().nullable(),
    }),
  ),
  drift: z.object({
    probes: z.array(
      z.object({
        unit: z.string(),
        probe: z.enum(PROBES),
        state: z.enum(DRIFT_STATES),
        era: z.object({ index: count, current: z.boolean() }),
      }),
    ),
  }),
  cleaning: z.object({
    month: z.array(
      z.object({
        unit: z.string(),
        task: z.enum(CLEANING_TASKS),
        due: count,
        done: count,
        done_late: count,
        missed: count,
        not_recorded: count,
      }),
    ),
  }),
  settings: z.array(z.object({ name: z.string(), value: z.string() })),
});
export type NeededReview = z.infer<typeof neededSchema>;

/**
 * Reads the earlier review as far as it is needed. What is wrong with it is stated, never thrown: this month's review is made with or without it.
 *
 * @param given undefined where there was no file
 * @param lookedFor name under which it was looked for
 * @param month month under review
 * @param format format that this version of the program writes
 */
export function readPrevious(
  given: PreviousFile | undefined,
  lookedFor: string | null,
  month: string,
  format: string,
): { previous: Previous; review: NeededReview | null } {
  const none: Previous = {
    state: 'none',
    file: lookedFor,
    bytes: null,
    sha256: null,
    fingerprint: null,
    month: null,
    version: null,
    found: null,
  };
  if (!given) return { previous: none, review: null };
  const base: Previous = {
    ...none,
    file: given.file,
    bytes: given.bytes.length,
    sha256: createHash('sha256').update(given.bytes).digest('hex'),
  };
  const refuse = (state: Previous['state'], found: string, parts: Partial<Previous> = {}) => ({
    previous: { ...base, ...parts, state, found: found.slice(0, 200) },
    review: null,
  });
  let data: unknown;
  try {
    data = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(given.bytes));
  } catch {
    return refuse('damaged', `${given.bytes.length} bytes that are no JSON`);
  }
  const head = z.object({ format: z.string().max(100) }).safeParse(data);
  if (!head.success) return refuse('damaged', 'JSON that names no format');
  if (head.data.format !== format) return refuse('other_format', head.data.format);
  const read = neededSchema.safeParse(data);
  if (!read.success) {
    const issue = read.error.issues[0]!;
    return refuse('damaged', `${issue.path.join('.')}: ${issue.message}`);
  }
  const review = read.data;
  const known = {
    month: review.period.month,
    version: review.version,
    fingerprint: fingerprintOf(review.files.map((file) => file.sha256)),
  };
  if (review.period.month >= month) return refuse('not_earlier', review.period.month, known);
  return { previous: { ...base, ...known, state: 'read' }, review };
}
