import { foldPhrase } from './fold-phrase.ts';

/**
 * Stems of the words of a list: by meaning, phrases of stems that must all be there; "replac|swap control|plc" names alternatives. Those of "filler" mean nothing by
 * themselves.
 */
export type Stems = ReadonlyMap<string, readonly string[]>;

/** A word understood by its stems: two of them say more than one. Never certain. */
export const ONE_STEM = 0.75;
export const MORE_STEMS = 0.85;

/** Meanings that a word of denial turns into each other. */
const CONTRARY: Readonly<Record<string, string>> = {
  completed: 'failed',
  pass: 'fail',
  done: 'missed',
};
const FILLER = 'filler';
const AND = new Set(['and', 'und', 'et', 'y', 'e', 'plus']);
const DENIAL = new Set(['not', 'non', 'no', 'nicht', 'n', 'pas', 'kein', 'keine']);

/**
 * What a word means by its stems where no phrase of the vocabulary is near: the meaning whose phrases ask for most of its stems, undefined where two meanings are
 * told alike ("liquid waste"), since then nobody can tell, and where one stem stands beside a word that is not known.
 */
export function composedWord(text: string, stems: Stems): { key: string; score: number } | undefined {
  const tokens = foldPhrase(text)
    .replace(/(\p{L})(?=\d)/gu, '$1 ')
    .split(' ')
    .filter((token) => token !== '');
  if (tokens.length === 0 || tokens.length > 8) return undefined;
  const told = new Map<string, number>();
  for (const [key, phrases] of stems)
    if (key !== FILLER)
      for (const phrase of phrases) {
        const wanted = phrase.split(' ').map((alternatives) => alternatives.split('|'));
        if (wanted.every((list) => list.some((stem) => tokens.some((token) => begins(token, stem)))))
          told.set(key, Math.max(told.get(key) ?? 0, wanted.length));
      }
  const most = Math.max(0, ...told.values());
  const best = [...told].filter(([, count]) => count === most);
  const [first] = best;
  if (!first || best.length > 1) return undefined;
  // "Repair and maintenance" is two things.
  if (told.size > 1 && tokens.some((token) => AND.has(token))) return undefined;
  if (most === 1 && tokens.some((token) => isStrange(token, stems))) return undefined;
  return { key: first[0], score: most > 1 ? MORE_STEMS : ONE_STEM };
}

/** A word of which nothing is known: beside one stem it may turn the meaning ("inspected roof" is no maintenance of the unit). */
const isStrange = (token: string, stems: Stems): boolean =>
  /^\p{L}{2}/u.test(token) &&
  ![...stems.values()].flat().some((phrase) => phrase.split(/[ |]/).some((stem) => begins(token, stem)));

/** A stem of three letters or more begins a word; shorter ones are whole words. */
const begins = (token: string, stem: string): boolean =>
  token === stem || (stem.length >= 3 && token.startsWith(stem));

/** The text behind a word of denial ("n. best.", "non conforme"); undefined where none stands first. */
export function deniedPart(text: string): string | undefined {
  const [first = '', ...rest] = foldPhrase(text).split(/ +/);
  // "No 12" counts, and denies nothing.
  return DENIAL.has(first) && !/^\d/.test(rest[0] ?? '') && rest.some((token) => token.length > 1)
    ? rest.join(' ')
    : undefined;
}

/** Words that deny what stands about them, and those that deny the word behind them ("completed, no alarm" denies the alarm). */
const DENIES_ALL = new Set(['not', 'nicht', 'pas']);

/** Beginnings of words that take something back of what they stand beside: who passed with a restriction may not have passed. */
const RESTRICTS = [
  ...['einschrank', 'einschraenk', 'eingeschrank', 'eingeschraenk', 'vorbehalt', 'bedingt', 'teilweise'],
  ...['restric', 'limited', 'conditional', 'partial', 'proviso', 'reservation'],
  ...['partiel', 'reserve', 'conditionnel', 'parcial', 'condicion', 'reserva', 'limitad'],
];

/**
 * Whether a text holds a known phrase (left out: stems) but denies it, or takes something back of it: "complies not fully" is no "complies", "viraje no completo" no "completo", "entspricht mit
 * Einschränkung" no "entspricht".
 */
export function isDenied(text: string, phrase = ''): boolean {
  const tokens = foldPhrase(text).split(/ +/);
  const known = phrase.split(/ +/);
  return tokens.some(
    (token, at) =>
      !known.includes(token) &&
      (DENIES_ALL.has(token) ||
        RESTRICTS.some((stem) => token.startsWith(stem)) ||
        (DENIAL.has(token) && tokens[at + 1] === known[0])),
  );
}

export const contraryOf = (key: string): string | undefined => CONTRARY[key];
