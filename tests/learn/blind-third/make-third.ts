import type { BlindStyle } from '../blind/make-blind.ts';
import { american } from './american.ts';
import { british } from './british.ts';
import { clinic, laboratory } from './english.ts';
import { canadian, french } from './french.ts';
import { german, swiss } from './german.ts';
import { mexican, spanish } from './spanish.ts';

/** Ten more styles of exports in the form of the other sets, by a fourth hand, from trade knowledge alone. All inventions; the truth stands beside the rows. */
export const makeThirdStyles = (): Promise<BlindStyle[]> =>
  Promise.all([
    american(),
    british(),
    laboratory(),
    clinic(),
    german(),
    swiss(),
    french(),
    canadian(),
    spanish(),
    mexican(),
  ]);
