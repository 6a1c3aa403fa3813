/**
 * Simulated units, and the comparison that chose the statistic of the circular-shift test: the
 * Mantel-Haenszel excess as it is, or divided by its null standard deviation. Run it with: npx tsx
 * tests/statistics/reference/shift-statistic.ts
 */
import { pathToFileURL } from 'node:url';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { type ShiftScores, shiftScores } from '../../../pipeline/statistics/permutation/shift-scores.ts';

/** Uniform numbers in [0, 1), the same for one seed. */
export function randomUniform(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => (generator.next() >>> 0) / 2 ** 32;
}

export interface SimulatedDesign {
  /** Daily chance that a spell of exposure begins, or ends. */
  onset: number;
  end: number;
  /** Daily chance of an event without exposure. */
  base: number;
  /** Factor on it under exposure. */
  ratio: number;
  /** Events themselves in spells (8 times the chance in them, half of it outside). */
  eventsInSpells: boolean;
}

/** Two years of one test a day, in strata of 180 days. */
export function simulatedUnit(next: () => number, design: SimulatedDesign) {
  const days = 730;
  const spells = (onset: number, end: number) => {
    let on = next() < onset / (onset + end);
    return Array.from({ length: days }, () => {
      on = next() < (on ? end : onset) ? !on : on;
      return on;
    });
  };
  const exposed = spells(design.onset, design.end);
  const bad = design.eventsInSpells ? spells(0.01, 0.15) : undefined;
  const chance = (day: number) =>
    design.base * (bad === undefined ? 1 : bad[day] ? 8 : 0.5) * (exposed[day] ? design.ratio : 1);
  return {
    exposure: exposed.map(Number),
    events: exposed.map((_, day) => (next() < chance(day) ? 1 : 0)),
    trials: exposed.map(() => 1),
    stratum: exposed.map((_, day) => Math.floor(day / 180)),
  };
}

/**
 * Share of simulated fleets with p <= 0.025 upwards, by the excess and by the excess over its null standard
 * deviation.
 */
function rejects(
  next: () => number,
  design: SimulatedDesign,
  units: number,
  fleets: number,
): [number, number] {
  const draws = 999;
  let [plain, divided] = [0, 0];
  for (let fleet = 0; fleet < fleets; fleet++) {
    const scores = Array.from({ length: units }, () =>
      shiftScores(simulatedUnit(next, design), 'events-of-trials'),
    ).filter((s): s is ShiftScores => s !== undefined);
    const at = (shift: (s: ShiftScores) => number) => {
      const [excess, variance] = scores.reduce(
        ([e, v], s) => {
          const i = shift(s);
          return [e! + s.excess[i]!, v! + s.variance[i]!];
        },
        [0, 0],
      );
      return { excess: excess!, ratio: variance! > 0 ? excess! / Math.sqrt(variance!) : 0 };
    };
    const own = at(() => 0);
    const drawn = Array.from({ length: draws }, () => at((s) => Math.floor(next() * s.excess.length)));
    const p = (key: 'excess' | 'ratio') =>
      (1 + drawn.filter((d) => d[key] >= own[key] - 1e-9).length) / (1 + draws);
    if (p('excess') <= 0.025) plain++;
    if (p('ratio') <= 0.025) divided++;
  }
  return [plain / fleets, divided / fleets];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const next = randomUniform(7);
  console.log('units  ratio  exposure  events in spells  excess  excess over SD');
  for (const units of [1, 6]) {
    for (const ratio of [1, units === 1 ? 3 : 2]) {
      for (const onset of [0.02, 0.004]) {
        for (const eventsInSpells of [false, true]) {
          const design = { onset, end: 0.05, base: 0.02, ratio, eventsInSpells };
          const shares = rejects(next, design, units, 1500).map((share) => share.toFixed(3));
          console.log(
            units,
            ratio,
            onset === 0.02 ? 'often' : 'rare',
            eventsInSpells ? 'yes' : 'no',
            ...shares,
          );
        }
      }
    }
  }
}
