import { cellText, type RawRow } from '../ingest/cell.ts';
import { type Beside, COMPOSED_SCORE, isReading } from './compose-header.ts';
import { withoutMeasure } from './header-measure.ts';
import type { Meaning, Vocabulary } from './vocabulary.ts';

/** What a column under a group means by its own name alone: less than what group and name say together, and never certain. */
export const UNDER_GROUP = 0.75;

/** Parts of a group's name by which a reading under it is another than its own name says: "Drying" over "Pressure", "Jacket" over "Temp. min". */
const TURNS: ReadonlySet<string> = new Set([
  'evacuation',
  'heating',
  'exhaust',
  'drying',
  'drain',
  'vacuum',
  'leak',
  'elsewhere',
  'other',
  'start',
  'end',
  'planned',
]);

/** A group of the upper row of a header, and the place of each named column under it. */
interface Group {
  name: string;
  columns: number[];
}

/** Texts of the upper row that stand over two named columns or more; a text over one column is part of its name. */
function groupsOf(upper: RawRow, lower: RawRow): Group[] {
  const groups: Group[] = [];
  for (const [at, cell] of lower.cells.entries()) {
    const name = cellText(upper.cells[at]);
    if (name !== '') groups.push({ name, columns: [] });
    if (cellText(cell) !== '') groups.at(-1)?.columns.push(at);
  }
  return groups.filter(({ columns }) => columns.length > 1);
}

/** The own name of each column that stands under a group, by its place. */
export function namesUnderGroups(upper: RawRow, lower: RawRow): Map<number, string> {
  return new Map(
    groupsOf(upper, lower).flatMap(({ columns }) =>
      columns.map((at): [number, string] => [at, cellText(lower.cells[at])]),
    ),
  );
}

/**
 * Whether a row is the lower one of a header in two, since some column is only clear with its group: "Durée" under "Plateau" is the exposure, "Temp. min" under "Jacket"
 * is none of the chamber.
 */
export function isClearWithGroups(upper: RawRow, lower: RawRow, vocabulary: Vocabulary): boolean {
  const nothing: Beside = { hot: undefined, said: undefined };
  const meanings = (text: string): Meaning[] =>
    vocabulary
      .headerOf(withoutMeasure(text), nothing)
      .filter(({ key, score }) => isReading(key) && score >= COMPOSED_SCORE);
  return groupsOf(upper, lower).some(({ name, columns }) =>
    columns.some((at) => {
      const text = cellText(lower.cells[at]);
      const own = meanings(text);
      const [together] = meanings(`${name} ${text}`);
      return together === undefined
        ? own.length > 0 && vocabulary.partsOf(name).has('elsewhere')
        : !own.some(({ key }) => key === together.key);
    }),
  );
}

/**
 * What a column under a group means: what group and name say together, and less surely what its own name says, but for readings that the group turns into others.
 *
 * @param found by group and name together
 * @param own by its own name alone
 */
export function meaningsInGroup(
  found: readonly Meaning[],
  own: readonly Meaning[],
  groupParts: ReadonlySet<string>,
): Meaning[] {
  const isTold = found.some(({ key, score }) => isReading(key) && score >= COMPOSED_SCORE);
  const turns = isTold || [...groupParts].some((part) => TURNS.has(part));
  const added = own
    .filter(({ key }) => !(turns && isReading(key)))
    .map((meaning): Meaning => ({ ...meaning, score: Math.min(meaning.score, UNDER_GROUP), weak: true }))
    .filter(({ key, score }) => !found.some((one) => one.key === key && one.score >= score));
  return [...found.filter(({ key }) => !added.some((one) => one.key === key)), ...added].sort(
    (a, b) => b.score - a.score,
  );
}
