import { beyondThreeSigma } from './beyond-three-sigma.ts';
import { eightBeyondOne } from './eight-beyond-one.ts';
import { eightOnOneSide } from './eight-on-one-side.ts';
import { fifteenWithinOne } from './fifteen-within-one.ts';
import { fourOfFiveBeyondOne } from './four-of-five-beyond-one.ts';
import { fourteenAlternating } from './fourteen-alternating.ts';
import { nineOnOneSide } from './nine-on-one-side.ts';
import type { RunRule } from './signal.ts';
import { sixRisingOrFalling } from './six-rising-or-falling.ts';
import { twoOfThreeBeyondTwo } from './two-of-three-beyond-two.ts';

/**
 * The four tests of Western Electric, Statistical Quality Control Handbook (1956). With all four an
 * in-control chart of independent normal points signals every 91.75 points on average, against 370.4 with the
 * first alone (Champ and Woodall, Technometrics 29 (1987) 393-399).
 */
export const westernElectricRules = {
  'beyond-three-sigma': beyondThreeSigma,
  'two-of-three-beyond-two': twoOfThreeBeyondTwo,
  'four-of-five-beyond-one': fourOfFiveBeyondOne,
  'eight-on-one-side': eightOnOneSide,
} satisfies Record<string, RunRule>;

/** The eight tests of Nelson, Journal of Quality Technology 16 (1984) 237-239, in his order. */
export const nelsonRules = {
  'beyond-three-sigma': beyondThreeSigma,
  'nine-on-one-side': nineOnOneSide,
  'six-rising-or-falling': sixRisingOrFalling,
  'fourteen-alternating': fourteenAlternating,
  'two-of-three-beyond-two': twoOfThreeBeyondTwo,
  'four-of-five-beyond-one': fourOfFiveBeyondOne,
  'fifteen-within-one': fifteenWithinOne,
  'eight-beyond-one': eightBeyondOne,
} satisfies Record<string, RunRule>;
