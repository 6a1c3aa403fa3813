/** What a column may hold of people. */
export type Personal = 'names' | 'initials' | 'dates of birth' | 'record numbers';

// Words as they stand in headers, English, German, French, Spanish; whole words, accents aside.
const HEADERS: readonly [Personal, RegExp][] = [
  [
    'dates of birth',
    /\b(?:dob|birth|birthdate|geb|geburtsdatum|geboren|naissance|nacimiento)\b|date of birth|ne\(e\) le|geb\.? ?dat/,
  ],
  [
    'record numbers',
    /\b(?:mrn|nhs no|patient(?:en)?[ -]?(?:id|no|nr|nummer|number)|hospital (?:no|number)|medical record|case (?:no|number)|fallnummer|fall nr|dossier|n dossier|historia clinica|social security|insurance (?:no|number)|ahv|ssn)\b/,
  ],
  ['initials', /\b(?:initials|initiales|iniciales|kurzel|handzeichen|visum|hdz|visa)\b/],
  [
    'names',
    /\b(?:name|names|surname|first name|last name|patient|patientin|vorname|nachname|nom|prenom|nombre|apellidos?|operator|operators|user|employee|staff|technician|bediener|mitarbeiter|benutzer|operateur|oper|agent|utilisateur|operador|operario|usuario|signature|unterschrift|firma|signed by|cleaned by|done by|checked by|read by)\b/,
  ],
];
const NAME = /^\p{Lu}[\p{L}'-]+(?:,? (?:\p{Lu}[\p{L}'-]+|\p{Lu}\.)){1,3}$/u;
const INITIALS = /^\p{L}{2,3}$|^(?:\p{Lu}\.\s?){2,3}$/u;

/**
 * Whether a column looks as if it held names, initials, dates of birth or record numbers: by its header, or by what most of its cells look like. It may be
 * wrong either way; it is said to a person, and nothing is decided by it.
 *
 * @param values texts of cells that are not blank
 */
export function looksPersonal(header: string, values: readonly string[]): Personal | undefined {
  const folded = header
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[._/:-]+/g, ' ')
    .trim();
  const named = HEADERS.find(([, expression]) => expression.test(folded))?.[0];
  if (values.length === 0) return named;
  const share = (test: (text: string) => boolean): number => values.filter(test).length / values.length;
  const distinct = new Set(values).size;
  if (named === 'names' && share((text) => INITIALS.test(text)) > 0.8) return 'initials';
  if (named !== undefined) return named;
  if (share((text) => NAME.test(text)) >= 0.6 && distinct >= 3) return 'names';
  const years = values.map(yearOf).filter((year) => year !== undefined);
  if (years.length >= values.length * 0.8 && years.length >= 3) {
    const old = years.filter((year) => year >= 1900 && year < 2000).length;
    if (old >= years.length * 0.5 && Math.max(...years) - Math.min(...years) >= 15) return 'dates of birth';
  }
  return undefined;
}

function yearOf(text: string): number | undefined {
  const match = /^(?:\d{1,2}[-/. ]\d{1,2}[-/. ](\d{4})|(\d{4})-\d\d-\d\d)$/.exec(text.trim());
  return match ? Number(match[1] ?? match[2]) : undefined;
}
