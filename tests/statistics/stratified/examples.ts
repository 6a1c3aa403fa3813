import type { RateStratum } from '../../../pipeline/statistics/stratified/rate-stratum.ts';
import type { TwoByTwo } from '../../../pipeline/statistics/stratified/two-by-two.ts';

/**
 * A table from its four cells: exposed events, exposed non-events, unexposed events, unexposed non-events.
 */
export const cells = ([a, b, c, d]: [number, number, number, number]): TwoByTwo => ({
  exposedEvents: a,
  exposedTotal: a + b,
  unexposedEvents: c,
  unexposedTotal: c + d,
});

/** Penicillin and rabbits, Agresti (1990) pp. 231-237, as in R's help page of mantelhaen.test. */
export const penicillin = (
  [
    [0, 6, 0, 5],
    [3, 3, 0, 6],
    [6, 0, 2, 4],
    [5, 1, 6, 0],
    [2, 0, 5, 0],
  ] as [number, number, number, number][]
).map(cells);

/** Tolbutamide, Rothman, Greenland & Lash, Modern Epidemiology, 3rd ed. (2008), Table 15-1. */
export const tolbutamide = [cells([8, 98, 5, 115]), cells([22, 76, 16, 69])];

/**
 * British doctors (Doll & Hill), coronary deaths by age 35-44 to 75-84; Rothman et al. (2008), Table 15-2.
 */
export const doctors: RateStratum[] = (
  [
    [32, 52407, 2, 18790],
    [104, 43248, 12, 10673],
    [206, 28612, 28, 5710],
    [186, 12663, 28, 2585],
    [102, 5317, 31, 1462],
  ] as [number, number, number, number][]
).map(([exposedEvents, exposedTime, unexposedEvents, unexposedTime]) => ({
  exposedEvents,
  exposedTime,
  unexposedEvents,
  unexposedTime,
}));
