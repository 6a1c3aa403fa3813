import { describe, expect, it } from 'vitest';
import { numbering, type ReportContext } from '../../../pipeline/report/page-context.ts';
import { chamberTable } from '../../../pipeline/report/pages/review/cleaning.ts';
import { lookBackLists } from '../../../pipeline/report/parts/lists/single-records.ts';
import { de } from '../../../pipeline/report/words/de.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { unitOf } from '../fixtures/review-of.ts';

const contextOf = (words: typeof en) =>
  ({ words, span: 'March 2026', unitPage: () => undefined }) as unknown as ReportContext;

describe('what is not known', () => {
  it.each([
    [en, 'not known'],
    [de, 'nicht bekannt'],
  ])('are days past due where an interval is stated and the record can’t tell (%#)', (words, text) => {
    const chamber = (interval: string | null, days_past_due: number | null) => {
      const unit = unitOf('A1');
      const parts = { interval, clock_days: 40, days_past_due, records: 1 };
      const table = chamberTable(contextOf(words), numbering(), [
        { ...unit, chamber: { ...unit.chamber, ...parts } },
      ]);
      return String(table).split('</tr>')[1]!;
    };
    expect(chamber('30 calendar_days', null)).toContain(text);
    expect(chamber('30 calendar_days', 0)).not.toContain(text);
    expect(chamber(null, null)).not.toContain(text);
  });

  it.each([
    [en, 'whole day is listed'],
    [de, 'dieses ganzen Tages'],
  ])(
    'is the time of a failed test by date: its list names the day, and that it is listed whole (%#)',
    (words, text) => {
      const listOf = (failed_by_date: boolean) =>
        String(
          lookBackLists(contextOf(words), numbering(), [
            {
              unit: 'A1',
              failed_at: 0,
              failed_day: 0,
              failed: '2026-03-05 04:00',
              last_pass_at: 0,
              last_pass: '2026-03-04 07:25',
              failed_by_date,
              last_pass_by_date: false,
              cycles: [],
            },
          ]),
        );
      expect(listOf(true)).toContain(text);
      expect(listOf(true)).not.toContain(words.format.time('2026-03-05 04:00'));
      expect(listOf(true)).toContain(words.format.date('2026-03-05'));
      expect(listOf(true)).toContain(words.format.time('2026-03-04 07:25'));
      expect(listOf(false)).not.toContain(text);
      expect(listOf(false)).toContain(words.format.time('2026-03-05 04:00'));
    },
  );
});
