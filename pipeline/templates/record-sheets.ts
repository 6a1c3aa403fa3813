import { z } from 'zod';
import { type FieldHolds, recordFields } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';

/** A column of a blank record sheet. */
export interface SheetColumn {
  /** Field of the record that it fills. */
  field: string;
  /** Its name on the sheet: the field's own, in plain words, by which it is found without any mapping. */
  head: string;
  required: boolean;
  holds: FieldHolds;
  /** What to write. */
  says: string;
  /** The only words that may stand in it; empty where it is free. */
  words: readonly string[];
  /** Least and most that a number may be; undefined where it is none or free upwards. */
  limits: readonly [least: number, most: number] | undefined;
  /** Space that it takes on paper, beside the others. */
  width: number;
}

/** A blank sheet for one kind of record, for sites that have only paper. */
export interface RecordSheet {
  kind: RecordKind;
  /** Name of its files, by which they are found without any mapping. */
  file: string;
  title: string;
  use: string;
  columns: readonly SheetColumn[];
  cautions: readonly string[];
}

const WHEN = 'Date and time, such as 2026-09-14 06:30';
const RELEASES_NOTHING =
  'This sheet is a record. It releases, rejects or recalls no load; local policy and those it authorises decide.';
const INSTRUCTIONS_RULE =
  'The instructions for use of the sterilizer and local policy rule where this sheet says otherwise.';

type Columns = Readonly<Record<string, readonly [width: number, says: string]>>;

const UNIT = [3, 'The unit, always by the same name'] as const;
const NOTE = [8, 'What else is to be known; no names of people, no patient data'] as const;

/** All blank sheets. */
export const RECORD_SHEETS: readonly RecordSheet[] = [
  sheet('cleanings', 'Cleaning log', {
    use: 'One line for each cleaning task that was done, or was due and not done.',
    columns: {
      unit: UNIT,
      task: [4, 'Which task'],
      time: [5, `When the work was done, or was due where it was not. ${WHEN}`],
      minutes: [2.6, 'How long the work took, in minutes'],
      state: [3, 'Whether it was done'],
      reason: [3, 'Routine, or reactive: because of a failure'],
      note: NOTE,
    },
    cautions: [
      'Cleaning is hazardous: let the chamber cool, isolate steam, power, air and water, wear protection, ventilate; no chlorides and no abrasives on stainless steel. Trained and authorised staff only.',
      'Afterwards warm up and pass the air-removal test before any load.',
      INSTRUCTIONS_RULE,
      RELEASES_NOTHING,
    ],
  }),
  sheet('air_removal_tests', 'Air-removal test log', {
    use: 'One line for each test, every repeat included, in the order in which they were read.',
    columns: {
      unit: UNIT,
      time: [5, `When the test was read. ${WHEN}`],
      result: [3, 'As read by a person; invalid where the test itself was not in order'],
      cycle_number: [3, 'Number that the control gave the test cycle'],
      note: NOTE,
    },
    cautions: [
      'After a fail the unit stays out of use until it was inspected and passes.',
      'A pass is no proof of sterility.',
      INSTRUCTIONS_RULE,
      RELEASES_NOTHING,
    ],
  }),
  sheet('leak_tests', 'Leak test log', {
    use: 'One line for each test. The rise of pressure is written in kPa a minute: 1.3 mbar a minute is 0.13, and 13 mbar in ten minutes is 0.13 too.',
    columns: {
      unit: UNIT,
      time: [5, `When the test ended. ${WHEN}`],
      leak_rate_kpa_min: [4, 'Rise of pressure, in kPa a minute, such as 0.08'],
      limit_kpa_min: [4, 'Limit that is set for this unit, in kPa a minute'],
      cycle_number: [3, 'Number that the control gave the test cycle'],
    },
    cautions: [
      'A wet or warm chamber reads as a leak: test it dry and at a steady temperature.',
      'A pass does not stand in for the air-removal test.',
      INSTRUCTIONS_RULE,
      RELEASES_NOTHING,
    ],
  }),
  sheet('inspections', 'Inspection sheet', {
    use: 'One line for each look into a chamber, before it is cleaned. Score all units by the same pictures, so that two people give the same score.',
    columns: {
      unit: UNIT,
      time: [5, `When the chamber was looked at. ${WHEN}, or the date alone`],
      appearance: [3, 'Appearance of the chamber, from 0 (clean) to 4'],
      residue_after_rinsing: [4, 'Whether residue was left after rinsing'],
      note: [10, 'Where and what: scale, rust, stain, debris'],
    },
    cautions: [
      'Look from outside, or reach in only when the chamber is cool and isolated. Trained and authorised staff only.',
      'A clean look is no proof that the unit works.',
      INSTRUCTIONS_RULE,
      RELEASES_NOTHING,
    ],
  }),
  sheet('actions', 'Action list', {
    use: 'One line for each action that a review or meeting decided on. Who decides or does it is written as a role, never as a name.',
    columns: {
      time: [4, 'Day on which it was decided, such as 2026-10-06'],
      action: [10, 'What is to be done'],
      unit: [3, 'The unit, where it is of one'],
      role: [4, 'Role that decides or does it'],
      due: [4, 'Day by which it is to be done'],
      done_on: [4, 'Day on which it was done'],
      state: [3, 'How it stands; blank: done where a day stands under Done on, else open'],
    },
    cautions: ['An action is about a unit or a way of working, not about a person.', RELEASES_NOTHING],
  }),
];

function sheet(
  kind: RecordKind,
  title: string,
  { columns, ...rest }: { use: string; columns: Columns; cautions: readonly string[] },
): RecordSheet {
  const fields = recordFields(kind);
  return {
    kind,
    file: kind.replaceAll('_', '-'),
    title,
    ...rest,
    columns: Object.entries(columns).map(([name, [width, says]]) => {
      const field = fields.find((one) => one.name === name);
      if (!field) throw new Error(`${kind}: no field ${name}`);
      const { required, meta, schema } = field;
      const words =
        meta.holds === 'word'
          ? (schema as unknown as { options: readonly string[] }).options.map(plain)
          : meta.holds === 'yes_no'
            ? ['yes', 'no']
            : [];
      return {
        field: name,
        head: headOf(name),
        required,
        holds: meta.holds,
        says,
        words,
        limits: limitsOf(schema),
        width,
      };
    }),
  };
}

/** What the schema allows: a number that is free upwards has no limits here. */
function limitsOf(schema: unknown): [number, number] | undefined {
  if (!(schema instanceof z.ZodNumber)) return undefined;
  const { minValue, maxValue } = schema;
  return minValue !== null && maxValue !== null && maxValue < Number.MAX_SAFE_INTEGER
    ? [minValue, maxValue]
    : undefined;
}

function plain(name: string): string {
  return name.replaceAll('_', ' ');
}

/** `leak_rate_kpa_min`: "Leak rate kPa min". */
function headOf(field: string): string {
  return plain(field.charAt(0).toUpperCase() + field.slice(1)).replace(/\bkpa\b/, 'kPa');
}
