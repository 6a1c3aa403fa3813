import { describe, expect, it } from 'vitest';
import { reportContext } from '../../pipeline/report/page-context.ts';
import { recordsPage } from '../../pipeline/report/pages/records-page.ts';
import { reviewPage } from '../../pipeline/report/pages/review-page.ts';
import { en } from '../../pipeline/report/words/en.ts';
import { fleetInput } from './fixtures/fleet.ts';

/** The review page of a fleet whose units are those of a small one many times over, under new names. */
async function pageOf(units: number): Promise<string> {
  const { review, panel, due } = fleetInput(3);
  const again = <Row extends { unit: string }>(rows: readonly Row[]): Row[] =>
    Array.from({ length: Math.ceil(units / 3) }, (_, copy) =>
      rows.map((row) => ({ ...row, unit: `${row.unit}-${copy}` })),
    ).flat();
  const all = again(review.units).slice(0, units);
  const many = {
    ...review,
    units: all,
    attention_order: all.map((unit) => unit.unit).reverse(),
    cleaning: {
      month: again(review.cleaning.month),
      record: again(review.cleaning.record),
      days: again(review.cleaning.days),
    },
    charts: {
      failed_days: [
        ...review.charts.failed_days.filter((point) => point.scope === 'fleet'),
        ...again(
          review.charts.failed_days
            .filter((point) => point.scope !== 'fleet')
            .map((point) => ({ ...point, unit: point.scope })),
        ).map(({ unit, ...point }) => ({ ...point, scope: unit })),
      ],
      aborts: [],
    },
  };
  return reviewPage(reportContext(many, panel, due, en));
}

describe('the review of many units', () => {
  it('holds a thousand in under 3 MB: a line for each, pictures of those first in need, and says so', async () => {
    const page = await pageOf(1000);
    expect(page.length).toBeLessThan(3_000_000);
    expect(page.match(/<tr data-unit="/g)).toHaveLength(1000);
    expect(page).toContain('hold the first 60 of 1,000 units in the order of need');
    expect(page).toContain('All 1,000 units');
    expect(page.match(/id="figure-calendar-drain-strainer(-\d+)?"/g)).toHaveLength(2);
  });

  it('holds sixty whole', async () => {
    const page = await pageOf(60);
    expect(page).not.toContain('in the order of need. ');
    expect(page.match(/id="figure-calendar-drain-strainer(-\d+)?"/g)).toHaveLength(2);
    expect(page).toContain('id="figure-calendar-drain-strainer-30"');
  });

  it('lists of ten thousand files those that lost something, and says where the others stand', () => {
    const { review, panel, due } = fleetInput(3);
    const one = { ...review.files[0]!, rejected: 0, cells_lost: 0, rows: 9 };
    const files = Array.from({ length: 10_000 }, (_, at) => ({
      ...one,
      file: `log-${at}.csv`,
      rejected: at === 9_876 ? 1 : 0,
    }));
    const page = recordsPage(reportContext({ ...review, files }, panel, due, en));
    expect(page.length).toBeLessThan(3_000_000);
    expect(page).toContain('log-9876.csv');
    expect(page).toContain('9,500 more files: tables/files.csv has them all');
  });
});
