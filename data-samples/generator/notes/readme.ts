import { isoDay } from '../clock.ts';
import { FIRST_DAY, LAST_DAY, SEED } from '../scenario.ts';
import type { Table } from '../table.ts';
import type { Truth, UnitTruth } from '../truth.ts';
import { fileNotes } from './file-notes.ts';
import { markdownTable } from './markdown-table.ts';

/** The note that introduces the demo data: origin, what was built in, each file, each faulty row. */
export function readme(tables: readonly Table[], truth: Truth): string {
  return `# Demo data

${ORIGIN}

## What was built in

The same list, with all counts, is in [generator/truth.json](generator/truth.json).

${truth.built_in.map(({ id, units, what }) => `- **${id.replaceAll('_', ' ')}** (${unitList(units)}): ${what}`).join('\n')}

Common to all units: the chamber is due every 28 calendar days and comes up to some 26 days late, in stretches; strainers are missed on about one day
of use in ten, in bursts; drain flushes (Q6, T3, T4) about one in ten. A failed test is repeated at once as a rule; where the second fails too
the unit stays out of use until it is mended. After a chamber cleaning come one to three drain purges, then warm-up, air-removal test, production.
A few tests are missing, a few came after the first production cycle, two were invalid, six passed with a long heat-up.

## What happened

Counts of the generator, before any export: days of use (without days of requalification alone), failed days and plausibly-cleanliness aborts
while the chamber was overdue and while it was not. Cleanings that really took place and those of contradicted records both count as done here.

${markdownTable(UNIT_HEADER, Object.entries(truth.units).map(unitRow))}

## What reading should count

One row for each source of the site file; rows = records + duplicates + rejected + skipped.

${markdownTable(
  ['source', 'files', 'rows', 'records', 'duplicates', 'rejected', 'skipped', 'cells lost'],
  Object.entries(truth.reading).map(([source, count]) => [
    source,
    count.files,
    count.rows,
    count.records,
    count.duplicates,
    count.rejected,
    count.skipped,
    count.cells_lost,
  ]),
)}

## The files

${fileNotes(tables)}

## Faulty and odd rows

Each was put in on purpose. Row: line of the file, or row of the sheet, from 1.

${markdownTable(
  ['file', 'row', 'what', 'reading says'],
  truth.faults.map(({ file, row, what, code, fate }) => [file, row, what, code ?? OUTCOME[fate]]),
)}
`;
}

const OUTCOME = { record: 'read', cell: 'read', rejected: 'rejected', skipped: 'skipped', blank: 'nothing' };

const ORIGIN = `Exports of an invented organisation, "Marrow Bay Sterile Supply (invented)", with two sites and ten units, from
${isoDay(FIRST_DAY)} to ${isoDay(LAST_DAY)}. There is no such organisation, hospital, place, maker or person; the two export styles are inventions too and
resemble no product's format.

Origin: made by the program in [generator](generator) with the seed ${SEED}; run it with

\`\`\`sh
npx tsx data-samples/generator/main.ts
\`\`\`

and each file here but the site file comes out again with the same bytes. This note is one of them. The seed was taken from the first 110 whole numbers so that what
the dice gave lies near what was built in: the demo shows what the review looks like when an effect is there, it is no evidence that there is one.

[site.yaml](site.yaml) is the site file to copy; it is written by hand.`;

const UNIT_HEADER = [
  'unit',
  'days of use',
  'cycles',
  'of these production',
  'overdue: days',
  'failed',
  'aborts',
  'in time: days',
  'failed',
  'aborts',
  'purges',
];

function unitList(units: readonly string[]): string {
  return units.length > 8 ? (units.length === 10 ? 'all' : 'all others') : units.join(', ');
}

function unitRow([unit, truth]: [string, UnitTruth]): (string | number)[] {
  const { chamber_overdue: late, chamber_in_time: good } = truth;
  return [
    unit,
    truth.days_of_use,
    truth.cycles,
    truth.production_cycles,
    late.days_of_use,
    late.failed_days,
    late.cleanliness_aborts,
    good.days_of_use,
    good.failed_days,
    good.cleanliness_aborts,
    truth.purges,
  ];
}
