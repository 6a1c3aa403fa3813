import { cellText } from '../ingest/cell.ts';
import { DAY_OF_MONTH, dayNumber, readMonth } from '../ingest/wide-table.ts';
import { CLEANING_STATES } from '../site/vocabulary.ts';
import type { FoundTable } from './find-table.ts';
import { certain, open } from './guess.ts';
import { guessDates } from './guess-dates.ts';
import { byLegend, legendOf } from './legend.ts';
import { mapWords, type ProposedWord, RING } from './map-words.ts';
import type { ProposedWide } from './proposal.ts';
import type { Vocabulary } from './vocabulary.ts';

/** "AB", "a.b.", "AB/CD"; but one letter on each side of a stroke is "N/D" or "n/a". */
const INITIALS = /^(?!\p{L}\/\p{L}$)\p{L}{1,3}(?:[./ -]{0,2}\p{L}{1,3})?\.?$/u;

/** Reads a sheet with a column a day: how the days are written, where the month stands, what the marks mean. */
export function proposeWide(
  table: FoundTable,
  tables: readonly FoundTable[],
  star: string | undefined,
  vocabulary: Vocabulary,
): { wide: ProposedWide; marks: ProposedWord[] } {
  const header = table.headers;
  const names = table.dayColumns.map((at) => header[at]!);
  const words = new Map<string, number>();
  for (const { rows, dayColumns } of tables)
    for (const row of rows)
      for (const at of dayColumns) {
        const text = cellText(row.cells[at]);
        if (text !== '') words.set(text, (words.get(text) ?? 0) + 1);
      }
  const legend = legendOf(table.above);
  const known = byLegend(
    mapWords('cleanings', 'state', { words }, CLEANING_STATES, vocabulary),
    legend,
    vocabulary,
  );
  const initials = known.filter(
    ({ word, text }) =>
      word === undefined &&
      INITIALS.test(text) &&
      text.toLowerCase() !== 'x' &&
      !RING.test(text) &&
      !legend.has(text.toLowerCase()),
  );
  const marks = known
    .filter((word) => !initials.includes(word))
    .map((word) =>
      initials.length > 0 &&
      /^\p{L}$/u.test(word.text) &&
      word.text.toLowerCase() !== 'x' &&
      !legend.has(word.text.toLowerCase())
        ? {
            ...word,
            word: undefined,
            confidence: 'open' as const,
            why: `it may be an initial, as "${initials[0]!.text}" is`,
          }
        : word,
    );
  const numbers = names.every((name) => dayNumber(name) !== undefined);
  const dated = numbers ? undefined : guessDates(names);
  return {
    wide: {
      days: numbers
        ? certain(DAY_OF_MONTH, 'the columns are numbered by day')
        : (dated ?? open([], 'the days can’t be read')),
      month: numbers ? monthPlace(table, star) : undefined,
      initials: initials.length > 0,
    },
    marks,
  };
}

function monthPlace(table: FoundTable, star: string | undefined): ProposedWide['month'] {
  const { sheet, file } = table.sample;
  if (table.above.some((text) => readMonth(text) !== undefined)) return { title: true };
  if (sheet !== null && readMonth(sheet) !== undefined) return { sheet_name: '*' };
  const name = file.slice(file.lastIndexOf('/') + 1);
  if (readMonth(name.replace(/\.[^.]*$/, '')) !== undefined) {
    const pattern = star?.slice(star.lastIndexOf('/') + 1);
    return { file_name: pattern?.includes('*') ? pattern : '*' };
  }
  return { always: undefined };
}
