import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';
import { UserError } from '../user-error.ts';
import {
  type Beside,
  BY_PARTS,
  COMPOSED_SCORE,
  composedMeanings,
  isElsewhere,
  isReading,
  partsIn,
} from './compose-header.ts';
import { composedWord, contraryOf, deniedPart, isDenied, ONE_STEM, type Stems } from './compose-word.ts';
import { foldPhrase, nearness } from './fold-phrase.ts';

/**
 * General words of the trade, one data file a language. A site adds its own in a file of the same form; no maker's format is among them. A phrase with ~ in
 * front may mean the thing but not always: what rests on it alone is never certain.
 */
const phrases = z.array(z.union([z.string(), z.number(), z.boolean()]).transform(String));
const vocabularySchema = z.strictObject({
  language: z.string().default('site'),
  headers: z.record(z.string(), phrases).default({}),
  unread: phrases.default([]),
  person: phrases.default([]),
  kinds: z.record(z.string(), phrases).default({}),
  words: z.record(z.string(), z.record(z.string(), phrases)).default({}),
  stems: z.record(z.string(), z.record(z.string(), phrases)).default({}),
  totals: phrases.default([]),
  parts: z.record(z.string(), phrases).default({}),
  negative: phrases.default([]),
  devices: phrases.default([]),
});
export type VocabularyFile = z.output<typeof vocabularySchema>;

interface Phrase {
  folded: string;
  /** May mean it, but not always. */
  weak: boolean;
  language: string;
}

/** A meaning found for a text, with how near the text comes to a phrase of it. */
export interface Meaning {
  key: string;
  score: number;
  weak: boolean;
  language: string;
  phrase: string;
}

/** Longer texts are no names of anything. */
const LONGEST = 120;
/** Texts whose meaning is remembered at once. */
const REMEMBERED = 20_000;

/** From this nearness on a phrase speaks for itself, and parts are not asked. */
const NEAR = 0.9;
const NO_STEMS: Stems = new Map();

/** Below this a text does not mean the phrase. */
const LEAST = 0.55;

/** A phrase that may mean something else counts so much less. */
const WEAK = 0.7;
/** Nearness of the same words in another order, and from which on words are cut short. */
const SAME_WORDS = 0.95;
const NEAR_CUT = 0.8;

/** Endings of names in databases: code, name, text, value. */
const ENDING = / (?:cd|cde|code|nm|nme|name|txt|text|val|value|fld|desc|descr|bez|lib)$/;

const LANGUAGES = ['en', 'de', 'fr', 'es'] as const;

/** Words of all languages together. */
export class Vocabulary {
  readonly #headers = new Map<string, Phrase[]>();
  readonly #kinds = new Map<string, Phrase[]>();
  readonly #words = new Map<string, Map<string, Phrase[]>>();
  readonly #totals: Phrase[] = [];
  readonly #negative: string[] = [];
  readonly #devices: string[] = [];
  readonly #parts = new Map<string, string[]>();
  readonly #stems = new Map<string, Map<string, string[]>>();
  readonly #known = new Map<string, Meaning[]>();

  constructor(files: readonly VocabularyFile[]) {
    for (const {
      language,
      headers,
      unread,
      person,
      kinds,
      words,
      stems,
      totals,
      parts,
      negative,
      devices,
    } of files) {
      const to = (list: readonly string[]): Phrase[] =>
        list.map((text) => ({
          folded: foldPhrase(text.replace(/^~/, '')),
          weak: text.startsWith('~'),
          language,
        }));
      for (const [key, list] of Object.entries(headers)) push(this.#headers, key, to(list));
      push(this.#headers, 'unread', to(unread));
      push(this.#headers, 'person', to(person));
      for (const [key, list] of Object.entries(kinds)) push(this.#kinds, key, to(list));
      for (const [field, meanings] of Object.entries(words)) {
        const known = this.#words.get(field) ?? new Map<string, Phrase[]>();
        for (const [word, list] of Object.entries(meanings)) push(known, word, [...to(list), ...to([word])]);
        this.#words.set(field, known);
      }
      for (const [field, meanings] of Object.entries(stems)) {
        const known = this.#stems.get(field) ?? new Map<string, string[]>();
        for (const [word, list] of Object.entries(meanings)) push(known, word, list);
        this.#stems.set(field, known);
      }
      this.#totals.push(...to(totals));
      this.#negative.push(...negative.map(foldPhrase));
      this.#devices.push(...devices.map(foldPhrase));
      for (const [part, stems] of Object.entries(parts))
        push(
          this.#parts,
          part,
          stems.map((stem) => (stem.startsWith('=') ? `=${foldPhrase(stem)}` : foldPhrase(stem))),
        );
    }
  }

  /** What a header may mean, best first: concepts of `headers`, `unread`, `person`. */
  header(text: string): Meaning[] {
    return this.#remember('header', text, this.#headers);
  }

  /** What a header may mean by its phrases and, less surely, by the parts that it is put together of. */
  headerOf(text: string, beside: Beside): Meaning[] {
    const named = this.#withoutEnding(text);
    const phrases = isElsewhere(text, this.#parts)
      ? named.filter(({ key, score }) => score >= NEAR || !isReading(key))
      : named;
    const composed = composedMeanings(text, this.#parts, beside)
      .filter((key) => !phrases.some((one) => one.key === key && one.score >= COMPOSED_SCORE))
      .map((key): Meaning => ({ key, score: COMPOSED_SCORE, weak: true, language: '', phrase: BY_PARTS }));
    // Parts say more than a single word of a phrase does.
    return composed.length === 0
      ? phrases
      : [...composed, ...phrases.filter(({ key }) => !composed.some((one) => one.key === key))].sort(
          (a, b) => b.score - a.score,
        );
  }

  /** The parts of names of columns that a text speaks of. */
  partsOf(text: string): ReadonlySet<string> {
    return partsIn(text, this.#parts);
  }

  /** Phrases for a name, or for it without an ending such as "_cd" that databases put to names: so never more than likely. */
  #withoutEnding(text: string): Meaning[] {
    const whole = this.header(text);
    const bare = foldPhrase(text).replace(ENDING, '');
    if ((whole[0]?.score ?? 0) >= COMPOSED_SCORE || bare === foldPhrase(text)) return whole;
    const known = this.header(bare)
      .filter(
        ({ score, key }) =>
          score >= NEAR && !whole.some((one) => one.key === key && one.score >= COMPOSED_SCORE),
      )
      .map((meaning): Meaning => ({ ...meaning, score: COMPOSED_SCORE, weak: true }));
    return [...known, ...whole.filter(({ key }) => !known.some((one) => one.key === key))];
  }

  /** Which kinds of record a title or file name speaks of, best first. */
  kinds(text: string): Meaning[] {
    return this.#remember('kinds', text, this.#kinds);
  }

  /** What a word of a column may mean, best first. */
  word(field: string, text: string): Meaning[] {
    const near = this.#remember(field, text, this.#words.get(field) ?? new Map()).filter(
      ({ key, phrase }) => contraryOf(key) === undefined || !isDenied(text, phrase),
    );
    if (text.length > LONGEST || (near[0]?.score ?? 0) >= NEAR) return near;
    const told = this.#told(field, text, near);
    return told === undefined ? near : [told, ...near.filter(({ key }) => key !== told.key)];
  }

  /** What a word says by a word of denial before a known one, or by the stems of its parts. */
  #told(field: string, text: string, near: readonly Meaning[]): Meaning | undefined {
    const made = (key: string, score: number): Meaning | undefined =>
      score > (near[0]?.score ?? 0) ? { key, score, weak: true, language: '', phrase: BY_PARTS } : undefined;
    const denied = deniedPart(text);
    if (denied !== undefined) {
      const [plain] = this.word(field, denied);
      const contrary = plain && contraryOf(plain.key);
      if (contrary !== undefined) return made(contrary, Math.max(ONE_STEM, NEAR - 0.01));
    }
    const composed = composedWord(text, this.#stems.get(field) ?? NO_STEMS);
    return composed && !(contraryOf(composed.key) !== undefined && isDenied(text))
      ? made(composed.key, composed.score)
      : undefined;
  }

  #remember(list: string, text: string, phrases: ReadonlyMap<string, readonly Phrase[]>): Meaning[] {
    if (text.length > LONGEST) return [];
    const key = `${list}\u0000${text}`;
    const known = this.#known.get(key);
    if (known) return known;
    const found = meaningsOf(text, phrases);
    if (this.#known.size >= REMEMBERED) this.#known.clear();
    this.#known.set(key, found);
    return found;
  }

  /** Whether a header says that something was not done or not good, so that a bare yes under it may mean the contrary of what it does elsewhere. */
  isNegative(header: string): boolean {
    return foldPhrase(header)
      .split(' ')
      .some((token) =>
        this.#negative.some((stem) => (stem.length < 3 ? token === stem : token.startsWith(stem))),
      );
  }

  /** The device of another kind that a title or header speaks of, unless it speaks of a sterilizer too. */
  otherDevice(text: string): string | undefined {
    const folded = ` ${foldPhrase(text)} `;
    const device = this.#devices.find((name) => folded.includes(` ${name} `));
    const sterilizer = /\b(?:ster|autocla|autokla|esteril)/.test(folded);
    return sterilizer ? undefined : device;
  }

  isTotal(text: string): boolean {
    if (text.length > LONGEST || !/^\P{N}/u.test(text)) return false;
    const folded = foldPhrase(text);
    return this.#totals.some((phrase) => phrase.folded === folded || folded.startsWith(`${phrase.folded} `));
  }
}

function push<Key, Value>(map: Map<Key, Value[]>, key: Key, list: Value[]): void {
  map.set(key, [...(map.get(key) ?? []), ...list]);
}

function meaningsOf(text: string, phrasesOf: ReadonlyMap<string, readonly Phrase[]>): Meaning[] {
  const folded = foldPhrase(text);
  if (folded === '') return [];
  const found: (Meaning & { near: number })[] = [];
  for (const [key, list] of phrasesOf) {
    let best: (Meaning & { near: number }) | undefined;
    for (const { folded: phrase, weak, language } of list) {
      const near = nearness(folded, phrase);
      const score = near * (weak ? WEAK : 1);
      // The very word, though it may mean something else, says more than the beginning of another: "Fehler" is no cut "fehlerfrei".
      const better = (near === 1) === (best?.near === 1) ? score > (best?.score ?? 0) : near === 1;
      if (score >= LEAST && better) best = { key, score, weak, language, phrase, near };
    }
    if (best) found.push(best);
  }
  const exact = found.some(({ near }) => near === 1);
  return found
    .filter(({ near }) => !exact || near >= SAME_WORDS || near < NEAR_CUT)
    .map(({ near: _, ...meaning }) => meaning)
    .sort((a, b) => b.score - a.score);
}

/** Those that come with the program, read once. */
let general: readonly VocabularyFile[] | undefined;

/**
 * The vocabularies that come with the program, with those of the site after them.
 *
 * @throws UserError `vocabulary` where the site's own has another form
 */
export function loadVocabulary(own?: { text: string; name: string }): Vocabulary {
  general ??= LANGUAGES.map((language) =>
    vocabularySchema.parse(
      parse(readFileSync(new URL(`./vocabulary/${language}.yaml`, import.meta.url), 'utf8')),
    ),
  );
  const files = [...general];
  if (own) {
    const parsed = vocabularySchema.safeParse(readYaml(own));
    if (!parsed.success) {
      const issue = parsed.error.issues[0]!;
      throw new UserError('vocabulary', `${own.name}: ${issue.path.join('.')}: ${issue.message}`);
    }
    files.push(parsed.data);
  }
  return new Vocabulary(files);
}

function readYaml({ text, name }: { text: string; name: string }): unknown {
  try {
    return parse(text);
  } catch (error) {
    throw new UserError('vocabulary', `${name}: can't be read as YAML: ${(error as Error).message}`);
  }
}
