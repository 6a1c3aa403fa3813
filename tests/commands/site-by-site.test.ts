import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { partsOfFleet, spanOfReceipts } from '../../pipeline/commands/site-by-site/parts-of-fleet.ts';
import { type SharedFleet, shareOfFleet } from '../../pipeline/commands/site-by-site/share-of-fleet.ts';
import { shareOfUnits } from '../../pipeline/commands/site-by-site/share-of-units.ts';
import { reviewPeriod, spanOfRecords } from '../../pipeline/findings/period.ts';
import { reviewOfShare } from '../../pipeline/findings/review.ts';
import { carried } from '../../pipeline/findings/shares/carried-share.ts';
import { mergeShares } from '../../pipeline/findings/shares/merge-shares.ts';
import { shareOf } from '../../pipeline/findings/shares/share.ts';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { openInputs } from '../../pipeline/ingest/read-jobs.ts';
import { type Receipts, readReceipts } from '../../pipeline/ingest/receipts/read-receipts.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { Site } from '../../pipeline/site/site.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import { demoWithSlips } from './demo-with-slips.ts';

const DEMO = fileURLToPath(new URL('../../data-samples', import.meta.url));
const FILE = join(DEMO, 'site.yaml');
let history: string;

beforeEach(() => {
  history = mkdtempSync(join(tmpdir(), 'site-by-site-'));
});
afterEach(() => rmSync(history, { recursive: true, force: true }));

const receiptsOf = (site: Site, folder: string): Promise<Receipts> =>
  readReceipts(site, folder, history, { ignore: [join(folder, 'site.yaml'), history] });

/** As the program does, with parts of one site each; what goes to other threads is copied as it would be. */
async function siteBySite(
  site: Site,
  folder: string,
  receipts: Receipts,
  month?: string,
): Promise<SharedFleet & { units: string[][] }> {
  const inputs = await openInputs(site, folder, { ignore: [join(folder, 'site.yaml'), history] });
  const units: string[][] = [];
  const shared = await shareOfFleet(
    inputs,
    receipts,
    history,
    partsOfFleet(site, receipts, 1),
    (span) => reviewPeriod(month, span),
    async (of) => {
      units.push([...of.units]);
      return structuredClone(await shareOfUnits(inputs, structuredClone(of)));
    },
    () => undefined,
  );
  return { ...shared, units };
}

async function atOnce(site: Site, folder: string, month?: string): Promise<SharedFleet> {
  const reading = await readExports(site, folder, { ignore: [join(folder, 'site.yaml'), history] });
  const period = reviewPeriod(month, spanOfRecords(site, reading.records));
  const transformed = transform(site, reading.records, period.until, period.since);
  return { share: mergeShares(site, [shareOf(site, reading.records, transformed, period)]), reading, period };
}

function expectSame(site: Site, bySite: SharedFleet, whole: SharedFleet): void {
  expect(bySite.reading.files).toEqual(whole.reading.files);
  expect(bySite.reading.problems).toEqual(whole.reading.problems);
  expect(bySite.period).toEqual(whole.period);
  const review = ({ reading, share, period }: SharedFleet) =>
    JSON.stringify(reviewOfShare({ site, reading, period, version: '0' }, share));
  expect(review(bySite)).toBe(review(whole));
  // As columns, since views of them only compare by what is read of them.
  const { units, panel } = carried(bySite.share);
  expect({ units, panel }).toEqual({ units: carried(whole.share).units, panel: carried(whole.share).panel });
}

describe('a review made site by site', () => {
  it('is the same as from all records at once, with units of sites in any order', {
    timeout: 120_000,
  }, async () => {
    const declared = parse(readFileSync(FILE, 'utf8')) as { units: { id: string }[] };
    const [first, ...rest] = declared.units;
    const text = JSON.stringify({ ...declared, units: [...rest.reverse(), first] });
    const site = readSiteFile(text, FILE);
    const bySite = await siteBySite(site, DEMO, await receiptsOf(site, DEMO), '2026-09');
    expect(bySite.units.map((part) => part.length)).toEqual([4, 6]);
    const whole = await atOnce(site, DEMO, '2026-09');
    expect(whole.reading.problems.length).toBeGreaterThan(20);
    expect(whole.reading.files.reduce((sum, file) => sum + file.duplicates, 0)).toBeGreaterThan(700);
    expectSame(site, bySite, whole);
  });

  it('leaves out slips of years at both ends as all records at once do, and is asked for once', {
    timeout: 240_000,
  }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'slips-'));
    try {
      for (const [slips, month] of [
        [{ cycle: '2036', test: '2016' }, undefined],
        [{ cycle: '2016', test: '2036' }, undefined],
        [{ cycle: '2036', test: '2016' }, '2036-05'],
        [{ cycle: '2016', test: '2036' }, '2016-05'],
      ] as const) {
        demoWithSlips(folder, slips);
        const site = readSiteFile(readFileSync(FILE, 'utf8'), FILE);
        const bySite = await siteBySite(site, folder, await receiptsOf(site, folder), month);
        expect(bySite.period.month).toBe(month ?? '2026-09');
        // Each of the two sites is one part, and no part was asked twice.
        expect(bySite.units).toHaveLength(2);
        expectSame(site, bySite, await atOnce(site, folder, month));
        const lone = bySite.reading.problems.filter(({ code }) => code === 'lone_record');
        expect(lone.map(({ costs, value }) => [costs, value!.slice(0, 4)])).toEqual([
          ['review', '2016'],
          ['review', '2036'],
        ]);
        const days = bySite.share.panel.map((row) => row.date.slice(0, 4));
        expect([days.includes('2016'), days.includes('2036')]).toEqual([
          month === '2016-05',
          month === '2036-05',
        ]);
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('takes sites together up to so many records', async () => {
    const site = readSiteFile(
      'sites: [{ id: a, zone: Etc/UTC }, { id: b, zone: Etc/UTC }, { id: c, zone: Etc/UTC }]\nunits: [{ id: A, site: a }, { id: C, site: c }, { id: B, site: b }, { id: D, site: a }]',
      'site.yaml',
    );
    const units = [
      { unit: 'A', count: 5, first: 0, last: 1 },
      { unit: 'B', count: 4, first: 0, last: 1 },
      { unit: 'C', count: 9, first: 0, last: 1 },
    ];
    const receipts = { files: [{ units }], problems: [] } as unknown as Receipts;
    expect(partsOfFleet(site, receipts, 1).map(({ units: of }) => of)).toEqual([['A', 'D'], ['C'], ['B']]);
    expect(partsOfFleet(site, receipts, 13).map(({ units: of }) => of)).toEqual([
      ['A', 'D'],
      ['C', 'B'],
    ]);
    expect(partsOfFleet(site, receipts, 14).map(({ units: of }) => of)).toEqual([['A', 'D', 'C'], ['B']]);
    expect(partsOfFleet(site, receipts, 100).map(({ units: of }) => of)).toEqual([['A', 'D', 'C', 'B']]);
  });
});

describe('records left in the history', () => {
  const SITE = `sites: [{ id: a, zone: Etc/UTC }, { id: b, zone: Etc/UTC }]
units: [{ id: A, site: a }, { id: B, site: b }]
`;
  const HEAD = 'unit,start,end,kind,outcome\n';
  const row = (unit: string, day: string, outcome = 'completed'): string =>
    `${unit},2026-${day} 08:00,2026-${day} 08:50,production,${outcome}\n`;
  let folder: string;
  let site: Site;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'exports-'));
    writeFileSync(join(folder, 'site.yaml'), SITE);
    site = readSiteFile(SITE, 'site.yaml');
    writeFileSync(
      join(folder, 'cycles-1.csv'),
      HEAD + row('A', '03-01') + row('B', '03-01') + row('A', '03-02'),
    );
    writeFileSync(
      join(folder, 'cycles-2.csv'),
      HEAD + row('B', '03-01', 'aborted') + row('A', '03-02') + row('A', '03-03'),
    );
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('are told apart by unit, and rows that contradict each other are counted once', async () => {
    const bySite = await siteBySite(site, folder, await receiptsOf(site, folder));
    expectSame(site, bySite, await atOnce(site, folder));
    expect(
      bySite.reading.files.map(({ rows, records, duplicates, rejected }) => [
        rows,
        records,
        duplicates,
        rejected,
      ]),
    ).toEqual([
      [3, 3, 0, 0],
      [3, 1, 1, 1],
    ]);
    expect(bySite.reading.problems.map(({ code, file, row: at }) => [code, file, at])).toEqual([
      ['conflicting_duplicate', 'cycles-2.csv', 2],
    ]);
  });

  it('are read again from the export where the history is gone', async () => {
    const receipts = await receiptsOf(site, folder);
    for (const name of readdirSync(history)) rmSync(join(history, name));
    expectSame(site, await siteBySite(site, folder, receipts), await atOnce(site, folder));
  });

  it('are an error where the history is gone and the export has changed', async () => {
    const receipts = await receiptsOf(site, folder);
    for (const name of readdirSync(history)) rmSync(join(history, name));
    writeFileSync(join(folder, 'cycles-2.csv'), HEAD + row('A', '03-04'));
    await expect(siteBySite(site, folder, receipts)).rejects.toThrow(
      'cycles-2.csv: must stay as it is while it is read, found other content at a second look',
    );
  });

  it('are held where nothing can be kept', async () => {
    writeFileSync(join(folder, 'no-folder'), '');
    const nowhere = join(folder, 'no-folder', 'history');
    const receipts = await readReceipts(site, folder, nowhere, { ignore: [join(folder, 'site.yaml')] });
    expect(receipts.files.map(({ kept, columns }) => [kept, columns?.count])).toEqual([
      [undefined, 3],
      [undefined, 3],
    ]);
    expectSame(site, await siteBySite(site, folder, receipts), await atOnce(site, folder));
  });

  it('say the month, and once more where rows at its end turn out to be those of others', async () => {
    const merged = `${SITE}sources:
  - { name: first, site: a, kind: cycles, files: cycles-1.csv }
  - { name: second, site: a, kind: cycles, files: cycles-2.csv }
merge: [{ kind: cycles, sources: [first, second], within_minutes: 30 }]
`;
    site = readSiteFile(merged, 'site.yaml');
    const at = (time: string): string => `A,2026-${time},2026-${time},production,completed\n`;
    // The row after the day began would make March whole; it is the one before, told a second time.
    writeFileSync(join(folder, 'cycles-1.csv'), HEAD + at('02-27 12:00') + at('03-31 03:50'));
    writeFileSync(join(folder, 'cycles-2.csv'), HEAD + at('03-31 04:05'));
    const receipts = await receiptsOf(site, folder);
    expect(reviewPeriod(undefined, spanOfReceipts(site, receipts)).month).toBe('2026-03');
    const bySite = await siteBySite(site, folder, receipts);
    expect(bySite.period.month).toBe('2026-02');
    expectSame(site, bySite, await atOnce(site, folder));
  });
});
