import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { readingThreads, reportThreads } from '../../pipeline/commands/threads/pool.ts';
import { secondThread } from '../../pipeline/commands/threads/second-thread.ts';
import { caseOfUnits } from '../../pipeline/findings/interval/interval-case.ts';
import { panelFindings } from '../../pipeline/findings/panel-findings.ts';
import { reviewPeriod, spanOfRecords } from '../../pipeline/findings/period.ts';
import { makeReview } from '../../pipeline/findings/review.ts';
import { mergeShares } from '../../pipeline/findings/shares/merge-shares.ts';
import { shareOf } from '../../pipeline/findings/shares/share.ts';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import type { Reading } from '../../pipeline/ingest/reading.ts';
import type { ReportBasis } from '../../pipeline/report/report.ts';
import { type SheetTable, workbookFile } from '../../pipeline/report/tables/workbook.ts';
import { de } from '../../pipeline/report/words/de.ts';
import { rowsOfUnits } from '../../pipeline/rows-of-units.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import { pagesOf } from '../report/fixtures/pages-of.ts';
import { runProgram } from './terminal.ts';

const DEMO = fileURLToPath(new URL('../../data-samples', import.meta.url));
const FILE = join(DEMO, 'site.yaml');
const text = readFileSync(FILE, 'utf8');
const site = readSiteFile(text, FILE);
let reading: Reading;

beforeAll(async () => {
  reading = await readExports(site, DEMO, { ignore: [FILE] });
});

describe('threads', () => {
  it('read the same records, problems and counts as one thread', { timeout: 120_000 }, async () => {
    const threads = readingThreads(3);
    try {
      const task = { site: { text, file: FILE }, folder: DEMO, ignore: [FILE] };
      const readElsewhere = (job: Parameters<typeof threads.read>[0]['job']) =>
        threads.read({ ...task, job });
      expect(await readExports(site, DEMO, { ignore: [FILE], readElsewhere })).toEqual(reading);
    } finally {
      await threads.end();
    }
    expect(reading.records.cycles.length).toBeGreaterThan(30_000);
  });

  it('draw the same pages of units as one thread, each once', { timeout: 240_000 }, async () => {
    const period = reviewPeriod('2026-09', spanOfRecords(site, reading.records));
    const transformed = transform(site, reading.records, period.until);
    const review = makeReview({ site, reading, transformed, period, version: '0' });
    const dueOf = rowsOfUnits(transformed.histories.flatMap((history) => history.cleaning.due));
    const basis: ReportBasis = { review, panel: transformed.panel, dueOf, hasInterval: true };
    const units = review.units.map(({ unit }) => unit);
    const here = await pagesOf(basis, units);
    expect(here.size).toBe(10);
    for (const threads of [reportThreads(3), secondThread()])
      try {
        const pages: [unit: string, page: string][] = [];
        const begun = threads.begin(basis, 'en', async (unit, page) => {
          pages.push([unit, new TextDecoder().decode(page)]);
        });
        const left = await pagesOf(basis, begun.units);
        await begun.done;
        const drawn = [...pages, ...left];
        expect(drawn.map(([unit]) => unit).toSorted()).toEqual(units.toSorted());
        for (const [unit, page] of drawn) expect(page === here.get(unit), unit).toBe(true);
      } finally {
        await threads.end();
      }
  });

  it('find the same in the panel and make the same case for an interval as one thread', {
    timeout: 60_000,
  }, async () => {
    const period = reviewPeriod('2026-09', spanOfRecords(site, reading.records));
    const { until } = period;
    const transformed = transform(site, reading.records, until);
    const share = mergeShares(site, [shareOf(site, reading.records, transformed, period)]);
    const threads = secondThread();
    try {
      await threads.prepareSite({ text, file: FILE });
      const file = { text, file: FILE };
      const panel = threads.askPanel(file, share);
      const there = await threads.makeCase(file, share, reading.records, until);
      expect(await panel).toEqual(panelFindings(share.panel, share.units, site));
      expect(there).toEqual(caseOfUnits(share.units, share.panel, site, reading.records, until));
      expect(there.answer.code).not.toBe('cannot_tell');
    } finally {
      await threads.end();
    }
  });

  it('write the same workbook', { timeout: 60_000 }, async () => {
    const tables: SheetTable[] = [{ name: 'units', columns: ['unit', 'days'], rows: [['A', 3]], count: 1 }];
    const about = { month: 'September 2026', span: '1 to 30 September 2026', fingerprint: 'f' };
    const threads = reportThreads(1);
    try {
      const there = await threads.workbook!({ ...about, words: de }, tables, 'de');
      expect(Buffer.from(there)).toEqual(Buffer.from(await workbookFile({ ...about, words: de }, tables)));
    } finally {
      await threads.end();
    }
  });

  it('pass on what goes wrong in one', async () => {
    const threads = readingThreads(1);
    try {
      const task = { site: { text, file: FILE }, folder: DEMO, ignore: [] };
      await expect(threads.read({ ...task, job: { source: 0, file: 'nowhere.csv' } })).rejects.toThrow(
        'nowhere.csv is not among the files',
      );
    } finally {
      await threads.end();
    }
  });

  it.each(['0', 'many', '1.5', '65'])('are refused where they are "%s"', async (threads) => {
    const { code, err } = await runProgram('watch', DEMO, '--threads', threads);
    expect(code).toBe(2);
    expect(err).toContain(`--threads must be a whole number from 1 to 64, found "${threads}"`);
  });
});
