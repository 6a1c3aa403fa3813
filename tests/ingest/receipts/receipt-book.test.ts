import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readerWithHistory } from '../../../pipeline/ingest/history/read-once.ts';
import { openInputs } from '../../../pipeline/ingest/read-jobs.ts';
import { type Receipts, readReceipts } from '../../../pipeline/ingest/receipts/read-receipts.ts';
import { receiptOf } from '../../../pipeline/ingest/receipts/receipt.ts';
import { partsOf, recordsOfParts } from '../../../pipeline/ingest/receipts/records-of-parts.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';

const SITE = `
sites: [{ zone: Europe/Berlin }]
units: [{ id: B1 }, { id: B2 }]
sources:
  - kind: cycles
    files: 'cycles-*.csv'
    columns: { unit: unit, start: start, kind: kind, outcome: outcome, cycle_number: no }
`;
const HEAD = 'unit,start,kind,outcome,no\n';
const AN_HOUR = 3_600_000;

let folder: string;
let history: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'receipts-'));
  history = join(folder, 'history');
  for (const file of [1, 2, 3])
    writeFileSync(
      join(folder, `cycles-${file}.csv`),
      `${HEAD}B1,2026-03-0${file} 07:00,production,completed,${file}\nB9,2026-03-0${file} 08:00,production,completed,4\nB2,2026-03-0${file} 09:00,production,completed,5\n`,
    );
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Reads as the program does, and says of which files the bytes were asked. */
async function read(site = SITE): Promise<{ receipts: Receipts; asked: string[] }> {
  const asked: string[] = [];
  const declared = readSiteFile(site, 'site.yaml');
  const inputs = await openInputs(declared, folder, { ignore: [history] });
  const once = await readerWithHistory(inputs, history, {});
  const receipts = await readReceipts(declared, folder, history, {
    ignore: [history],
    readElsewhere: async (job) => {
      asked.push(job.file);
      return receiptOf(job, await once(job));
    },
  });
  return { receipts, asked };
}

const BOOK = () => join(history, 'receipts.json');
/** As if what was read had been written an hour before the book. */
function letTimePass(): void {
  const later = (statSync(BOOK()).mtimeMs + AN_HOUR) / 1000;
  utimesSync(BOOK(), later, later);
}

/** All cycles, by way of the history. */
async function cyclesOf(receipts: Receipts): Promise<unknown[]> {
  const inputs = await openInputs(readSiteFile(SITE, 'site.yaml'), folder, { ignore: [history] });
  const { records } = await recordsOfParts(partsOf(receipts, new Set(['B1', 'B2'])), inputs, history);
  return records.cycles.map(({ unit, start }) => [unit, start]);
}

const ALL = ['cycles-1.csv', 'cycles-2.csv', 'cycles-3.csv'];

describe('receipts of an earlier run', () => {
  it('are the same as those that the bytes give, and no file is opened for them', async () => {
    const first = await read();
    expect(first.asked).toEqual(ALL);
    expect(readdirSync(history)).toHaveLength(ALL.length + 1);
    expect(first.receipts.files.map(({ count }) => count)).toEqual([2, 2, 2]);
    expect(first.receipts.problems.map(({ code }) => code)).toEqual(Array(3).fill('unknown_unit'));
    letTimePass();
    const second = await read();
    expect(second.asked).toEqual([]);
    expect(second.receipts).toEqual(first.receipts);
    expect(await cyclesOf(second.receipts)).toHaveLength(6);
  });

  it('are not believed of files that were written hardly before them', async () => {
    await read();
    expect((await read()).asked).toEqual(ALL);
  });

  it('are not believed of a file that was written anew, of the same bytes or others, grew or came back', async () => {
    await read();
    letTimePass();
    const [one, two, three] = ALL.map((file) => join(folder, file)) as [string, string, string];
    const { atime, mtime } = statSync(two);
    writeFileSync(one, readFileSync(one));
    writeFileSync(two, readFileSync(two, 'utf8').replace('07:00', '06:00'));
    utimesSync(two, atime, mtime);
    expect((await read()).asked).toEqual(['cycles-1.csv', 'cycles-2.csv']);
    letTimePass();
    expect((await read()).asked).toEqual([]);
    writeFileSync(three, `${readFileSync(three, 'utf8')}B1,2026-03-09 07:00,production,completed,9\n`);
    expect((await read()).asked).toEqual(['cycles-3.csv']);
    letTimePass();
    const kept = readFileSync(one);
    rmSync(one);
    const without = await read();
    expect(without.asked).toEqual([]);
    expect(without.receipts.files).toHaveLength(2);
    writeFileSync(one, kept);
    letTimePass();
    expect((await read()).asked).toEqual(['cycles-1.csv']);
  });

  it('are not believed where the site file reads otherwise', async () => {
    await read();
    letTimePass();
    const other = await read(SITE.replace('units: [{ id: B1 }', 'units: [{ id: B1 }, { id: B9 }'));
    expect(other.asked).toEqual(ALL);
    expect(other.receipts.problems).toEqual([]);
  });

  it('are found damaged, at whatever byte, and asked again', async () => {
    const first = await read();
    letTimePass();
    const whole = readFileSync(BOOK());
    const { mtimeMs } = statSync(BOOK());
    for (const at of [0, 30, 64, 65, 66, 200, whole.length - 2, whole.length - 1]) {
      const damaged = Uint8Array.from(whole);
      damaged[at]! ^= 1;
      writeFileSync(BOOK(), damaged);
      utimesSync(BOOK(), mtimeMs / 1000, mtimeMs / 1000);
      const { receipts, asked } = await read();
      expect(asked, `byte ${at}`).toEqual(ALL);
      expect(receipts).toEqual(first.receipts);
    }
    for (const length of [0, 10, 64, 65, whole.length - 1]) {
      writeFileSync(BOOK(), whole);
      truncateSync(BOOK(), length);
      utimesSync(BOOK(), mtimeMs / 1000, mtimeMs / 1000);
      expect((await read()).asked, `${length} bytes`).toEqual(ALL);
    }
  });

  it('leave nothing of a run that was ended by force', async () => {
    await read();
    writeFileSync(`${BOOK()}.1-0.unfinished`, 'half a');
    await read();
    expect(readdirSync(history)).toHaveLength(ALL.length + 1);
  });

  it('are no reason to believe in what was read: what is damaged or gone of it comes from the file again', async () => {
    const first = await read();
    const all = await cyclesOf(first.receipts);
    letTimePass();
    const arrows = () =>
      readdirSync(history)
        .filter((name) => name.endsWith('.arrow'))
        .sort();
    const [one, two] = arrows() as [string, string];
    const bytes = readFileSync(join(history, one));
    bytes[bytes.length >> 1]! ^= 4;
    writeFileSync(join(history, one), bytes);
    const second = await read();
    expect(second.asked).toEqual([]);
    expect(await cyclesOf(second.receipts)).toEqual(all);
    // What was damaged was taken away, so the next run keeps it anew.
    expect(arrows()).toHaveLength(2);
    rmSync(join(history, two));
    const third = await read();
    expect(third.asked).toHaveLength(2);
    expect(await cyclesOf(third.receipts)).toEqual(all);
    expect(arrows()).toHaveLength(3);
  });
});
