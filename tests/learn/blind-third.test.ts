import { testBlindSet } from './blind/blind-set.ts';
import { makeThirdStyles } from './blind-third/make-third.ts';

/**
 * Ten styles (29 tables) by a fourth hand, who knew the trade and had seen neither the vocabularies nor the other thirty; the list of fields and the remark on the second
 * set's first figures were known. They were committed with their truth before anything was measured, and were measured once. As they came first:
 *
 * - kinds: right 29 of 29
 * - columns: right 179 of 195 (92 %; a question 5, not proposed 7, wrong and marked so 3, wrong and called certain 1); no column too many
 * - words: right 113 of 117 (97 %; a question 3, called certain and wrong 1)
 * - counts of records, duplicates, problems and skipped rows: exact for 29 of 29 tables, with the questions answered
 *
 * To judge them by: in four of the five questions on columns all days of the table lie between 1 and 12, so that its dates alone can't tell their order. The three
 * that are wrong and marked are two pairs of a date as a cell with a time of day as text, which reading does not join either, and a day on which cleaning was due in
 * place of the day on which it was done. Of the two called certain, one lost the time of day in columns named "from" and "until" (German) beside the date; the other,
 * a laboratory's cycle for waste, is production by this truth and another cycle by the proposal, and can be argued both ways.
 *
 * It was mended in general since, and the floors are what holds now.
 */
testBlindSet('ten styles of exports by a fourth hand', makeThirdStyles, {
  kind: [29, 29],
  column: [193, 195],
  word: [115, 117],
  counts: [29, 29],
});
