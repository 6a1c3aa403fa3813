import { recordFields } from '../site/records.ts';
import { RECORD_KINDS, type RecordKind } from '../site/vocabulary.ts';
import { type Beside, BY_PARTS, COMPOSED_SCORE } from './compose-header.ts';
import { FIELD_CONCEPTS, wordList } from './field-concepts.ts';
import { CERTAIN_FROM, type FieldMatch } from './field-match.ts';
import { type Field, fits, knownShare } from './fits-field.ts';
import { foldPhrase } from './fold-phrase.ts';
import { type Confidence, certain, type Guess, likely, open } from './guess.ts';
import { canBeDryVacuum } from './guess-measure.ts';
import { meaningsInGroup } from './header-groups.ts';
import { withoutMeasure } from './header-measure.ts';
import { matchByContent } from './match-by-content.ts';
import { pairTimes } from './pair-times.ts';
import { type ColumnProfile, isDates } from './profile-column.ts';
import type { Meaning, Vocabulary } from './vocabulary.ts';
import { workAsWord } from './work-as-word.ts';

/** What a kind of record would make of a table. */
export interface KindMatch {
  kind: RecordKind;
  matches: readonly FieldMatch[];
  missing: readonly string[];
  /** How surely titles and names of files speak of it; 0: they don't. */
  spoken: number;
  score: number;
}

interface Candidate {
  field: Field;
  column: ColumnProfile;
  score: number;
  meaning: Meaning;
  /** Whether most of its words are those of the field, where the field holds words. */
  known: boolean;
}

/** A column whose words are not those of the field counts less than one whose words are. */
const UNKNOWN_WORDS = 0.85;
/** Share of the words that must be known for it. */
const KNOWN_FROM = 0.5;

/** General concepts count a little less than a field's own. */
const GENERAL = 0.9;

/**
 * The kinds of record that a table may hold, the likeliest first: how many of the kind's fields find a column whose name means them and whose cells fit, how
 * well the words in them are known, and what titles and names of files speak of.
 */
export function matchKinds(
  columns: readonly ColumnProfile[],
  titles: readonly string[],
  vocabulary: Vocabulary,
): KindMatch[] {
  const meanings = new Map(columns.map((column) => [column, meaningsOf(column, vocabulary)]));
  const spoken = new Map<string, number>();
  for (const title of titles)
    for (const { key, score } of vocabulary.kinds(title.replace(/\d+/g, ' ')))
      spoken.set(key, Math.max(spoken.get(key) ?? 0, score));
  return RECORD_KINDS.map((kind) =>
    matchKind(kind, columns, meanings, spoken.get(kind) ?? 0, vocabulary),
  ).sort((a, b) => b.score - a.score);
}

/** The scale of appearance in the name of a column: "(0-4)", "0 to 4". */
const SCALE = /(?<!\d)0\s*(?:-|\u2013|\.{2,3}|to|bis|\u00e0|a|hasta)\s*4(?!\d)/iu;

function meaningsOf(column: ColumnProfile, vocabulary: Vocabulary): Meaning[] {
  const beside = besideOf(column);
  const whole = vocabulary.headerOf(withoutMeasure(column.header), beside);
  const own = column.underGroup;
  const found =
    own === undefined
      ? whole
      : meaningsInGroup(
          whole,
          vocabulary.headerOf(withoutMeasure(own), beside),
          vocabulary.partsOf(column.header.slice(0, column.header.lastIndexOf(own))),
        );
  const onScale = SCALE.test(column.header) && column.texts.every((text) => /^[0-4]$/.test(text));
  return onScale && !found.some(({ key, score }) => key === 'appearance' && score >= COMPOSED_SCORE)
    ? [{ key: 'appearance', score: COMPOSED_SCORE, weak: true, language: '', phrase: BY_PARTS }, ...found]
    : found;
}

/** What a column's measure and numbers say beside the words of its name. */
function besideOf(column: ColumnProfile): Beside {
  const { numeric, texts, said, clocks } = column;
  const holds =
    texts.length === 0
      ? undefined
      : isDates(column)
        ? 'dates'
        : column.timeOfDay !== undefined
          ? 'clock'
          : numeric >= 0.8
            ? 'numbers'
            : 'text';
  const measure =
    said.per !== undefined && said.pressure !== undefined
      ? 'leak'
      : said.duration !== undefined || clocks.length > 0
        ? 'duration'
        : said.temperature !== undefined
          ? 'temperature'
          : said.pressure !== undefined
            ? 'pressure'
            : undefined;
  if (texts.length === 0 || numeric < 0.8) return { hot: undefined, said: measure, holds };
  const sorted = texts.map((text) => Number.parseFloat(text.replace(',', '.'))).sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)]!;
  return {
    hot: (middle >= 100 && middle <= 145) || (middle >= 212 && middle <= 293),
    said: measure,
    holds,
  };
}

/** The kind of record that the matches speak for. */
export function guessKind(kinds: readonly KindMatch[]): Guess<RecordKind> {
  const [best, second] = kinds;
  if (!best || best.score <= 2) return open([...RECORD_KINDS], 'its columns are those of no kind of record');
  const isSpoken = ({ spoken }: KindMatch): boolean => spoken >= SPOKEN_FROM;
  const isNear = (one: KindMatch): boolean => one.score > best.score - 3 || isSpoken(one);
  const options = kinds
    .filter((one) => one === best || (isNear(one) && lackingColumn(one).length === 0))
    .map(({ kind }) => kind);
  const fields = best.matches.map(({ field }) => field).join(', ');
  if (best.missing.length === 0 && best.score - (second?.score ?? 0) >= 3)
    return certain(best.kind, `its columns are ${fields}`);
  const margin = best.score - (second?.score ?? 0);
  const said = kinds.filter((one) => one !== best && isSpoken(one));
  const contested = isSpoken(best) ? [] : said;
  if (contested.length === 0 && margin >= (isSpoken(best) ? 1 : CLEAR))
    return likely(best.kind, `its columns are nearest to it: ${fields}`, options);
  const names = contested.length === 0 ? '' : `; by its name it may be ${listed(contested)}`;
  return open(
    options,
    `its columns fit ${options.join(' and ')}${names}${lacks(kinds.filter(isNear), best)}`,
  );
}

/** A kind that no title speaks of is no question from this lead over the next one on. */
const CLEAR = 1.5;

/** From this nearness on a title or name of a file speaks of a kind. */
const SPOKEN_FROM = 0.7;

const listed = (kinds: readonly KindMatch[]): string => kinds.map(({ kind }) => kind).join(' or ');

/** Fields that one answer can give for all rows of a file. */
const FOR_ALL_ROWS: ReadonlySet<string> = new Set(['unit', 'task', 'kind', 'outcome']);

/** Fields that a kind needs and only a column can hold. */
const lackingColumn = ({ missing }: KindMatch): string[] =>
  missing.filter((field) => !FOR_ALL_ROWS.has(field));

/** What the kinds beside the nearest lack, in words. */
function lacks(kinds: readonly KindMatch[], best: KindMatch): string {
  return kinds
    .filter((one) => one !== best && one.missing.length > 0)
    .map((one) => {
      const only = lackingColumn(one);
      return only.length > 0
        ? `; no column of ${only.join(', ')}, so it can’t be ${one.kind}`
        : `; no column of ${one.missing.join(', ')}, so it can be ${one.kind} only where ${one.missing.length === 1 ? 'one holds' : 'they are one'} for all rows`;
    })
    .join('');
}

function matchKind(
  kind: RecordKind,
  columns: readonly ColumnProfile[],
  meanings: ReadonlyMap<ColumnProfile, readonly Meaning[]>,
  spoken: number,
  vocabulary: Vocabulary,
): KindMatch {
  const fields = recordFields(kind).filter(({ name }) => name in FIELD_CONCEPTS[kind]);
  const candidates: Candidate[] = [];
  for (const field of fields)
    for (const column of columns) {
      const best = bestMeaning(kind, field.name, column, meanings.get(column)!);
      if (
        best &&
        fits(kind, field, column, vocabulary) &&
        !isOtherVacuum(field, column, meanings.get(column)!)
      )
        candidates.push(withWords(kind, { field, column, known: true, ...best }, vocabulary));
    }
  const ranked = candidates.filter(({ score }) => score > 0);
  ranked.sort(
    (a, b) =>
      b.score - a.score ||
      Number(b.field.required) - Number(a.field.required) ||
      Number(isRowId(a)) - Number(isRowId(b)) ||
      a.column.at - b.column.at,
  );
  const taken = new Map<string, Candidate>();
  const used = new Set<ColumnProfile>();
  for (const candidate of ranked) {
    if (taken.has(candidate.field.name) || used.has(candidate.column)) continue;
    taken.set(candidate.field.name, candidate);
    used.add(candidate.column);
  }
  const matches = fields.flatMap((field): FieldMatch[] => {
    const match = taken.get(field.name);
    if (!match) return [];
    return [
      {
        field: field.name,
        columns: [match.column],
        score: match.score,
        ...sureness(match, ranked, used, meanings.get(match.column)!),
      },
    ];
  });
  matches.push(...matchByContent({ kind, fields, matches, columns, used, meanings, vocabulary }));
  const worked = workAsWord(kind, fields, matches, columns, used, meanings, vocabulary);
  const timed = pairTimes(kind, worked, columns, used, meanings);
  const missing = fields
    .filter(({ name, required }) => required && !timed.some((match) => match.field === name))
    .map(({ name }) => name);
  return { kind, matches: timed, missing, spoken, score: scoreOf(kind, timed, missing, spoken, vocabulary) };
}

/** "Vacuum" may be how long it took to draw or how deep it is: numbers that are no depth in any measure are a length. */
const isOtherVacuum = (field: Field, column: ColumnProfile, found: readonly Meaning[]): boolean =>
  field.name === 'dry_vacuum_kpa' &&
  column.said.pressure === undefined &&
  found.some(({ key }) => key === 'evacuation_s') &&
  !canBeDryVacuum(column.texts.map((text) => Number.parseFloat(text.replace(',', '.'))));

/** A database numbers its own rows by an id: beside the number of the cycle it is not that. */
const isRowId = ({ field, column }: Candidate): boolean =>
  field.name === 'cycle_number' && foldPhrase(column.header).split(' ').includes('id');

function withWords(kind: RecordKind, candidate: Candidate, vocabulary: Vocabulary): Candidate {
  const { field, column, score } = candidate;
  if (wordList(kind, field.name) === undefined || column.texts.length === 0) return candidate;
  const share = knownShare(kind, field.name, column, vocabulary);
  const known = share >= KNOWN_FROM;
  // By the parts of its name alone, and by no word, a column is not taken from another field.
  if (share === 0 && !field.required && candidate.meaning.phrase === BY_PARTS)
    return { ...candidate, known, score: 0 };
  return known ? candidate : { ...candidate, known, score: score * UNKNOWN_WORDS };
}

function bestMeaning(
  kind: RecordKind,
  field: string,
  column: ColumnProfile,
  found: readonly Meaning[],
): { score: number; meaning: Meaning } | undefined {
  // A column named as the record's own field needs no vocabulary.
  if (column.header.trim().toLowerCase() === field)
    return { score: 1, meaning: { key: field, score: 1, weak: false, language: 'en', phrase: field } };
  let best: { score: number; meaning: Meaning } | undefined;
  for (const [index, concept] of FIELD_CONCEPTS[kind][field]!.entries()) {
    const meaning = found.find(({ key }) => key === concept);
    if (!meaning) continue;
    // Remarks beside a cycle are seldom what the control printed.
    const far = field === 'abort_text' && concept === 'note' ? 0.85 : GENERAL;
    const score = meaning.score * (index === 0 ? 1 : far);
    if (score > (best?.score ?? 0)) best = { score, meaning };
  }
  // A name that means something else by its own words is not this field by a part of them.
  const other = found.find(
    ({ key }) => key === 'unread' || key === 'person' || (key === 'due' && field !== 'due'),
  );
  return best && other && other.score > best.meaning.score ? undefined : best;
}

function sureness(
  { field, score, meaning, column, known }: Candidate,
  all: readonly Candidate[],
  used: ReadonlySet<ColumnProfile>,
  meanings: readonly Meaning[],
): { confidence: Confidence; why: string } {
  const rival = all.find(
    (other) =>
      other.field === field &&
      other.column !== column &&
      other.score >= score - 0.1 &&
      !used.has(other.column),
  );
  const otherField = all.find(
    (other) => other.column === column && other.field !== field && other.score >= score - 0.02,
  );
  if (column.texts.length === 0)
    return { confidence: 'likely', why: `"${column.header}" by its name; it holds nothing` };
  if (rival)
    return {
      confidence: 'likely',
      why: `"${column.header}" by its name; "${rival.column.header}" may mean it too`,
    };
  if (otherField)
    return { confidence: 'likely', why: `"${column.header}" may mean ${otherField.field.name} too` };
  if (!known)
    return { confidence: 'likely', why: `"${column.header}" by its name; few of its words are known` };
  const person = meanings.find(({ key }) => key === 'person');
  if (score >= CERTAIN_FROM && !meaning.weak && !(person && person.score >= score))
    return { confidence: 'certain', why: `"${column.header}" means it, and what it holds fits` };
  return {
    confidence: 'likely',
    why:
      meaning.phrase === BY_PARTS
        ? `the parts of "${column.header}" say so, and what it holds fits`
        : `"${column.header}" is near to "${meaning.phrase}", and what it holds fits`,
  };
}

/** Fields that most kinds have, and that say little about which kind it is. */
export const COMMON: ReadonlySet<string> = new Set([
  'unit',
  'time',
  'start',
  'from',
  'note',
  'cycle_number',
  'entered_at',
  'end',
  'to',
]);

function scoreOf(
  kind: RecordKind,
  matches: readonly FieldMatch[],
  missing: readonly string[],
  spoken: number,
  vocabulary: Vocabulary,
): number {
  let score = spoken >= SPOKEN_FROM ? 4 * spoken : 0;
  for (const { field, columns, score: near } of matches) {
    const required = recordFields(kind).some(({ name, required }) => name === field && required);
    score += near * (COMMON.has(field) ? 0.5 : required ? 2 : 1.2);
    // A rise of pressure per time is what a leak test is for; its pass or fail follows from it.
    if (field === 'leak_rate_kpa_min' && columns[0]!.said.per && columns[0]!.said.pressure) score += 4;
    if (wordList(kind, field)) score += 3 * knownShare(kind, field, columns[0]!, vocabulary) - 1;
  }
  // The unit may stand in the name of the file, a task or kind in the title: missing, it costs less than what only a column can hold.
  for (const field of missing)
    score -= field === 'kind' ? 3 : ['unit', 'task', 'outcome'].includes(field) ? 1.5 : 6;
  return score;
}
