import { z } from 'zod';
import { RECORD_KINDS } from './vocabulary.ts';

/** Optional parts of the site file that say how files are shaped: sheets as typed paper logs, archives, two sources of one thing. */

const placeSchema = z
  .union([
    z.strictObject({ always: z.string().describe('Text that holds for all files, such as 2025-03') }),
    z.strictObject({ file_name: z.string().describe('Pattern with one * at its place in the file name') }),
    z.strictObject({
      sheet_name: z.string().describe('Pattern with one * at its place in the sheet’s name'),
    }),
    z.strictObject({ title: z.literal(true).describe('It stands in a row above the header') }),
  ])
  .describe('Where the month is said');

export const wideSchema = z
  .strictObject({
    days: z
      .string()
      .describe(
        'Headers of the day columns: a date pattern, or "day of month" where they hold the number of the day',
      ),
    month: placeSchema.optional().describe('Where the month stands; needed with "day of month"'),
    initials_mean: z
      .enum(['done'])
      .optional()
      .describe('What initials in a cell mean; they are not kept. Left out: initials are a problem'),
  })
  .describe(
    'A sheet with a row a unit (or task) and a column a day. Its marks are mapped as values of state; blank cells are no records',
  );

export const archiveLimitsSchema = z
  .strictObject({
    file_bytes: z.number().int().positive().default(200_000_000).describe('Size of an archive, bytes'),
    unpacked_bytes: z
      .number()
      .int()
      .positive()
      .default(2_000_000_000)
      .describe('Size of all that one archive holds, unpacked, bytes; nothing of a larger one is read'),
    entry_bytes: z
      .number()
      .int()
      .positive()
      .default(500_000_000)
      .describe('Size of one file in a .zip, unpacked, bytes: it is held in memory'),
    ratio: z
      .number()
      .positive()
      .default(300)
      .describe(
        'How many times larger a file of more than 1 MB may be unpacked than packed; text packs 5 to 50 times',
      ),
    entries: z.number().int().positive().default(5000).describe('Files in one archive'),
    depth: z.number().int().min(0).max(5).default(2).describe('Archives inside archives'),
  })
  .describe('What an archive (.zip, .gz) may be at most; others are refused and named');
export type ArchiveLimits = z.output<typeof archiveLimitsSchema>;

export const mergeSchema = z
  .strictObject({
    kind: z.enum(RECORD_KINDS).describe('Kind of record'),
    sources: z
      .array(z.string())
      .min(2)
      .describe('Names of the sources, the preferred one first: where both say something, it rules'),
    within_minutes: z
      .number()
      .min(0)
      .max(720)
      .default(5)
      .describe(
        'How far the times of one event may lie apart, minutes; cycle numbers must agree where both have one',
      ),
  })
  .describe(
    'Two sources that tell of the same events with different detail; what the first lacks is filled from the next',
  );
export type MergeRule = z.output<typeof mergeSchema>;
