import type { AbortClass } from '../../pipeline/site/vocabulary.ts';
import type { Cycle, Phases } from './history.ts';
import type { Stream } from './random.ts';
import type { SiteId } from './scenario.ts';
import { EFFECT } from './unit-stories.ts';

/** Aborts of production cycles: how often, of which class, in which words, and how far the cycle had come. */

type Words = Record<AbortClass, readonly string[]>;

// biome-ignore format: one class a line
const WORDS: Record<SiteId, Words> = {
  Quillhaven: {
    slow_evacuation: ['Evacuation too slow', 'Vacuum not reached, pulse 2'],
    slow_exhaust: ['Exhaust too slow', 'Pressure not released in time'],
    water_in_chamber: ['Water in chamber', 'Drain temperature far below chamber'],
    temperature_low: ['Temperature low in exposure', 'Temperature below band'],
    air_detector: ['Air detector: air present'],
    come_up_slow: ['Heat-up too long', 'Set temperature not reached'],
    utility: ['Steam supply low', 'Water pressure low', 'Compressed air low', 'Power failure'],
    door: ['Door not sealed', 'Door seal pressure low'],
    operator: ['Stopped by operator', 'Emergency stop'],
    electronics: ['Chamber sensor open', 'Printer fault', 'Controller restarted'],
    unclassified: ['Reason not stated', 'See shift book'],
  },
  Tornfell: {
    slow_evacuation: ['Évacuation trop lente', 'Vide non atteint'],
    slow_exhaust: ['Échappement trop lent'],
    water_in_chamber: ["Eau dans l'enceinte"],
    temperature_low: ['Température trop basse (plateau)'],
    air_detector: ["Détecteur d'air déclenché"],
    come_up_slow: ['Montée en température trop longue'],
    utility: ['Vapeur réseau faible', "Pression d'eau faible", 'Panne de courant'],
    door: ['Porte non étanche'],
    operator: ["Arrêt par l'opérateur"],
    electronics: ['Sonde en défaut', 'Imprimante hors ligne'],
    unclassified: ['Voir cahier de quart'],
  },
};

const CLEANLINESS_RATE = 0.008;
const UNRELATED_RATE = 0.0062;
const UNCLASSIFIED_RATE = 0.0006;

const CLEANLINESS = ['slow_evacuation', 'slow_evacuation', 'slow_exhaust', 'water_in_chamber', 'temperature_low', 'air_detector', 'come_up_slow'] as const; // biome-ignore format: one list
const UNRELATED = ['utility', 'utility', 'door', 'operator', 'operator', 'electronics'] as const;

export type AbortDraw = { class: AbortClass; text: string };

/** Whether this production cycle aborts, and why. One draw of each kind, so that the effect moves nothing else. */
export function drawAbort(unit: string, site: SiteId, overdue: boolean, draw: Stream): AbortDraw | undefined {
  const factor = unit === EFFECT.unit && overdue ? EFFECT.cleanlinessAborts : 1;
  const chance = draw.float();
  const cleanliness = draw.pick(CLEANLINESS);
  const unrelated = draw.pick(UNRELATED);
  const own = CLEANLINESS_RATE * (unit === EFFECT.unit ? 0.9 : 1) * factor;
  if (chance < UNRELATED_RATE) return wordsFor(unrelated, site, draw);
  if (chance < UNRELATED_RATE + UNCLASSIFIED_RATE) return wordsFor('unclassified', site, draw);
  if (chance < UNRELATED_RATE + UNCLASSIFIED_RATE + own) return wordsFor(cleanliness, site, draw);
  return undefined;
}

export function wordsFor(abortClass: AbortClass, site: SiteId, draw: Stream): AbortDraw {
  return { class: abortClass, text: draw.pick(WORDS[site][abortClass]) };
}

/** On a day without steam every stop says so. */
export const steamLost = (site: SiteId): AbortDraw => ({ class: 'utility', text: WORDS[site].utility[0]! });

/** The part of a cycle that an abort of a class leaves, its length in seconds, and whether it ran to its end out of order. */
export function cutShort(
  whole: Phases,
  abortClass: AbortClass,
  draw: Stream,
): { phases: Phases; seconds: number; outcome: Cycle['outcome'] } {
  const { evacuation = 0, heatUp = 0, exposure = 0 } = whole;
  const conditioned = 540 + evacuation;
  const early = whole.evacuation === undefined ? {} : { evacuation };
  const steam: Phases = { ...early, heatUp, exposure };
  const outcome = 'aborted' as const;
  switch (abortClass) {
    case 'slow_evacuation':
      return { phases: {}, seconds: 180 + draw.int(840, 960), outcome };
    case 'air_detector':
      return { phases: early, seconds: conditioned + draw.int(5, 30), outcome };
    case 'come_up_slow':
    case 'water_in_chamber':
      return { phases: early, seconds: conditioned + draw.int(400, 640), outcome };
    case 'temperature_low':
      return {
        phases: { ...steam, ...cooled(whole, draw) },
        seconds: conditioned + heatUp + exposure + 400,
        outcome: draw.chance(0.5) ? 'failed' : outcome,
      };
    case 'slow_exhaust':
      return {
        phases: { ...whole, ...without(whole, ['exhaust', 'drying', 'dryVacuum']) },
        seconds: conditioned + heatUp + exposure + draw.int(420, 600),
        outcome,
      };
    case 'door':
      return { phases: {}, seconds: draw.int(60, 150), outcome };
    default:
      return { phases: early, seconds: conditioned + draw.int(20, 900), outcome };
  }
}

function cooled(whole: Phases, draw: Stream): Phases {
  const { temperatureMin = 134, temperatureMax = 134.5, pressure = 305 } = whole;
  const drop = 1.4 + draw.float();
  return {
    temperatureMin: Math.round((temperatureMin - drop) * 10) / 10,
    temperatureMax,
    pressure: Math.round((pressure - 9 * drop * 0.5) * 10) / 10,
  };
}

function without(whole: Phases, keys: readonly (keyof Phases)[]): Phases {
  return Object.fromEntries(keys.filter((key) => key in whole).map((key) => [key, undefined])) as Phases;
}
