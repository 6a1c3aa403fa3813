import type { Day } from '../../site/day.ts';
import type { Era } from '../service/eras.ts';

/**
 * Cuts each era into equal strata of about the wanted length: an era of L days becomes max(1, round(L / wanted)) parts.
 *
 * @param from the unit's first day of use; the first era begins there
 * @param until first day after the period
 * @returns stratum within its era, from 0, of a day inside the period
 */
export function stratumOf(era: Era, day: Day, from: Day, until: Day, wanted: number): number {
  const begin = Math.max(era.from, from);
  const length = Math.min(era.to + 1, until) - begin;
  const parts = Math.max(1, Math.round(length / wanted));
  return Math.min(parts - 1, Math.floor(((day - begin) * parts) / length));
}
