import { nameUnpacked } from '../ingest/archives.ts';
import { partOfName } from '../ingest/file-pattern.ts';
import { recordFields } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import { BY_PARTS } from './compose-header.ts';
import { wordList } from './field-concepts.ts';
import type { FoundTable } from './find-table.ts';
import { foldPhrase } from './fold-phrase.ts';
import type { ProposedColumn, ProposedFrom } from './proposal.ts';
import type { Vocabulary } from './vocabulary.ts';

/** The sheets of tables: one by its name, several as a list. */
export function sheetsOf(tables: readonly FoundTable[]): {
  sheet: string | undefined;
  sheets: 'all' | string[] | undefined;
  many: boolean;
} {
  const names = [...new Set(tables.flatMap(({ sample }) => sample.sheet ?? []))];
  if (names.length === 0) return { sheet: undefined, sheets: undefined, many: false };
  if (names.length === 1) return { sheet: names[0]!, sheets: undefined, many: false };
  return { sheet: undefined, sheets: names, many: true };
}

/** Required fields without a column: from the name of the file or sheet, from the title, or open. */
export function missingFields(
  kind: RecordKind,
  found: readonly ProposedColumn[],
  wide: boolean,
  place: {
    star: string | undefined;
    names: ReturnType<typeof sheetsOf>;
    tables: readonly FoundTable[];
    titles: readonly string[];
    vocabulary: Vocabulary;
  },
): ProposedColumn[] {
  const { star, names, titles, vocabulary } = place;
  const fields = recordFields(kind).filter(
    ({ name, required }) =>
      required && !found.some(({ field }) => field === name) && !(wide && name === 'time'),
  );
  return fields.map(({ name: field, schema }): ProposedColumn => {
    const options = 'options' in schema ? (schema.options as string[]) : [];
    const make = (
      from: ProposedFrom,
      match: ProposedColumn['match'],
      samples: string[] = [],
    ): ProposedColumn => ({
      field,
      required: true,
      from,
      match,
      measure: undefined,
      dates: undefined,
      samples,
    });
    if (
      field === 'unit' &&
      star !== undefined &&
      !(wide && /\d{4}/.test(starParts(star, place.tables).join('')))
    ) {
      const pattern = star.slice(star.lastIndexOf('/') + 1);
      if (pattern.includes('*'))
        return make(
          { file_name: pattern },
          { confidence: 'likely', why: 'no column names it; the files differ there' },
          starParts(star, place.tables).slice(0, 3),
        );
    }
    if (field === 'unit' && names.many)
      return make(
        { sheet_name: '*' },
        { confidence: 'likely', why: 'no column names it; the sheets do' },
        [...(names.sheets ?? [])].slice(0, 3),
      );
    const list = wordList(kind, field);
    if (list !== undefined && (field === 'task' || field === 'kind')) {
      const meant = titles
        .flatMap((title) => vocabulary.word(list, title))
        .filter(
          ({ key, score, phrase }) => options.includes(key) && score >= 0.6 && holdsAll(titles, phrase),
        );
      const keys = [...new Set(meant.map(({ key }) => key))];
      if (keys.length === 1 && field === 'task')
        return make(
          { always: keys[0]!, options },
          { confidence: 'likely', why: 'no column says it; the title or name of the file does' },
        );
    }
    return make({ always: undefined, options }, { confidence: 'open', why: 'no column says it' });
  });
}

/** Whether a title has all words of a phrase, or was understood by its parts: "Reinigung" is no beginning of "Reinigungsfirma". */
const holdsAll = (titles: readonly string[], phrase: string): boolean =>
  phrase === BY_PARTS ||
  titles.some((title) => {
    const words = foldPhrase(title).split(' ');
    return foldPhrase(phrase)
      .split(' ')
      .every((one) => words.some((word) => word.startsWith(one)));
  });

/** The parts of the files' names at the * of their pattern. */
export function starParts(star: string, tables: readonly FoundTable[]): string[] {
  const part = partOfName(star);
  return [...new Set(tables.map(({ sample }) => part(nameUnpacked(sample.file)) ?? ''))];
}
