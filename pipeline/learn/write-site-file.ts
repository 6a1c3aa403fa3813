import type { Guess } from './guess.ts';
import { leastSure } from './guess.ts';
import { rowsOf } from './link-units.ts';
import type { ProposedWord } from './map-words.ts';
import { idOf, type Proposal, type ProposedColumn, type ProposedSource } from './proposal.ts';
import { openQuestions } from './questions.ts';

/**
 * The site file of a proposal, with comments. What is likely is marked "likely", with the reason. What is open stands as "?", which the program refuses to read
 * until it is answered, or is left out with its line as a comment where it is optional: nothing uncertain is decided silently.
 */
export function writeSiteFile(proposal: Proposal): string {
  const questions = openQuestions(proposal);
  const lines = [
    '# Site file, proposed from the files in this folder. Each line that is not proved by them says so:',
    '#   likely: something in the files speaks for it, see the reason; look at it once.',
    '#   ? open: the files can’t tell. "?" must be replaced; lines that are commented out are not read until you say.',
    '# See what is understood with the command check.',
    ...(questions.length === 0
      ? []
      : [
          '#',
          `# Open questions: ${questions.length}`,
          ...questions.map(({ about, text }) => comment(`- ${about}: ${text}`)),
        ]),
    '',
    'sites:',
    ...siteLines(proposal),
    '',
    ...unitLines(proposal),
    '',
    '# How often the chamber is to be cleaned: nobody prescribes it, so without this nothing can be overdue.',
    '# cleaning:',
    '#   - { task: chamber, every: 28, counted_in: calendar_days, unrecorded_means: not_recorded }',
    '',
    proposal.sources.length === 0 ? 'sources: []' : 'sources:',
    ...proposal.sources.flatMap((source) => sourceLines(source, proposal.sites.length > 1)),
    ...(proposal.left.length === 0
      ? []
      : [
          '',
          '# Files of which nothing is proposed:',
          ...proposal.left.map(({ file, why }) => comment(`  ${file} ${why}`)),
        ]),
    '',
  ];
  return lines.join('\n');
}

function siteLines(proposal: Proposal): string[] {
  const zone =
    proposal.zone === undefined
      ? 'zone: "?" # ? open: time zone of the clocks, by its IANA name such as Europe/Berlin'
      : `zone: ${scalar(proposal.zone)}`;
  const barometer = proposal.sources.some(needsBarometer)
    ? [
        '    # barometric_pressure_kpa: 101.325 # likely: sea level; set the mean of your place, it turns gauge readings into absolute pressure',
      ]
    : [];
  if (proposal.siteChoices.length > 0)
    return [
      comment(
        `? open: one site or several? For one, put its short name for "?". Or learn once more with --sites and one of: ${['one (one site)', ...proposal.siteChoices.map(({ by, text }) => `${by} (${text})`)].join('; ')}`,
      ).replace(/^/, '  '),
      '  - id: "?"',
      `    ${zone}`,
      ...barometer,
    ];
  if (proposal.sites.length < 2) return [`  - ${zone}`, ...barometer];
  return proposal.sites.flatMap((id) => [
    `  - id: ${scalar(id)}`,
    `    ${zone}${proposal.zone === undefined ? '' : ' # likely: the same for all sites'}`,
    ...barometer,
  ]);
}

function unitLines(proposal: Proposal): string[] {
  const { unitLinks: links } = proposal;
  if (proposal.units.length === 0 && links.length === 0)
    return [
      '# Units are the names found in the records. Declare them where one has several names, moved, or processes liquids:',
      ...unitsOf(proposal).map((unit) => comment(`  - { id: ${unit} } # ${rowsText(unit, proposal)}`)),
    ];
  const own = links.filter(({ name, unit }) => unit === name).map(({ name }) => name);
  const single = [...new Set([...(links[0]?.units ?? []), ...own])].map((name) => ({
    id: idOf(name),
    name,
    site: undefined,
  }));
  const units = proposal.sites.length > 1 ? proposal.units : single;
  // A name that is tied to a unit, or that nobody has tied yet, is no unit of its own: rows of the latter are problems.
  const isUnit = (name: string, site: string | undefined): boolean =>
    !links.some((link) => link.site === site && link.name === name && link.unit !== name);
  return [
    'units: # those seen so far; a unit that is not here is a problem',
    ...units
      .filter(({ name, site }) => isUnit(name, site))
      .map(({ id, name, site }) => {
        const tied = links.filter((link) => link.site === site && link.unit === name && link.name !== name);
        const names = [name, ...tied.map((link) => link.name)].filter((one) => one !== id);
        return `  - { id: ${scalar(id)}${site === undefined ? '' : `, site: ${scalar(site)}`}${names.length === 0 ? '' : `, aliases: [${names.map(scalar).join(', ')}]`} } # ${rowsText(name, proposal, site)}`;
      }),
    ...links
      .filter(({ unit }) => unit === undefined)
      .map(({ name, site, found, near, doubt }) => {
        const at = site === undefined ? '' : ` at ${site}`;
        const number = near === undefined ? '' : `; by its number it may be ${quote(near)}`;
        const other = near === undefined ? '…' : scalar(idOf(near));
        const ofSite = site === undefined ? '' : `, site: ${scalar(site)}`;
        const why = doubt === undefined ? ` is in no log of cycles${at}${number}` : `: ${doubt}`;
        return comment(
          `  ? open: ${quote(name)} of ${found.join(', ')}${why}. Another name of a unit, whose line is then - { id: ${other}${ofSite}, aliases: [${scalar(name)}] }, or a unit of its own: - { id: ${scalar(idOf(name))}${ofSite}${idOf(name) === name ? '' : `, aliases: [${scalar(name)}]`} }`,
        );
      }),
  ];
}

/** How many rows of all files, or of those of a site, have the name. */
function rowsText(name: string, { sources }: Proposal, site?: string): string {
  const rows = rowsOf(
    name,
    sources.filter((source) => site === undefined || source.site === site),
  );
  return `${rows} ${rows === 1 ? 'row' : 'rows'}`;
}

function sourceLines(source: ProposedSource, ofSeveral: boolean): string[] {
  const { kind, columns, wide } = source;
  const dates = mainDates(source);
  const lines = [
    `  - name: ${scalar(source.name)} # ${source.cut ? 'the first ' : ''}${source.rows} rows looked at in ${source.found.length} ${source.found.length === 1 ? 'file or sheet' : 'files or sheets'}`,
    `    kind: ${kind.value === undefined ? '"?"' : kind.value}${mark(kind)}${kind.value === undefined && kind.options.length > 1 ? `; the columns below are those of ${kind.options[0]}` : ''}`,
    `    files: ${source.files.length === 1 ? scalar(source.files[0]!) : `[${source.files.map(scalar).join(', ')}]`}`,
  ];
  if (ofSeveral)
    lines.push(
      source.site === undefined
        ? '    site: "?" # ? open: whose files these are'
        : `    site: ${scalar(source.site)}`,
    );
  if (source.workbook) lines.push('    format: workbook');
  if (source.delimiter)
    lines.push(`    delimiter: ${JSON.stringify(source.delimiter.value)}${mark(source.delimiter)}`);
  if (source.encoding) lines.push(`    encoding: ${source.encoding.value}${mark(source.encoding)}`);
  if (source.sheet !== undefined) lines.push(`    sheet: ${scalar(source.sheet)}`);
  if (source.sheets !== undefined)
    lines.push(
      `    sheets: ${source.sheets === 'all' ? 'all' : `[${source.sheets.map(scalar).join(', ')}]`}`,
    );
  if (source.headerRows === 2) lines.push('    header_rows: 2');
  if (source.comment !== undefined) lines.push(`    comment: ${scalar(source.comment)}`);
  if (source.decimalMark.value !== '.')
    lines.push(
      `    decimal_mark: ${JSON.stringify(source.decimalMark.value ?? '?')}${mark(source.decimalMark)}`,
    );
  if (dates)
    lines.push(`    dates: ${dates.value === undefined ? '"?"' : scalar(dates.value)}${mark(dates)}`);
  lines.push('    columns:', ...columns.flatMap((column) => columnLines(column, dates)));
  const words = wordLines(source);
  if (words.length > 0) lines.push('    values: # the record’s word: the words of the export', ...words);
  const skip = Object.entries(source.skip);
  if (skip.length > 0)
    lines.push(
      ofSeveral
        ? '    skip: # rows of the other sites, and rows that are no records, likely; a site that is new must be added here'
        : '    skip: # rows that are no records, likely',
      ...skip.map(([column, texts]) => `      ${scalar(column)}: [${texts.map(scalar).join(', ')}]`),
    );
  if (wide) lines.push('    wide: # a column a day', ...wideLines(wide));
  if (source.unread.length > 0) {
    lines.push('    # Columns that are not read and not kept:');
    for (const { header, samples, personal } of source.unread)
      lines.push(
        personal === undefined
          ? `    ${comment(`  ${header}: ${samples.map(quote).join(', ')}`)}`
          : `    ${comment(`  ${header}: looks like ${personal} (not shown)`)}`,
      );
  }
  lines.push('');
  return lines;
}

/** The pattern that most columns of the source have, an open one first. */
export function mainDates({ columns }: ProposedSource): Guess<string> | undefined {
  const guesses = columns.flatMap(({ dates }) => dates ?? []);
  return guesses.find(({ confidence }) => confidence === 'open') ?? guesses[0];
}

function columnLines(column: ProposedColumn, main: Guess<string> | undefined): string[] {
  const { field, from, measure, dates, match, samples, required } = column;
  const key = `      ${field}: `;
  const shown = samples.length === 0 ? '' : ` e.g. ${samples.map(quote).join(', ')}`;
  if (!('headers' in from)) {
    if ('always' in from)
      return from.always === undefined
        ? [
            `${key}{ always: "?" } # ? open: ${match.why}${from.options.length > 0 ? `; one of ${from.options.join(', ')}` : ''}`,
          ]
        : [`${key}{ always: ${scalar(from.always)} }${mark(match)}`];
    return [
      `${key}{ ${'file_name' in from ? `file_name: ${scalar(from.file_name)}` : `sheet_name: ${scalar(from.sheet_name)}`} }${mark(match)}${shown}`,
    ];
  }
  const headers =
    from.headers.length === 1 ? scalar(from.headers[0]!) : `[${from.headers.map(scalar).join(', ')}]`;
  const own = dates && main && dates !== main && dates.value !== main.value ? dates : undefined;
  const parts = [`column: ${headers}`];
  if (measure) parts.push(`measure: ${measure.value === undefined ? '"?"' : scalar(measure.value)}`);
  if (own) parts.push(`dates: ${own.value === undefined ? '"?"' : scalar(own.value)}`);
  const text = parts.length === 1 ? headers : `{ ${parts.join(', ')} }`;
  const least = leastSure(match.confidence, measure?.confidence ?? 'certain', own?.confidence ?? 'certain');
  const reasons = [match, measure, own].flatMap((guess) =>
    guess && guess.confidence !== 'certain' ? guess.why : [],
  );
  const because =
    measure?.confidence === 'certain' && measure.why !== 'the header says so'
      ? [...reasons, measure.why]
      : reasons;
  const options = measure?.confidence === 'open' ? `; one of ${measure.options.join(', ')}` : '';
  const note = `${least === 'certain' ? '' : least === 'likely' ? 'likely: ' : '? open: '}${because.join('; ')}${options}`;
  const line = `${key}${text} #${note === '' ? '' : ` ${flat(note)};`}${shown}`;
  return [measure?.confidence === 'open' && !required ? line.replace(/^ {6}/, '      # ') : line];
}

function wordLines({ words }: ProposedSource): string[] {
  const lines: string[] = [];
  for (const [field, list] of Object.entries(words)) {
    const known = new Map<string, ProposedWord[]>();
    for (const one of list)
      if (one.word !== undefined) known.set(one.word, [...(known.get(one.word) ?? []), one]);
    const unknown = list.filter(({ word }) => word === undefined);
    if (known.size === 0 && unknown.length === 0) continue;
    lines.push(known.size === 0 ? `      ${field}: {}` : `      ${field}:`);
    for (const [word, texts] of known) {
      const doubts = texts
        .filter(({ confidence }) => confidence !== 'certain')
        .map(({ text, why }) => `${quote(text)} ${why}`);
      const list = texts.map(({ text }) => scalar(text)).join(', ');
      lines.push(
        `        ${scalar(word)}: [${list}]${doubts.length === 0 ? '' : ` # likely: ${flat(doubts.join('; '))}`}`,
      );
    }
    for (const { text, count, why } of unknown)
      lines.push(
        `        ${comment(`? open: ${quote(text)} (${count} rows): ${why}; put it under a word, or its rows are problems`)}`,
      );
  }
  return lines;
}

function wideLines({ days, month, initials }: NonNullable<ProposedSource['wide']>): string[] {
  const lines = [`      days: ${days.value === undefined ? '"?"' : scalar(days.value)}${mark(days)}`];
  if (month) {
    const [[key, value]] = Object.entries(month) as [[string, string | true | undefined]];
    lines.push(
      `      month: { ${key}: ${value === true ? 'true' : scalar(value ?? '?')} }${value === undefined ? ' # ? open: the month, such as 2025-03' : ''}`,
    );
  }
  if (initials)
    lines.push(
      '      initials_mean: done # likely: initials in a cell mean that the work was done; they are not kept',
    );
  return lines;
}

const mark = ({
  confidence,
  why,
  options,
}: {
  confidence: string;
  why: string;
  options?: readonly unknown[];
}): string =>
  confidence === 'certain'
    ? ''
    : confidence === 'likely'
      ? ` # likely: ${flat(why)}`
      : ` # ? open: ${flat(why)}${options && options.length > 0 ? `; one of ${options.map(String).join(' | ')}` : ''}`;

const needsBarometer = ({ columns }: ProposedSource): boolean =>
  columns.some(({ measure }) => /gauge|vacuum/.test(measure?.value ?? ''));

function unitsOf({ sources }: Proposal): string[] {
  return [...new Set(sources.flatMap(({ units }) => units))].sort().slice(0, 60);
}

/** One line of comment whatever the text holds. */
const comment = (text: string): string => `# ${flat(text)}`;
const flat = (text: string): string => text.replace(/\p{Cc}+|[\u2028\u2029]/gu, ' ');
const quote = (text: string): string => JSON.stringify(text);

const PLAIN = /^\p{L}[\p{L}\p{N} _./°-]*(?<![ ])$/u;
const NOT_TEXT = /^(?:true|false|yes|no|on|off|null|y|n|~|nan|\.inf)$/i;

/** A text as YAML: plain where it can't be taken for anything else, else quoted. */
export function scalar(text: string): string {
  return PLAIN.test(text) && !NOT_TEXT.test(text)
    ? text
    : JSON.stringify(text).replace(/[\u007f-\u009f\u2028\u2029\ufeff\ud800-\udfff]/g, escapeUnit);
}

/** Half characters and invisible ones by number; whole pairs stay as they are. */
const escapeUnit = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
