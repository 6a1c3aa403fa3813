import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { RECORD_SHEETS } from '../../pipeline/templates/record-sheets.ts';

/** Lines as a site might write them on each sheet, in the order of its columns; every other day of September 2026, two units. */
const DAYS = Array.from({ length: 10 }, (_, day) => `2026-09-${String(2 * day + 1).padStart(2, '0')}`);
const UNITS = ['A', 'B'];
const everyDay = (line: (unit: string, day: string, at: number) => string[]): string[][] =>
  DAYS.flatMap((day, at) => UNITS.map((unit) => line(unit, day, at)));

export const LINES: Readonly<Record<string, readonly (readonly string[])[]>> = {
  cleanings: [
    ...everyDay((unit, day, at) => [
      unit,
      'drain strainer',
      `${day} 06:05`,
      '10',
      at % 4 === 3 ? 'missed' : 'done',
      '',
      '',
    ]),
    ['A', 'chamber', '2026-09-04 18:30', '55', 'done', 'routine', 'scale at the door'],
    ['B', 'drain flush', '2026-09-05 17:00', '', 'not due', '', ''],
    ['B', 'professional', '2026-09-08 12:00', '240', 'done', 'reactive', ''],
  ],
  air_removal_tests: everyDay((unit, day, at) => [
    unit,
    `${day} 06:40`,
    at === 6 ? 'fail' : at === 7 ? 'invalid' : 'pass',
    String(100 + at),
    at === 6 ? 'pale in the middle' : '',
  ]),
  leak_tests: everyDay((unit, day, at) => [
    unit,
    `${day} 06:20`,
    (0.02 + at / 200).toFixed(3),
    '0.13',
    String(90 + at),
  ]),
  inspections: everyDay((unit, day, at) => [
    unit,
    day,
    String(at % 5),
    at % 3 === 0 ? 'yes' : 'no',
    at === 2 ? 'rust, left side' : '',
  ]),
  actions: [
    [
      '2026-09-03',
      'Clean the strainer before the first cycle',
      'A',
      'head of department',
      '2026-09-20',
      '2026-09-10',
      'done',
    ],
    ['2026-09-03', 'Ask for the limit of the leak test', '', 'engineer', '2026-10-01', '', 'open'],
    ['2026-09-04', 'Photograph each chamber', 'B', '', '', '', 'dropped'],
  ],
};

/** A blank CSV with lines written into it. */
export const fillCsv = (blank: string, kind: string): string =>
  blank +
  LINES[kind]!.map(
    (line) => `${line.map((cell) => (cell.includes(',') ? `"${cell}"` : cell)).join(',')}\r\n`,
  ).join('');

/** A blank workbook with lines written into its first sheet: dates and numbers as cells of their kind, all else as text; everything beside them stays. */
export function fillWorkbook(blank: Uint8Array, kind: string): Uint8Array {
  const { columns } = RECORD_SHEETS.find((sheet) => sheet.kind === kind)!;
  const entries = unzipSync(blank);
  const path = 'xl/worksheets/sheet1.xml';
  let xml = strFromU8(entries[path]!);
  for (const [at, line] of LINES[kind]!.entries()) {
    const row = at + 2;
    const found = new RegExp(`<row r="${row}">.*?</row>|<row r="${row}"/>`).exec(xml);
    if (!found) throw new Error(`${kind}: no line ${row} made ready`);
    const cells = line.map((cell, index) => {
      const name = `${String.fromCharCode(65 + index)}${row}`;
      const style = new RegExp(`<c r="${name}" (s="\\d+")`).exec(found[0])?.[1] ?? '';
      if (cell === '') return '';
      const { holds } = columns[index]!;
      if (holds === 'instant') return `<c r="${name}" ${style}><v>${serialOf(cell)}</v></c>`;
      if (['integer', 'number', 'leak_rate'].includes(holds)) return `<c r="${name}"><v>${cell}</v></c>`;
      return `<c r="${name}" t="inlineStr"><is><t>${cell}</t></is></c>`;
    });
    xml = xml.replace(found[0], `<row r="${row}">${cells.join('')}</row>`);
  }
  return zipSync({ ...entries, [path]: strToU8(xml) });
}

/** Days since the 30th of December 1899, as a spreadsheet counts them (ECMA-376 part 1, 18.17.4.1). */
function serialOf(time: string): number {
  const utc = time.includes(' ') ? `${time.replace(' ', 'T')}:00Z` : `${time}T00:00:00Z`;
  return (Date.parse(utc) - Date.UTC(1899, 11, 30)) / 86_400_000;
}
