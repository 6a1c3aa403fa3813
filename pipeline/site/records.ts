import { z } from 'zod';
import {
  ACTION_STATES,
  CLEANING_REASONS,
  CLEANING_STATES,
  CLEANING_TASKS,
  CYCLE_KINDS,
  CYCLE_OUTCOMES,
  type RecordKind,
  SERVICE_KINDS,
  TEST_RESULTS,
} from './vocabulary.ts';

/**
 * The normalised records, one schema each: the only definition of a record. Types, validation, the data dictionary and the
 * ingestors' choice of text codec (by `meta.holds`) all come from here.
 *
 * Instants are milliseconds since 1970-01-01T00:00Z. Required fields are required of a source's column mapping as well.
 */

/** What a field's text holds, which decides how it is read. */
export type FieldHolds =
  | 'text'
  | 'word'
  | 'instant'
  | 'duration'
  | 'temperature'
  | 'pressure'
  | 'leak_rate'
  | 'integer'
  | 'number'
  | 'yes_no'
  | 'person';

export interface FieldMeta {
  holds: FieldHolds;
  /** Unit of measure that the record holds, where it has one. */
  measure?: string;
}

const field = <T extends z.ZodType>(schema: T, holds: FieldHolds, description: string, measure?: string): T =>
  schema.meta({ description, holds, ...(measure ? { measure } : {}) }) as T;

const instant = (description: string) =>
  field(z.number().int(), 'instant', description, 'ms since 1970, UTC');
const text = (description: string) => field(z.string().max(2000), 'text', description);
/** Never the name itself: a keyed hash, and only where the site asks for it. */
const person = (description: string) => field(z.string().regex(/^[0-9a-f]{16}$/), 'person', description);
const seconds = (description: string) => field(z.number().min(0).max(86_400), 'duration', description, 's');
const celsius = (description: string) => field(z.number().min(-20).max(200), 'temperature', description, 'C');
const kilopascal = (description: string) =>
  field(z.number().min(0).max(1000), 'pressure', description, 'kPa absolute');

/** Where a record came from. `row` is the line's number among the file's rows, the header's preamble included, from 1. */
export const originSchema = z.strictObject({
  source: z.string().describe('Name of the source in the site file'),
  file: z.string().describe('File, relative to the input folder'),
  sheet: z.string().nullable().describe('Sheet of a workbook, else empty'),
  row: z.number().int().min(1).describe('Row in the file or sheet, from 1'),
});
export type Origin = z.infer<typeof originSchema>;

/**
 * How well a record's time is known. `time`: as written. `day`: the source gives a date only; the instant is the start of that operating day.
 * `ambiguous`: the wall time occurred twice (clocks back) and nothing decides between them; the earlier is taken.
 * `shifted`: the wall time never occurred (clocks forward); it is moved on by the length of the gap.
 */
export const timeMarkSchema = z.enum(['time', 'day', 'ambiguous', 'shifted']);
export type TimeMark = z.infer<typeof timeMarkSchema>;

const marked = {
  time_mark: timeMarkSchema.describe('How well the time is known'),
  origin: originSchema.describe('Where the record came from'),
};

export const cycleSchema = z.strictObject({
  unit: text('Unit, by its id in the site file'),
  start: instant('Start of the cycle'),
  kind: field(z.enum(CYCLE_KINDS), 'word', 'Kind of cycle'),
  outcome: field(z.enum(CYCLE_OUTCOMES), 'word', 'How the cycle ended'),
  end: instant('End of the cycle').optional(),
  cycle_number: field(
    z.number().int().min(0),
    'integer',
    'Number that the control gave the cycle',
  ).optional(),
  abort_text: text('What the control printed about an abort').optional(),
  evacuation_s: seconds('Evacuation time, start of conditioning to set vacuum').optional(),
  heat_up_s: seconds('Heat-up (come-up) time, last vacuum to set temperature').optional(),
  exposure_s: seconds('Exposure time').optional(),
  exhaust_s: seconds('Exhaust time, end of exposure to near atmosphere').optional(),
  drying_s: seconds('Drying time').optional(),
  exposure_temperature_min_c: celsius('Lowest temperature in exposure').optional(),
  exposure_temperature_max_c: celsius('Highest temperature in exposure').optional(),
  exposure_pressure_kpa: kilopascal('Pressure in exposure').optional(),
  dry_vacuum_kpa: kilopascal('Deepest vacuum in drying').optional(),
  drain_temperature_c: celsius('Temperature at the drain in exposure').optional(),
  ...marked,
});
export type Cycle = z.infer<typeof cycleSchema>;

export const airRemovalTestSchema = z.strictObject({
  unit: text('Unit, by its id in the site file'),
  time: instant('Time of the test'),
  result: field(z.enum(TEST_RESULTS), 'word', 'Result as read by a person'),
  cycle_number: field(z.number().int().min(0), 'integer', 'Number of the test cycle').optional(),
  note: text('Note').optional(),
  entered_at: instant('When the record was typed').optional(),
  person: person('Who read the test, as a keyed hash of the name').optional(),
  ...marked,
});
export type AirRemovalTest = z.infer<typeof airRemovalTestSchema>;

export const leakTestSchema = z.strictObject({
  unit: text('Unit, by its id in the site file'),
  time: instant('Time of the test'),
  leak_rate_kpa_min: field(z.number().min(-5).max(50), 'leak_rate', 'Pressure rise', 'kPa/min'),
  limit_kpa_min: field(
    z.number().positive().max(50),
    'leak_rate',
    'Limit set for this unit',
    'kPa/min',
  ).optional(),
  cycle_number: field(z.number().int().min(0), 'integer', 'Number of the test cycle').optional(),
  ...marked,
});
export type LeakTest = z.infer<typeof leakTestSchema>;

export const cleaningSchema = z.strictObject({
  unit: text('Unit, by its id in the site file'),
  task: field(z.enum(CLEANING_TASKS), 'word', 'Cleaning task'),
  time: instant('When the work was done (its end), or was due where it was not done'),
  start: instant('When the work began').optional(),
  minutes: field(z.number().min(0).max(10_080), 'number', 'Length of the work', 'min').optional(),
  state: field(z.enum(CLEANING_STATES), 'word', 'What the record says of the task').optional(),
  reason: field(z.enum(CLEANING_REASONS), 'word', 'Routine, or reactive (because of a failure)').optional(),
  note: text('Note').optional(),
  entered_at: instant('When the record was typed').optional(),
  person: person('Who did the work, as a keyed hash of the name').optional(),
  ...marked,
});
export type Cleaning = z.infer<typeof cleaningSchema>;

export const serviceSchema = z.strictObject({
  unit: text('Unit, by its id in the site file'),
  from: instant('Begin of the service'),
  kind: field(z.enum(SERVICE_KINDS), 'word', 'Kind of service'),
  to: instant('End of the service').optional(),
  major: field(z.boolean(), 'yes_no', 'Major repair, after which the unit is requalified').optional(),
  note: text('Note').optional(),
  ...marked,
});
export type Service = z.infer<typeof serviceSchema>;

export const inspectionSchema = z.strictObject({
  unit: text('Unit, by its id in the site file'),
  time: instant('Date of the inspection'),
  appearance: field(z.number().int().min(0).max(4), 'integer', 'Appearance of the chamber, 0 (clean) to 4'),
  residue_after_rinsing: field(z.boolean(), 'yes_no', 'Residue left after rinsing').optional(),
  note: text('Note').optional(),
  ...marked,
});
export type Inspection = z.infer<typeof inspectionSchema>;

export const waterSchema = z.strictObject({
  point: text('Sampling point'),
  time: instant('Date of the sample'),
  determinand: text('What was measured'),
  value: field(z.number(), 'number', 'Measured value'),
  measure: text('Unit of measure of the value'),
  site: text('Site').optional(),
  units: text('Units served, separated by spaces').optional(),
  ...marked,
});
export type Water = z.infer<typeof waterSchema>;

/** An action that a review or meeting decided on, from the list that the site keeps. */
export const actionSchema = z.strictObject({
  time: instant('Day on which it was decided'),
  action: text('What is to be done'),
  unit: text('Unit, by its id in the site file; left out: it is of no single unit').optional(),
  role: text('Who decides or does it, as a role; never a name').optional(),
  due: instant('Day by which it is to be done').optional(),
  done_on: instant('Day on which it was done').optional(),
  state: field(z.enum(ACTION_STATES), 'word', 'What the list says of it').optional(),
  ...marked,
});
export type Action = z.infer<typeof actionSchema>;

export const RECORD_SCHEMAS = {
  cycles: cycleSchema,
  air_removal_tests: airRemovalTestSchema,
  leak_tests: leakTestSchema,
  cleanings: cleaningSchema,
  service: serviceSchema,
  inspections: inspectionSchema,
  water: waterSchema,
  actions: actionSchema,
} as const satisfies Record<RecordKind, z.ZodObject>;

/** The record's own instant, by which it is ordered and dated. */
export const TIME_FIELD: Record<RecordKind, string> = {
  cycles: 'start',
  air_removal_tests: 'time',
  leak_tests: 'time',
  cleanings: 'time',
  service: 'from',
  inspections: 'time',
  water: 'time',
  actions: 'time',
};

/** All records of a reading, each list in order of unit, time and origin. */
export interface Records {
  cycles: Cycle[];
  air_removal_tests: AirRemovalTest[];
  leak_tests: LeakTest[];
  cleanings: Cleaning[];
  service: Service[];
  inspections: Inspection[];
  water: Water[];
  actions: Action[];
}

const NOT_FROM_A_COLUMN = new Set(['time_mark', 'origin']);

/** A field of a record that a source's columns fill. */
export interface RecordField {
  name: string;
  required: boolean;
  meta: FieldMeta;
  schema: z.ZodType;
}

const known = new Map<RecordKind, readonly RecordField[]>();

/** Fields of a kind of record that a source's columns fill, with what each holds and whether the record needs it. */
export function recordFields(kind: RecordKind): readonly RecordField[] {
  const fields = known.get(kind) ?? fieldsOf(kind);
  known.set(kind, fields);
  return fields;
}

const fieldsOf = (kind: RecordKind): RecordField[] =>
  Object.entries(RECORD_SCHEMAS[kind].shape as Record<string, z.ZodType>)
    .filter(([name]) => !NOT_FROM_A_COLUMN.has(name))
    .map(([name, schema]) => {
      const inner = schema instanceof z.ZodOptional ? (schema.unwrap() as z.ZodType) : schema;
      return { name, required: inner === schema, meta: inner.meta() as unknown as FieldMeta, schema: inner };
    });
