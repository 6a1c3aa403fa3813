import { wall } from '../clock.ts';
import { ZONES } from '../scenario.ts';

/** Words and forms of Tornfell's exports: French with accents, day before month, decimal commas, psi gauge, Fahrenheit, mm:ss. */

const zone = ZONES.Tornfell;
/** Mean barometric pressure that the site file gives for Tornfell, kPa. */
export const BAROMETER = 100.8;
const KPA_PER_PSI = 6.894757;
const KPA_PER_IN_HG = 3.386389;
const KPA_PER_MM_HG = 0.1333224;

export function stamp(instant: number): string {
  const [day, clock] = wall(zone, instant).toISOString().split('T') as [string, string];
  return `${day.slice(8)}.${day.slice(5, 7)}.${day.slice(0, 4)} ${clock.slice(0, 5)}`;
}
export const date = (instant: number): string => stamp(instant).slice(0, 10);
export const month = (instant: number): string => wall(zone, instant).toISOString().slice(0, 7);

const comma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
const maybe = (value: number | undefined, form: (value: number) => string): string =>
  value === undefined ? '' : form(value);

export const minutesSeconds = (seconds: number | undefined): string =>
  maybe(seconds, (value) => `${pad(Math.floor(value / 60))}:${pad(value % 60)}`);
export const fahrenheit = (celsius: number | undefined): string =>
  maybe(celsius, (value) => comma(value * 1.8 + 32, 1));
export const psiGauge = (kpa: number | undefined): string =>
  maybe(kpa, (value) => comma((value - BAROMETER) / KPA_PER_PSI, 2));
export const inHgVacuum = (kpa: number | undefined): string =>
  maybe(kpa, (value) => comma((BAROMETER - value) / KPA_PER_IN_HG, 2));
export const mmHgPerMin = (kpaPerMin: number): string => comma(kpaPerMin / KPA_PER_MM_HG, 2);

const pad = (value: number): string => String(value).padStart(2, '0');

export const TYPE = {
  warm_up: 'préchauffage',
  air_removal_test: "essai d'air",
  leak_test: 'essai de fuite',
  production: 'charge emballée',
  liquids: 'flacons liquides',
  qualification: 'qualification',
  other: 'vérification',
} as const;
export const FABRICS = 'charge textile';

export const STATE = {
  completed: 'terminé',
  aborted: 'interrompu',
  failed: 'non conforme',
  running: 'en cours',
} as const;
export const TASK = {
  drain_strainer: 'crépine',
  drain_flush: 'rinçage du drain',
  chamber: 'enceinte',
  professional: 'nettoyage à fond (externe)',
} as const;
export const DONE = { done: 'fait', missed: 'omis', not_due: 'sans objet' } as const;
export const REASON = { routine: 'prévu', reactive: 'après échec' } as const;
export const RESULT = { pass: 'réussi', fail: 'échoué', invalid: 'nul' } as const;
export const SERVICE = {
  repair: 'réparation',
  controller_replaced: 'commande remplacée',
  professional_cleaning: 'nettoyage à fond (externe)',
  out_of_service: 'hors service',
  maintenance: 'entretien',
} as const;
