import { z } from 'zod';
import { archiveLimitsSchema, mergeSchema, wideSchema } from './file-shapes.ts';
import { intervalInputsSchema } from './interval-inputs.ts';
import { MEASURES } from './measures.ts';
import { reportSettingsSchema } from './report-settings.ts';
import { rulesSchema } from './rules.ts';
import { CLEANING_TASKS, RECORD_KINDS } from './vocabulary.ts';

/**
 * The site file: what a site declares about itself, its units, its cleaning policy, its sources and its rules.
 * This schema is the only definition: types, validation, the reference page and the JSON Schema for editors come from it.
 */

const id = z
  .string()
  .min(1)
  .max(64)
  .regex(
    /^[\p{L}\p{N}][\p{L}\p{N} ._-]*$/u,
    'must start with a letter or digit and hold letters, digits, blank, . _ or -',
  );
const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date like 2025-03-01');
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time like "04:00"');

const siteSchema = z
  .strictObject({
    id: id.default('site').describe('Short name of the site; may be left out where there is one site'),
    name: z.string().optional().describe('Name to print'),
    zone: z.string().describe('Time zone of the site by its IANA name, for example Europe/Berlin'),
    day_starts: clock
      .default('04:00')
      .describe('Hour at which the operating day starts: a cycle at 01:30 belongs to the day before'),
    barometric_pressure_kpa: z
      .number()
      .min(60)
      .max(110)
      .default(101.325)
      .describe('Mean barometric pressure, kPa; turns gauge and vacuum readings into absolute pressure'),
  })
  .describe('A place with one clock');

const aliasSchema = z.union([
  z
    .string()
    .min(1)
    .transform((name): { name: string; from?: string; to?: string; site?: string } => ({ name })),
  z
    .strictObject({
      name: z.string().min(1).describe('Name that stands in the exports'),
      from: day.optional().describe('First day on which the name means this unit'),
      to: day.optional().describe('Last day on which the name means this unit'),
      site: z
        .string()
        .optional()
        .describe(
          'Site in whose exports the name stands, where the unit was moved; left out: the site of the unit',
        ),
    })
    .describe(
      'Another name of a unit, with the days on which it holds; a name alone is written as text: aliases: [AUT1]',
    ),
]);

const unitSchema = z
  .strictObject({
    id: id.describe('Name of the unit in the review'),
    site: z.string().optional().describe('Site of the unit; may be left out where there is one site'),
    name: z.string().optional().describe('Name to print beside the id'),
    liquids: z.boolean().default(false).describe('Whether the unit processes liquids (drain flush is due)'),
    in_service_since: day
      .optional()
      .describe('First day of service; earlier records are set aside as problems'),
    aliases: z.array(aliasSchema).prefault([]).describe('Other names of the unit in the exports'),
  })
  .describe('A sterilizer');

const policySchema = z
  .strictObject({
    task: z.enum(CLEANING_TASKS).describe('Cleaning task'),
    units: z
      .array(z.string())
      .optional()
      .describe(
        'Units for which this holds; left out: all, and of a drain flush those that process liquids, where any is said to',
      ),
    every: z.number().int().positive().describe('Interval after which the task is due again'),
    counted_in: z
      .enum(['calendar_days', 'days_of_use', 'cycles'])
      .default('calendar_days')
      .describe('What the interval counts'),
    grace_days: z
      .number()
      .int()
      .min(0)
      .default(0)
      .describe(
        'Days (as counted; calendar days where cycles are counted) after which a task not done is missed',
      ),
    unrecorded_means: z
      .enum(['not_recorded', 'missed', 'done'])
      .default('not_recorded')
      .describe(
        'How the site reads a due task without any record: blank is neither done nor missed without this rule',
      ),
  })
  .describe(
    'When a cleaning task is due. The instructions for use and local policy decide; there is no default for the chamber',
  );

const columnSchema = z
  .union([
    z.string().describe('Header of the column'),
    z
      .array(z.string())
      .min(1)
      .describe('Headers of columns that are joined with a blank, such as date and time'),
    z.strictObject({
      column: z.union([z.string(), z.array(z.string()).min(1)]).describe('Header, or headers to join'),
      measure: z.enum(MEASURES).optional().describe('Unit of measure of the column'),
      dates: z.string().optional().describe('Date pattern of this column, where it differs from the source'),
    }),
    z.strictObject({ always: z.string().describe('Value that holds for each row of the source') }),
    z.strictObject({
      file_name: z
        .string()
        .describe('Pattern with one * at the place of the value in the file name, such as log-*.csv'),
    }),
    z.strictObject({
      sheet_name: z
        .string()
        .describe(
          'Pattern with one * at the place of the value in the name of the sheet; * is the whole name',
        ),
    }),
  ])
  .describe('Where a field comes from');

const sourceSchema = z
  .strictObject({
    name: z
      .string()
      .optional()
      .describe('Name of the source in messages and tables; default: kind and position'),
    kind: z.enum(RECORD_KINDS).describe('Kind of record that each row holds'),
    files: z
      .union([z.string(), z.array(z.string()).min(1)])
      .describe('File pattern relative to the input folder, such as cycles-*.csv; ** for sub-folders'),
    site: z.string().optional().describe('Site whose clock the times are on, and whose units the names mean'),
    format: z
      .enum(['by_name', 'delimited', 'workbook'])
      .default('by_name')
      .describe('Delimited text or workbook (XLSX); by_name decides by the file name'),
    delimiter: z
      .enum([',', ';', '\t', '|'])
      .optional()
      .describe('Delimiter; left out: found from the header'),
    encoding: z
      .enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'])
      .optional()
      .describe('Encoding; left out: by the byte order mark, else UTF-8'),
    sheet: z.string().optional().describe('Sheet of a workbook; left out: the first'),
    sheets: z
      .union([z.literal('all'), z.array(z.string()).min(1)])
      .optional()
      .describe('Several sheets of a workbook that are read alike: their names, or all'),
    header_rows: z
      .union([z.literal(1), z.literal(2)])
      .optional()
      .describe(
        'Rows of the header. With 2 the upper text, which holds until the next one, is joined with the lower by a blank',
      ),
    comment: z
      .string()
      .min(1)
      .max(3)
      .optional()
      .describe(
        'Characters at the start of a line that make it a comment, such as #; it is counted as skipped',
      ),
    wide: wideSchema.optional(),
    clock_offset_minutes: z
      .number()
      .min(-1440)
      .max(1440)
      .optional()
      .describe(
        'How far the clock of these files runs ahead of the site’s, minutes (behind: negative); taken off each time of day. Left out: nothing is corrected',
      ),
    decimal_mark: z.enum(['.', ',']).default('.').describe('Decimal mark of numbers'),
    dates: z
      .string()
      .default('yyyy-MM-dd HH:mm:ss')
      .describe(
        'Date pattern: yyyy MM dd HH hh mm ss a MMM EEE (day of the week) XXX (offset from UTC), other characters stand for themselves; seconds and time may be missing. Several with " | " between are each tried. Or "serial 1900", "serial 1904": days as spreadsheets count them',
      ),
    columns: z
      .record(z.string(), columnSchema)
      .default({})
      .describe('Field of the record: where it comes from; left out: a column of the same name'),
    values: z
      .record(z.string(), z.record(z.string(), z.union([z.string(), z.array(z.string())])))
      .default({})
      .describe('Field: the record’s word: the word or words that stand for it in the export'),
    skip: z
      .record(z.string(), z.array(z.string()).min(1))
      .default({})
      .describe(
        'Column: values that mark a row as no record, such as a line of totals; such rows are counted as skipped',
      ),
  })
  .describe('Files of one make and how to read them');

export const siteFileSchema = z
  .strictObject({
    organisation: z.string().optional().describe('Name to print on the review'),
    report: reportSettingsSchema.prefault({}),
    sites: z.array(siteSchema).min(1).describe('Sites; one is enough'),
    units: z
      .array(unitSchema)
      .optional()
      .describe('Units; left out: each name found in the records is a unit, which needs a single site'),
    cleaning: z
      .array(policySchema)
      .default([])
      .describe('Cleaning policy, beside the defaults for strainer, drain and professional cleaning'),
    sources: z
      .array(sourceSchema)
      .optional()
      .describe('Sources; left out: files named by kind, with columns named as the fields'),
    merge: z.array(mergeSchema).optional().describe('Sources that tell of the same events'),
    archives: archiveLimitsSchema.optional(),
    people: z
      .strictObject({
        key_file: z
          .string()
          .min(1)
          .describe(
            'File with the key of the hash, at least 16 bytes, relative to the site file; keep it outside of exports and reports',
          ),
      })
      .optional()
      .describe('Needed where a source maps person: names are then kept as a keyed hash, never as they are'),
    rules: rulesSchema.prefault({}).describe('Rules that differ from the defaults'),
    interval: intervalInputsSchema.prefault({}),
  })
  .describe('Site file');

export type SiteFile = z.output<typeof siteFileSchema>;
export type SiteFileInput = z.input<typeof siteFileSchema>;
export type SiteEntry = z.output<typeof siteSchema>;
export type UnitEntry = z.output<typeof unitSchema>;
export type Policy = z.output<typeof policySchema>;
export type Source = z.output<typeof sourceSchema>;
export type ColumnMapping = z.output<typeof columnSchema>;
