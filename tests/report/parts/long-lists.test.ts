import { describe, expect, it } from 'vitest';
import { numbering } from '../../../pipeline/report/page-context.ts';
import { dataTable } from '../../../pipeline/report/parts/data-table.ts';
import { lookBackLists } from '../../../pipeline/report/parts/lists/single-records.ts';
import { picturedUnits } from '../../../pipeline/report/parts/pictured-units.ts';
import { en } from '../../../pipeline/report/words/en.ts';

const rows = (count: number): number[] => Array.from({ length: count }, (_, index) => index);
const table = (count: number, whole = false): string =>
  String(
    dataTable({ words: en }, numbering(), {
      caption: 'Numbers',
      rows: rows(count),
      whole,
      columns: [{ head: 'n', cell: String }],
    }),
  );

describe('what a page shows of very many', () => {
  it('is the first 500 rows of a table, and how many there are', () => {
    expect(table(500).match(/<tr>/g)).toHaveLength(501);
    expect(table(500)).not.toContain('class="note"');
    expect(table(7359).match(/<tr>/g)).toHaveLength(501);
    expect(table(7359)).toContain('The first 500 of 7,359 rows. The data files of this review hold all.');
  });

  it('is all rows of a table that is searched', () => {
    expect(table(1000, true).match(/<tr>/g)).toHaveLength(1001);
  });

  it('is thirty look-back lists, and how many more there are', () => {
    const list = { unit: 'A', failed_at: 0, failed_day: 0, failed: '2026-03-01 06:30', last_pass_at: null };
    const byDate = { failed_by_date: false, last_pass_by_date: false };
    const lists = rows(32).map(() => ({ ...list, ...byDate, last_pass: null, cycles: [] }));
    const context = { words: en, unitPage: () => undefined } as unknown as Parameters<
      typeof lookBackLists
    >[0];
    const page = String(lookBackLists(context, numbering(), lists));
    expect(page.match(/<details>/g)).toHaveLength(30);
    expect(page).toContain('2 lists more are on the pages of the units and in tables/look-back-cycles.csv.');
  });

  it('is pictures of forty units, those first that need attention', () => {
    const review = { units: [], attention_order: ['U70', 'U2'] } as unknown as Parameters<
      typeof picturedUnits
    >[0];
    const ids = rows(61).map((at) => `U${at}`);
    expect([...picturedUnits(review, ids)].slice(0, 3)).toEqual(['U70', 'U2', 'U0']);
    expect(picturedUnits(review, ids).size).toBe(40);
    expect([...picturedUnits(review, ids.slice(1))]).toEqual(ids.slice(1));
  });
});
