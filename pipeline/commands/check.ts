import { type NothingRead, nothingRead, nothingReadLine } from '../findings/lists/nothing-read.ts';
import { listedFiles, problemsByCode, readingTotals } from '../findings/lists/reading-account.ts';
import { ChamberDays, type ManyChambers, manyChambersLine } from '../findings/record-quality/chamber-days.ts';
import { type Problem, type Reading, tableName } from '../ingest/reading.ts';
import { scalar } from '../learn/write-site-file.ts';
import {
  type Command,
  FOLDER_ARGUMENT,
  JSON_ARGUMENT,
  SITE_ARGUMENT,
  UsageError,
  type Values,
} from './command.ts';
import { type FoundInputs, findInputs } from './find-inputs.ts';
import { describeRows, FirstRows, type PersonalColumn } from './first-rows.ts';
import { readFound } from './read-inputs.ts';
import { checkSiteBySite } from './site-by-site/check-site-by-site.ts';
import { hasManySites } from './site-by-site/read-site-by-site.ts';
import type { Terminal } from './terminal.ts';

/** What looks at rows and records while they go by. */
type Watching = Pick<FirstRows, 'watch' | 'see'>;

/** What is told of a reading: its records are let go. */
type Checked = Pick<Reading, 'files' | 'problems'>;

/** Reads everything and prints what was read, duplicated, rejected and why. Writes nothing else. */
export const checkCommand: Command = {
  definition: {
    meta: {
      name: 'check',
      description:
        'Read everything; print first rows as they stand and as understood, what was read, duplicated, rejected and why. Writes no file. Ends with 1 where a file that holds rows gave no record.',
    },
    args: {
      folder: FOLDER_ARGUMENT,
      site: SITE_ARGUMENT,
      rows: {
        type: 'string',
        valueHint: 'N',
        description: 'Rows of each source to show side by side, as they stand and as understood',
        default: '2',
      },
      json: JSON_ARGUMENT,
    },
  },
  run: async (values, terminal) => {
    const count = Number(values.rows);
    if (!Number.isInteger(count) || count < 0 || count > 100)
      throw new UsageError(`--rows must be a whole number from 0 to 100, found "${values.rows}"`);
    const found = await findInputs(values);
    const first = new FirstRows(found.site, count);
    const chambers = new ChamberDays(found.site);
    const watching: Watching = {
      watch: first.watch,
      see(records) {
        first.see(records);
        chambers.see(records);
      },
    };
    const reading = (await hasManySites(found))
      ? await checkSiteBySite(found, terminal, watching)
      : await readAtOnce(found, values, terminal, watching);
    const nothing = nothingRead(reading);
    const many = chambers.many();
    const rows = first.shown(reading.problems);
    const personal = first.personal();
    const answer = {
      nothing_read: nothing,
      many_chamber_cleanings: many,
      totals: readingTotals(reading),
      files: reading.files,
      problems: problemsByCode(reading),
      first_rows: rows,
      personal_columns: personal,
    };
    terminal.print(
      values.json
        ? JSON.stringify(answer, null, 2)
        : [
            ...alarms(nothing, many),
            ...describeRows(rows),
            '',
            describe(reading),
            ...describePersonal(personal),
          ].join('\n'),
    );
    return nothing.length > 0 ? 1 : undefined;
  },
};

/** Most files and sources that are named of which nothing was read. */
const MOST_ALARMS = 20;

/** What is said before everything else. */
function alarms(nothing: readonly NothingRead[], many: readonly ManyChambers[]): string[] {
  const lines = nothing.slice(0, MOST_ALARMS).map(nothingReadLine);
  if (nothing.length > MOST_ALARMS)
    lines.push(`and nothing of ${nothing.length - MOST_ALARMS} more; --json lists them all`);
  if (many.length > 0) lines.push(manyChambersLine(many));
  return lines.length === 0 ? [] : [...lines, ''];
}

async function readAtOnce(
  found: FoundInputs,
  values: Values,
  terminal: Terminal,
  first: Watching,
): Promise<Checked> {
  const reading = await readFound(found, values, terminal, first.watch);
  first.see(reading.records);
  return reading;
}

function describe(reading: Checked): string {
  const totals = readingTotals(reading);
  const shown = listedFiles(reading.files);
  const files = shown.map((file) => `${tableName(file)}: ${sumLine(file)}`);
  const more = reading.files.length - shown.length;
  if (more > 0) files.push(`and ${more} more files; --json lists them all`);
  const problems = problemsByCode(reading).flatMap(({ source, code, costs, meaning, count, examples }) => [
    `${count} x ${code} in ${source}, ${COSTS[costs]}: ${meaning}`,
    ...examples.map((problem) => {
      const place = [
        problem.file,
        problem.sheet && `sheet ${problem.sheet}`,
        problem.row && `row ${problem.row}`,
        problem.column && `column ${problem.column}`,
      ];
      const found = problem.value === null ? '' : `, found "${problem.value}"`;
      return `    ${place.filter(Boolean).join(', ')}: ${problem.expected}${found}`;
    }),
    ...aliasHint(examples),
  ]);
  return [
    `Read ${totals.files} files: ${sumLine(totals)}`,
    '',
    ...files,
    '',
    problems.length === 0 ? 'No problems.' : 'Problems, with up to three examples each:',
    ...problems,
  ].join('\n');
}

/** How a name that no unit has is said to be another name of one. */
function aliasHint(examples: readonly Problem[]): string[] {
  const unknown = examples.find(
    ({ code, expected, value }) => code === 'unknown_unit' && /alias/.test(expected) && value !== null,
  );
  if (!unknown) return [];
  return [
    `    If it is another name of a unit, its line in the site file is: - { id: …, aliases: [${scalar(unknown.value!)}] }`,
  ];
}

function describePersonal(columns: readonly PersonalColumn[]): string[] {
  if (columns.length === 0) return [];
  return [
    '',
    'Columns that look as if they told of people (take them out of the export where you can):',
    ...columns.map(
      ({ source, column, looks_like, kept }) =>
        `    ${source}, column ${column}: looks like ${looks_like}; ${kept ? 'IT IS KEPT, since the site file names it' : 'not kept'}`,
    ),
  ];
}

const COSTS: Record<string, string> = {
  file: 'costs the file',
  row: 'costs the row',
  cell: 'costs the cell',
  review: 'left out of the review',
};

const sumLine = (of: {
  rows: number;
  records: number;
  duplicates: number;
  rejected: number;
  skipped: number;
  cells_lost: number;
}): string =>
  `${of.rows} rows = ${of.records} records + ${of.duplicates} duplicates + ${of.rejected} rejected + ${of.skipped} skipped; ${of.cells_lost} cells lost`;
