import { describe, expect, it } from 'vitest';
import { reportContext } from '../../pipeline/report/page-context.ts';
import { recordsPage } from '../../pipeline/report/pages/records-page.ts';
import { reviewPage } from '../../pipeline/report/pages/review-page.ts';
import { type ReportInput, writeReport } from '../../pipeline/report/report.ts';
import { en } from '../../pipeline/report/words/en.ts';
import { rowsOfUnits } from '../../pipeline/rows-of-units.ts';
import { fleetInput } from './fixtures/fleet.ts';

/** A fleet whose units are those of a small one many times over, under new names. */
function fleetOf(units: number): ReportInput {
  const input = fleetInput(3);
  const { review, panel, dueOf } = input;
  const due = review.units.flatMap(({ unit }) => dueOf(unit));
  const again = <Row extends { unit: string }>(rows: readonly Row[]): Row[] =>
    Array.from({ length: Math.ceil(units / 3) }, (_, copy) =>
      rows.map((row) => ({ ...row, unit: `${row.unit}-${copy}` })),
    ).flat();
  const all = again(review.units)
    .slice(0, units)
    .map((unit, at) => (at % 3 === 2 ? { ...unit, attention: [] } : unit));
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
  return { ...input, review: many, panel: again(panel), dueOf: rowsOfUnits(again(due)) };
}

function pageOf(units: number): Promise<string> {
  const { review, panel, dueOf } = fleetOf(units);
  return reviewPage(reportContext(review, panel, dueOf, en));
}

describe('the review of many units', () => {
  it('holds a thousand in under 3 MB: a line for each, pictures of those first in need, and says so', async () => {
    const page = await pageOf(1000);
    expect(page.length).toBeLessThan(3_000_000);
    expect(page.match(/<tr data-unit="/g)).toHaveLength(1000);
    expect(page).toContain('hold the first 40 of 1,000 units in the order of need');
    expect(page).toMatch(/\d+ units have their own page: those that need attention/);
    expect(page.match(/id="figure-calendar-drain-strainer(-\d+)?"/g)).toHaveLength(2);
  });

  it('names sites on one clock together', async () => {
    const { review, panel, dueOf } = fleetOf(3);
    const of = (name: string, zone: string) => ({ id: name, name, zone, day_starts: '04:00' });
    const sites = [of('North', 'Europe/Berlin'), of('Isle', 'Atlantic/Canary'), of('South', 'Europe/Berlin')];
    const page = await reviewPage(reportContext({ ...review, sites }, panel, dueOf, en));
    expect(page).toContain(
      'North, South (clock Europe/Berlin, operating day from 04:00); Isle (clock Atlantic',
    );
  });

  it('holds sixty whole', async () => {
    const page = await pageOf(60);
    expect(page).not.toContain('in the order of need. ');
    expect(page.match(/id="figure-calendar-drain-strainer(-\d+)?"/g)).toHaveLength(2);
    expect(page).toContain('id="figure-calendar-drain-strainer-30"');
  });

  it('gives pages to units that need attention and to those asked for; no link leads to a page that is not there', {
    timeout: 120_000,
  }, async () => {
    const input = fleetOf(123);
    const calm = input.review.units.filter(({ attention }) => attention.length === 0).map(({ unit }) => unit);
    expect(calm.length).toBeGreaterThan(20);
    const pagesAsked = calm.slice(0, 2);
    const files = await writeReport({ ...input, pagesAsked });
    const paths = new Set(files.map(({ path }) => path));
    expect([...paths].filter((path) => path.startsWith('unit-'))).toHaveLength(123 - calm.length + 2);
    for (const { path, content } of files) {
      if (!path.endsWith('.html')) continue;
      const linked = [...String(content).matchAll(/href="([^"#]+\.html)[#"]/g)].map(([, href]) => href!);
      expect(linked.filter((href) => !paths.has(href))).toEqual([]);
    }
    const all = await writeReport({ ...input, pagesAsked: 'all' });
    expect(all.filter(({ path }) => path.startsWith('unit-'))).toHaveLength(123);
  });

  it('lists of ten thousand files those that lost something, and says where the others stand', () => {
    const { review, panel, dueOf } = fleetInput(3);
    const one = { ...review.files[0]!, rejected: 0, cells_lost: 0, rows: 9 };
    const files = Array.from({ length: 10_000 }, (_, at) => ({
      ...one,
      file: `log-${at}.csv`,
      rejected: at === 9_876 ? 1 : 0,
    }));
    const page = recordsPage(reportContext({ ...review, files }, panel, dueOf, en));
    expect(page.length).toBeLessThan(3_000_000);
    expect(page).toContain('log-9876.csv');
    expect(page).toContain('9,500 more files: tables/files.csv has them all');
  });
});
