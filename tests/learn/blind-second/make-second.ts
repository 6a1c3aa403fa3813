import type { BlindStyle } from '../blind/make-blind.ts';
import { counter } from './american.ts';
import { bench, wardens } from './british.ts';
import { journal, registre } from './french.ts';
import { anlage, blatt } from './german.ts';
import { bag } from './mixed.ts';
import { planta, turno } from './spanish.ts';

/**
 * Ten styles of exports more, written by a third hand who had seen neither the vocabularies nor the earlier styles, and committed before anything was measured on them.
 * All inventions. A word's truth of null: nobody can tell from it. Skipped: a line of sums or a header repeated.
 */
export async function makeSecondStyles(): Promise<BlindStyle[]> {
  return Promise.all([
    counter(),
    wardens(),
    bench(),
    anlage(),
    blatt(),
    journal(),
    registre(),
    planta(),
    turno(),
    bag(),
  ]);
}
