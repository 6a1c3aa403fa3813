import { leastSure } from './guess.ts';
import type { Proposal, ProposedColumn, ProposedSource } from './proposal.ts';
import { openQuestions } from './questions.ts';
import { mainDates } from './write-site-file.ts';

/** A proposal as text for a terminal: for each source what it is taken for, each column with confidence and three values, and what is open. */
export function describeProposal(proposal: Proposal): string {
  const questions = openQuestions(proposal);
  return [
    ...proposal.sources.flatMap(describeSource),
    ...(proposal.left.length === 0
      ? []
      : ['Left out:', ...proposal.left.map(({ file, why }) => `  ${file}: ${why}`), '']),
    questions.length === 0 ? 'Nothing is open.' : `Open: ${questions.length}`,
    ...questions.map(({ about, text }) => `  ${about}: ${text}`),
  ].join('\n');
}

function describeSource(source: ProposedSource): string[] {
  const { kind, delimiter, encoding, decimalMark } = source;
  const dates = mainDates(source);
  const written = [
    source.workbook ? 'workbook' : `delimiter ${JSON.stringify(delimiter?.value)} (${delimiter?.confidence})`,
    encoding && `${encoding.value} (${encoding.confidence})`,
    `header in row ${source.headerRow}${source.headerRows === 2 ? ' and the one before' : ''}`,
    `decimal mark "${decimalMark.value ?? '?'}" (${decimalMark.confidence})`,
    dates && `dates ${dates.value ?? dates.options.join(' or ')} (${dates.confidence}: ${dates.why})`,
    source.language && `words mostly ${LANGUAGES[source.language] ?? source.language}`,
  ];
  return [
    `${source.files.join(', ')}: ${kind.value ?? kind.options.join(' or ')} (${kind.confidence}: ${kind.why})`,
    `  ${written.filter(Boolean).join('; ')}`,
    ...source.columns.map(describeColumn),
    ...unitsWithRows(source),
    ...source.unread.map(({ header, samples, personal }) =>
      personal === undefined
        ? `  not read: "${header}" (${samples.join(' | ')})`
        : `  not read: "${header}", looks like ${personal}`,
    ),
    '',
  ];
}

/** Most units that are listed with their rows. */
const MOST_UNITS = 60;

/** Units with their rows: one with very few is often a slip. */
function unitsWithRows({ unitRows }: ProposedSource): string[] {
  if (unitRows.size === 0) return [];
  const list = [...unitRows]
    .sort((a, b) => b[1] - a[1])
    .map(([name, rows]) => `${name} ${rows}`)
    .slice(0, MOST_UNITS);
  const more = unitRows.size - list.length;
  return [`  rows by unit: ${list.join(', ')}${more > 0 ? ` and ${more} more units` : ''}`];
}

function describeColumn({ field, from, match, measure, dates, samples }: ProposedColumn): string {
  const place =
    'headers' in from
      ? from.headers.map((header) => `"${header}"`).join(' + ')
      : 'always' in from
        ? (from.always ?? '?')
        : 'file_name' in from
          ? `the file’s name (${from.file_name})`
          : `the sheet’s name (${from.sheet_name})`;
  const confidence = leastSure(
    match.confidence,
    measure?.confidence ?? 'certain',
    dates?.confidence ?? 'certain',
  );
  const unit = measure ? `, ${measure.value ?? `? ${measure.options.join(' or ')}`}` : '';
  const reasons = [match, measure, dates].flatMap((guess) =>
    guess && guess.confidence !== 'certain' ? guess.why : [],
  );
  return `  ${field} <- ${place}${unit} (${confidence}${reasons.length === 0 ? '' : `: ${reasons.join('; ')}`})${samples.length === 0 ? '' : ` e.g. ${samples.join(' | ')}`}`;
}

const LANGUAGES: Readonly<Record<string, string>> = {
  en: 'English',
  de: 'German',
  fr: 'French',
  es: 'Spanish',
};
