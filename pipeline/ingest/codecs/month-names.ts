/**
 * Abbreviations of the months in English, German, French and Spanish, without accents and full stop; some locales write short months in
 * full. No abbreviation means two months. Source: Unicode CLDR, abbreviated month names.
 */
const ABBREVIATIONS = [
  'jan january januar janner janv janvier ene enero',
  'feb february februar fev fevr fevrier febrero',
  'mar march marz mrz mars marzo',
  'apr april avr avril abr abril',
  'may mai mayo',
  'jun june juni juin junio',
  'jul july juli juil juill juillet julio',
  'aug august aou aout ago agosto',
  'sep sept september septembre septiembre',
  'oct october okt oktober octobre octubre',
  'nov november novembre noviembre',
  'dec december dez dezember decembre dic diciembre',
];

const MONTHS = new Map(
  ABBREVIATIONS.flatMap((names, index) =>
    names.split(' ').map((name): [string, number] => [name, index + 1]),
  ),
);

/** Number of a month from its name or abbreviation; undefined where the text is none. */
export function monthOfName(text: string): number | undefined {
  const folded = text.normalize('NFD').replace(/\p{M}/gu, '').replace(/\.$/, '').toLowerCase();
  return MONTHS.get(folded);
}
