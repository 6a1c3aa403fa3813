import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from 'apache-arrow';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ColumnWriter } from '../../pipeline/ingest/column-writer.ts';
import { fromArrow, toArrow } from '../../pipeline/ingest/history/arrow-columns.ts';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import type { Reading } from '../../pipeline/ingest/reading.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';

const SITE = `
sites: [{ zone: Europe/Berlin }]
units: [{ id: B1, aliases: [{ name: Old one }] }]
sources:
  - kind: cycles
    files: 'cycles-*.csv'
    columns: { unit: unit, start: start, kind: kind, outcome: outcome, cycle_number: no, abort_text: text, heat_up_s: heat }
`;
const HEAD = 'unit,start,kind,outcome,no,text,heat\n';
let folder: string;
let history: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'history-'));
  history = join(folder, 'history');
  writeFileSync(
    join(folder, 'cycles-1.csv'),
    `${HEAD}B1,2026-03-02 07:00,production,completed,1,,61.5\nOld one,2026-03-02 08:00,production,aborted,2,"door, open",\nX,2026-03-02 09:00,production,completed,3,,60\nB1,2026-10-25 02:30,production,completed,4,,many\n`,
  );
  writeFileSync(join(folder, 'cycles-2.csv'), `${HEAD}B1,2026-03-02 07:00,production,completed,1,,61.5\n`);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const read = (kept?: string, site = SITE): Promise<Reading> =>
  readExports(readSiteFile(site, 'site.yaml'), folder, {
    ignore: [history],
    ...(kept === undefined ? {} : { history: kept }),
  });
const names = (): string[] => readdirSync(history).sort();

describe('what was read once', () => {
  it('gives the same records, problems and counts as the files', async () => {
    const plain = await read();
    expect(plain.records.cycles).toHaveLength(3);
    expect(plain.files.map(({ duplicates }) => duplicates)).toEqual([0, 1]);
    expect(plain.problems.map(({ code }) => code)).toEqual(['unknown_unit', 'bad_number']);
    expect(await read(history)).toEqual(plain);
    const first = names();
    expect(first).toHaveLength(2);
    expect(await read(history)).toEqual(plain);
    expect(names()).toEqual(first);
  });

  it('is read again where the file, the mapping or a unit has changed, and only then', async () => {
    await read(history);
    const before = names();
    writeFileSync(join(folder, 'cycles-2.csv'), `${HEAD}B1,2026-03-03 07:00,production,completed,5,,62\n`);
    expect((await read(history)).records.cycles).toHaveLength(4);
    expect(names().filter((name) => before.includes(name))).toHaveLength(1);
    expect(names()).toHaveLength(2);
    const other = SITE.replace('heat_up_s', 'exposure_s');
    expect((await read(history, other)).records.cycles[0]).toMatchObject({ exposure_s: 61.5 });
    const noAlias = SITE.replace('Old one', 'Older one');
    expect(
      (await read(history, noAlias)).problems.filter(({ code }) => code === 'unknown_unit'),
    ).toHaveLength(2);
    // What does not bear on reading changes nothing.
    await read(history);
    const last = names();
    await read(history, `organisation: Elsewhere\n${SITE}`);
    expect(names()).toEqual(last);
  });

  it('leaves with its file', async () => {
    await read(history);
    rmSync(join(folder, 'cycles-1.csv'));
    expect((await read(history)).records.cycles).toHaveLength(1);
  });

  it('is found damaged, at whatever byte, and read again', async () => {
    const plain = await read(history);
    const [name] = names();
    const whole = readFileSync(join(history, name!));
    for (let at = 0; at < whole.length; at += Math.ceil(whole.length / 40)) {
      const damaged = Buffer.from(whole);
      damaged[at] = damaged[at]! ^ 0x10;
      writeFileSync(join(history, name!), damaged);
      expect(await read(history)).toEqual(plain);
      expect(readFileSync(join(history, name!))).toEqual(whole);
    }
    writeFileSync(join(history, name!), whole.subarray(0, 100));
    expect(await read(history)).toEqual(plain);
  });

  it('is left out where it can’t be written, and nothing is lost', async () => {
    writeFileSync(join(folder, 'no-folder'), '');
    const inFile = join(folder, 'no-folder', 'history');
    expect(await read(inFile)).toEqual(await read());
    expect(existsSync(inFile)).toBe(false);
  });

  it('does not disturb a second run at the same time', async () => {
    const [one, other, plain] = [
      await Promise.all([read(history), read(history), read(history)]),
      await read(history),
      await read(),
    ];
    for (const reading of [...one, other]) expect(reading).toEqual(plain);
    expect(names().every((name) => name.endsWith('.arrow'))).toBe(true);
  });

  // Read by the format's own implementation for JavaScript, which has no code in common with the one that wrote it.
  it('can be read by any program that knows Arrow', async () => {
    await read(history);
    const tables = names().map((name) => tableFromIPC(readFileSync(join(history, name))));
    const rows = tables.flatMap((table) => table.toArray().map((row) => row.toJSON()));
    expect(rows.find((row) => row.cycle_number === 2)).toMatchObject({
      unit: 'B1',
      start: Date.parse('2026-03-02T07:00:00Z'),
      outcome: 'aborted',
      abort_text: 'door, open',
      row: 3,
    });
    expect(rows.find((row) => row.cycle_number === 1)).toMatchObject({ abort_text: null, heat_up_s: 61.5 });
    expect(JSON.parse(tables[0]!.schema.metadata.get('reading')!)).toMatchObject({
      read: { rows: expect.any(Number) },
    });
  });
});

describe('columns as an Arrow file', () => {
  it('come back as they were, also with no record', () => {
    const read = {
      source: 's',
      kind: 'cycles',
      file: 'f',
      sheet: null,
      bytes: 1,
      sha256: '',
      rows: 0,
      records: 0,
      duplicates: 0,
      rejected: 0,
      skipped: 0,
      preamble: 0,
      cells_lost: 0,
    };
    const empty = new ColumnWriter('cycles').columns({ read, problems: [] });
    expect(fromArrow(toArrow(empty))).toEqual(empty);
  });
});
