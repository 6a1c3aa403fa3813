import type { BlindStyle } from '../blind/make-blind.ts';
import { american } from './american.ts';
import { argentinian } from './argentinian.ts';
import { australian } from './australian.ts';
import { austrian } from './austrian.ts';
import { belgian } from './belgian.ts';
import { british } from './british.ts';
import { french } from './french.ts';
import { german } from './german.ts';
import { indian } from './indian.ts';
import { mexican } from './mexican.ts';

/**
 * Ten more styles of exports in the form of the other sets, by a fifth hand, from trade knowledge alone. All inventions; the truth stands beside the rows.
 * A table without counts has words outside of what a record may hold, so that its number of records hangs on an answer.
 */
export const makeFourthStyles = (): Promise<BlindStyle[]> =>
  Promise.all([
    american(),
    british(),
    indian(),
    australian(),
    german(),
    austrian(),
    french(),
    belgian(),
    mexican(),
    argentinian(),
  ]);
