import type { IntervalInputs } from '../../site/interval-inputs.ts';

/** A limit for a determinand in one kind of water. */
export interface WaterLimit {
  kind: 'feed_water' | 'condensate';
  determinand: string;
  measures: readonly string[];
  low: number | null;
  high: number | null;
  edition: string;
  status: 'site' | 'verified' | 'unverified';
}

const limit = (
  kind: WaterLimit['kind'],
  determinand: string,
  measures: readonly string[],
  low: number | null,
  high: number | null,
  edition: string,
  status: 'verified' | 'unverified',
): WaterLimit => ({ kind, determinand, measures, low, high, edition, status });

const MG = ['mg/l', 'ppm'] as const;
const FEED = 'EN 285 type values for feed water';
const CIRCULAR = 'EN 285 type values for feed water, as in circular DGS/DH 100 (1995)';
const STEAM = 'EN 285 type values for condensate';
const GOST = 'EN 285 type values, as in the table of GOST 31598';

/**
 * Default limits: the values of the kind found in EN 285 Annex B. Editions differ, notably for chloride and conductivity. `verified`: seen in a public reproduction of the
 * table, not in the standard itself; `unverified`: from memory, an example that is shown and from which nothing follows. A site should put those of the edition in force in their place.
 */
export const DEFAULT_LIMITS: readonly WaterLimit[] = [
  limit('feed_water', 'residue on evaporation', MG, null, 10, FEED, 'unverified'),
  limit('feed_water', 'silicate', MG, null, 1, CIRCULAR, 'verified'),
  limit('feed_water', 'iron', MG, null, 0.2, CIRCULAR, 'verified'),
  limit('feed_water', 'cadmium', MG, null, 0.005, CIRCULAR, 'verified'),
  limit('feed_water', 'lead', MG, null, 0.05, CIRCULAR, 'verified'),
  limit('feed_water', 'heavy metals', MG, null, 0.1, CIRCULAR, 'verified'),
  limit('feed_water', 'chloride', MG, null, 0.5, `${FEED}, 2015 edition (older: 2 mg/l)`, 'unverified'),
  limit('feed_water', 'phosphate', MG, null, 0.5, CIRCULAR, 'verified'),
  limit('feed_water', 'conductivity', ['us/cm'], null, 5, `${FEED} (1996 edition: 15)`, 'unverified'),
  limit('feed_water', 'ph', ['ph', ''], 5, 7.5, GOST, 'verified'),
  limit('feed_water', 'hardness', ['mmol/l'], null, 0.02, FEED, 'unverified'),
  limit('feed_water', 'hardness', ['mg/l caco3'], null, 2, FEED, 'unverified'),
  limit('condensate', 'silicate', MG, null, 0.1, STEAM, 'unverified'),
  limit('condensate', 'iron', MG, null, 0.1, STEAM, 'unverified'),
  limit('condensate', 'cadmium', MG, null, 0.005, STEAM, 'unverified'),
  limit('condensate', 'lead', MG, null, 0.05, STEAM, 'unverified'),
  limit('condensate', 'heavy metals', MG, null, 0.1, STEAM, 'unverified'),
  limit('condensate', 'chloride', MG, null, 0.1, STEAM, 'unverified'),
  limit('condensate', 'phosphate', MG, null, 0.1, STEAM, 'unverified'),
  limit('condensate', 'conductivity', ['us/cm'], null, 3, STEAM, 'unverified'),
  limit('condensate', 'ph', ['ph', ''], 5, 7, GOST, 'verified'),
  limit('condensate', 'hardness', ['mmol/l'], null, 0.02, STEAM, 'unverified'),
  limit('condensate', 'hardness', ['mg/l caco3'], null, 2, STEAM, 'unverified'),
];

/** Limits in force: the site's own take the place of the defaults of their kind and determinand. */
export function limitsInForce(inputs: IntervalInputs['water']): WaterLimit[] {
  const own = inputs.limits.map(
    (row): WaterLimit => ({
      kind: row.kind,
      determinand: fold(row.determinand),
      measures: [foldMeasure(row.measure)],
      low: row.low ?? null,
      high: row.high ?? null,
      edition: row.edition,
      status: 'site',
    }),
  );
  const replaced = (of: WaterLimit) =>
    own.some((row) => row.kind === of.kind && row.determinand === of.determinand);
  return [...own, ...DEFAULT_LIMITS.filter((of) => !replaced(of))];
}

/** A determinand for comparison: letter case, blanks and what stands in brackets aside. */
export const fold = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\(.*?\)/g, '')
    .replace(/\s+/g, ' ')
    .trim();

/** A measure for comparison: both micro signs are u, blanks single. */
export const foldMeasure = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\u00b5\u03bc]/g, 'u')
    .replace(/\s+/g, ' ')
    .trim();
