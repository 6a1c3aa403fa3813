import { isZone } from '../site/wall-clock.ts';
import { certain, type Guess } from './guess.ts';
import { relinked, withSites } from './link-units.ts';
import type { Proposal, ProposedColumn, ProposedSource, UnitLink } from './proposal.ts';
import { readAs } from './read-as.ts';

/** What the files can't say. `answer` gives the proposal with it, or undefined where the text is no answer. */
export interface Question {
  /** What it is about: "zone", or source and place. */
  about: string;
  text: string;
  options: readonly string[];
  answer(proposal: Proposal, text: string): Proposal | undefined;
}

const TOLD = 'you said so';

/** The open questions of a proposal, in the order in which they should be answered. Likely ones are not asked; they are marked in the site file. */
export function openQuestions(proposal: Proposal): Question[] {
  return [
    ...zoneQuestion(proposal),
    ...siteQuestion(proposal),
    ...unitQuestions(proposal),
    ...proposal.sources.flatMap((source, at) => sourceQuestions(source, at, proposal.sites)),
  ];
}

function zoneQuestion({ zone }: Proposal): Question[] {
  if (zone !== undefined) return [];
  return [
    {
      about: 'zone',
      text: 'On the clock of which time zone are the times in the files? An IANA name such as Europe/Berlin',
      options: [],
      answer: (proposal, text) => (isZone(text) ? { ...proposal, zone: text } : undefined),
    },
  ];
}

function siteQuestion({ siteChoices, zone }: Proposal): Question[] {
  if (siteChoices.length === 0) return [];
  const options = ['one site', ...siteChoices.map(({ text }) => text)];
  return [
    {
      about: 'sites',
      text: `Are the files of one site or of several?${zone === undefined ? '' : ' All sites get the same time zone'}`,
      options,
      answer: (proposal, said) => {
        const value = optionOf(said, options);
        if (value === undefined) return undefined;
        return withSites(proposal, proposal.siteChoices.find(({ text }) => text === value) ?? 'one');
      },
    },
  ];
}

const OWN_UNIT = 'a unit of its own';

/** Names of units that only tests or cleanings have: all at once where their numbers speak for it, else one by one. */
function unitQuestions({ siteChoices, unitLinks }: Proposal): Question[] {
  const open = unitLinks.filter(({ unit }) => unit === undefined);
  if (siteChoices.length > 0) return [];
  return [...groupBy(open, ({ site }) => site).entries()].flatMap(([site, links]) =>
    unitsOfSite(site, links),
  );
}

function unitsOfSite(site: string | undefined, open: readonly UnitLink[]): Question[] {
  const at = site === undefined ? '' : ` at ${site}`;
  const tie =
    (edit: (link: UnitLink) => UnitLink) =>
    (proposal: Proposal): Proposal => ({
      ...proposal,
      unitLinks: proposal.unitLinks.map((link) => (link.site === site ? edit(link) : link)),
    });
  const list = (names: readonly (string | undefined)[]): string =>
    names.map((name) => `"${name}"`).join(', ');
  const strange = open.filter(({ doubt }) => doubt === undefined);
  if (strange.length > 1 && strange.every(({ near }) => near !== undefined))
    return [
      ...unitsOfSite(
        site,
        open.filter(({ doubt }) => doubt !== undefined),
      ),
      {
        about: `units${at}`,
        text: `Are ${list(strange.map(({ name }) => name))} of ${[...new Set(strange.flatMap(({ found }) => found))].join(', ')} the units ${list(strange.map(({ near }) => near))} of the cycles${at}, in this order?`,
        options: ['yes', 'no'],
        answer: (proposal, said) => {
          const value = optionOf(said, ['yes', 'no']);
          if (value === undefined) return undefined;
          return tie((link) =>
            link.unit !== undefined || link.doubt !== undefined
              ? link
              : value === 'yes'
                ? { ...link, unit: link.near }
                : { ...link, near: undefined },
          )(proposal);
        },
      },
    ];
  return open.map(({ name, found, near, units, doubt }): Question => {
    const options = [...units.filter((unit) => unit !== name), OWN_UNIT];
    const why =
      capital(doubt) ??
      `No log of cycles${at} has it${near === undefined ? '' : `; by its number it may be "${near}"`}`;
    return {
      about: `unit "${name}"${at}`,
      text: `Which unit is "${name}" of ${found.join(', ')}? ${why}`,
      options,
      answer: (proposal, said) => {
        const value = optionOf(said, options);
        if (value === undefined) return undefined;
        return tie((link) =>
          link.name === name ? { ...link, unit: value === OWN_UNIT ? name : value } : link,
        )(proposal);
      },
    };
  });
}

const capital = (text: string | undefined): string | undefined =>
  text && text[0]!.toUpperCase() + text.slice(1);

/** Lists by key, in the order in which keys come first. */
function groupBy<Value, Key>(values: readonly Value[], keyOf: (value: Value) => Key): Map<Key, Value[]> {
  const groups = new Map<Key, Value[]>();
  for (const value of values) groups.set(keyOf(value), [...(groups.get(keyOf(value)) ?? []), value]);
  return groups;
}

function sourceQuestions(source: ProposedSource, at: number, sites: readonly string[]): Question[] {
  const questions: Question[] = [];
  const change =
    (edit: (source: ProposedSource) => ProposedSource) =>
    (proposal: Proposal): Proposal => ({
      ...proposal,
      sources: proposal.sources.map((one, index) => (index === at ? edit(one) : one)),
    });
  const choose = (
    about: string,
    text: string,
    options: readonly string[],
    edit: (source: ProposedSource, value: string) => ProposedSource,
  ): void => {
    questions.push({
      about: `${source.name}: ${about}`,
      text,
      options,
      answer: (proposal, said) => {
        const value = optionOf(said, options);
        return value === undefined ? undefined : change((one) => edit(one, value))(proposal);
      },
    });
  };
  const editColumn = (
    source: ProposedSource,
    field: string,
    edit: (column: ProposedColumn) => ProposedColumn,
  ): ProposedSource => ({
    ...source,
    columns: source.columns.map((column) => (column.field === field ? edit(column) : column)),
  });

  if (sites.length > 1 && source.site === undefined)
    choose('site', `Of which site is ${source.found[0]}?`, sites, (one, value) => ({ ...one, site: value }));
  if (source.kind.confidence === 'open') {
    const options = [...source.kind.options, 'none'];
    questions.push({
      about: `${source.name}: kind`,
      text: `What does each row of ${source.found[0]} hold? ${source.kind.why}. "none" leaves the file out`,
      options,
      answer: (proposal, said) => {
        const value = optionOf(said, options);
        if (value === undefined) return undefined;
        if (value !== 'none')
          return relinked(
            change((one) => ({ ...readAs(one, value), kind: told(one.kind, value) }))(proposal),
          );
        const left = source.found.map((file) => ({ file, why: 'is to be left out' }));
        return {
          ...proposal,
          sources: proposal.sources.filter((_, index) => index !== at),
          left: [...proposal.left, ...left],
        };
      },
    });
  }
  if (source.decimalMark.confidence === 'open')
    choose(
      'decimal mark',
      `Decimal mark of ${source.found[0]}? ${source.decimalMark.why}`,
      ['.', ','],
      (one, value) => ({
        ...one,
        decimalMark: told(one.decimalMark, value),
      }),
    );
  const dated = source.columns.filter(({ dates }) => dates?.confidence === 'open');
  const [first] = dated;
  // Columns of one table are written alike: one answer is for all that leave the same choice.
  if (first?.dates)
    choose(
      'dates',
      `How are the dates of ${source.found[0]} written, such as "${first.samples[0]}"? ${first.dates.why}`,
      first.dates.options,
      (one, value) =>
        dated.reduce(
          (all, { field }) =>
            editColumn(all, field, (column) => {
              const index = first.dates!.options.indexOf(value);
              const own = column.dates!.options.includes(value) ? value : column.dates!.options[index];
              return own === undefined ? column : { ...column, dates: told(column.dates!, own) };
            }),
          one,
        ),
    );
  for (const column of source.columns) {
    const { field, measure, from, required } = column;
    if (measure?.confidence === 'open' && measure.options.length > 0)
      choose(
        `measure of ${field}`,
        `Unit of measure of "${'headers' in from ? from.headers.join(' ') : field}", such as ${column.samples.join(', ')}? ${measure.why}${required ? '' : '. "none" leaves the column out'}`,
        required ? measure.options : [...measure.options, 'none'],
        (one, value) =>
          value === 'none'
            ? { ...one, columns: one.columns.filter((other) => other.field !== field) }
            : editColumn(one, field, (old) => ({ ...old, measure: told(measure, value) })),
      );
    if ('always' in from && from.always === undefined)
      questions.push({
        about: `${source.name}: ${field}`,
        text: `Which ${field} do the rows of ${source.found[0]} hold? No column says it`,
        options: from.options,
        answer: (proposal, said) => {
          const value = from.options.length > 0 ? optionOf(said, from.options) : said.trim();
          if (value === undefined || value === '') return undefined;
          const match = { confidence: 'certain' as const, why: TOLD };
          return change((one) =>
            editColumn(one, field, (old) => ({
              ...old,
              from: { always: value, options: from.options },
              match,
            })),
          )(proposal);
        },
      });
  }
  for (const [field, words] of Object.entries(source.words))
    for (const { text, count, word, options } of words)
      if (word === undefined)
        choose(
          `${field} "${text}"`,
          `What does "${text}" (${count} rows) mean for ${field}? "unknown" leaves such rows as problems`,
          [...options, 'unknown'],
          (one, value) =>
            value === 'unknown'
              ? one
              : { ...one, words: { ...one.words, [field]: withWord(one, field, text, value) } },
        );
  if (source.wide?.month && 'always' in source.wide.month && source.wide.month.always === undefined)
    questions.push({
      about: `${source.name}: month`,
      text: `Of which month is ${source.found[0]}? Such as 2025-03`,
      options: [],
      answer: (proposal, said) =>
        /^20\d\d-(?:0[1-9]|1[0-2])$/.test(said)
          ? change((one) => ({ ...one, wide: { ...one.wide!, month: { always: said } } }))(proposal)
          : undefined,
    });
  return questions;
}

function withWord(source: ProposedSource, field: string, text: string, word: string) {
  return source.words[field]!.map((one) =>
    one.text === text ? { ...one, word, confidence: 'certain' as const, why: TOLD } : one,
  );
}

function told<Value extends string>(guess: Guess<Value>, value: string): Guess<Value> {
  return certain(guess.options.find((option) => option === value) ?? (value as Value), TOLD);
}

/** An answer by the option itself, letter case aside, or by its number in the list. */
function optionOf(said: string, options: readonly string[]): string | undefined {
  const text = said.trim();
  const number = /^\d+$/.test(text) && !options.includes(text) ? options[Number(text) - 1] : undefined;
  return (
    number ??
    options.find((option) => option === text) ??
    options.find((option) => option.toLowerCase() === text.toLowerCase())
  );
}
