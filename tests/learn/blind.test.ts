import { testBlindSet } from './blind/blind-set.ts';
import { makeBlindStyles } from './blind/make-blind.ts';

/**
 * Ten styles whose truth was written down before anything was proposed for them. As they came first, 174 of 258 columns were proposed right (67 %), 66 not at all,
 * 110 of 146 words right; two words were wrong without a mark ("No" under "Completed" as failed, a cross beside ticks as done). Nine columns counted as wrong, too: eight
 * of a workbook whose header in two lines was taken for its lower line (the columns were right, by another name), one whose date pattern reads the same texts. The truth
 * was put right since in one word that its file does not hold and in three counts. The floors below are those reached with general words and parts of words,
 * so they say nothing of styles that come next; nothing wrong may stand without a mark, ever.
 */
testBlindSet(
  'ten styles of exports that nobody had in mind',
  makeBlindStyles,
  {
    kind: [37, 37],
    column: [257, 258],
    word: [145, 145],
    counts: [36, 36],
  },
  'source',
);
