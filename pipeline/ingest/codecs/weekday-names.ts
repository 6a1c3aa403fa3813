/**
 * Names and abbreviations of the days of the week in English, German, French and Spanish, without accents and full stop, Sunday first. No abbreviation
 * means two days. Source: Unicode CLDR, abbreviated and short names of days.
 */
const NAMES = [
  'sun sunday su so sonntag dim dimanche dom domingo',
  'mon monday mo montag lun lundi lunes',
  'tue tues tuesday tu di dienstag mar mardi martes',
  'wed wednesday we mi mittwoch mer mercredi mie mier miercoles',
  'thu thur thurs thursday th do donnerstag jeu jeudi jue juev jueves',
  'fri friday fr freitag ven vendredi vie viernes',
  'sat saturday sa samstag sam samedi sab sabado',
];

const DAYS = new Map(
  NAMES.flatMap((names, index) => names.split(' ').map((name): [string, number] => [name, index])),
);

/** Day of the week by its name or abbreviation, Sunday 0; undefined where the text is none. */
export function weekdayOfName(text: string): number | undefined {
  const folded = text.normalize('NFD').replace(/\p{M}/gu, '').replace(/\.$/, '').toLowerCase();
  return DAYS.get(folded);
}
