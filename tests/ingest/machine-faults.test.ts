import { spawnSync } from 'node:child_process';
import { appendFileSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readerWithHistory } from '../../pipeline/ingest/history/read-once.ts';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { openInputs, readJobs } from '../../pipeline/ingest/read-jobs.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';

const SITE = `
sites: [{ zone: Europe/Berlin }]
units: [{ id: B1 }]
sources:
  - { kind: cycles, files: ['**/cycles-*.csv'] }
`;
const site = readSiteFile(SITE, 'site.yaml');
const HEAD = 'unit,start,kind,outcome\n';
const row = (at: number): string =>
  `B1,2026-03-${String(1 + Math.floor(at / 24)).padStart(2, '0')} ${String(at % 24).padStart(2, '0')}:00,production,completed\n`;
const BIN = fileURLToPath(new URL('../../pipeline/commands/bin.mjs', import.meta.url));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faults-'));
  writeFileSync(join(folder, 'site.yaml'), SITE);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a command in a shell that first limits what it may use. */
function limited(limit: string, ...args: string[]): { status: number | null; stdout: string } {
  const command = `${limit}; exec "$0" "$@"`;
  return spawnSync('sh', ['-c', command, process.execPath, BIN, ...args], { encoding: 'utf8' });
}

describe('a fault of the machine', () => {
  it.each(['EMFILE', 'ENFILE', 'ENOMEM'])('%s ends the reading, and is none of the file', async (code) => {
    writeFileSync(join(folder, 'cycles-1.csv'), HEAD + row(0));
    // biome-ignore lint/correctness/useYield: fails before the first piece
    const open = async function* (): AsyncGenerator<Uint8Array> {
      throw Object.assign(new Error(`${code}: open`), { code, syscall: 'open' });
    };
    await expect(readExports(site, folder, { open })).rejects.toMatchObject({ code: 'machine' });
    rmSync(join(folder, 'cycles-1.csv'));
    writeFileSync(join(folder, 'cycles.zip'), zipSync({ 'cycles-1.csv': Buffer.from(HEAD + row(0)) }));
    await expect(readExports(site, folder, { open })).rejects.toMatchObject({ code: 'machine' });
  });

  it('few file handles change nothing', { timeout: 60_000 }, () => {
    for (let file = 0; file < 600; file++)
      writeFileSync(join(folder, `cycles-${file}.csv`), HEAD + row(file));
    const plain = limited(':', 'check', folder, '--json');
    expect(JSON.parse(plain.stdout).totals).toMatchObject({ rows: 600, records: 600 });
    expect(limited('ulimit -n 256', 'check', folder, '--json')).toMatchObject({
      status: 0,
      stdout: plain.stdout,
    });
  });

  it('no room to keep what was read changes nothing of the answer', { timeout: 60_000 }, () => {
    writeFileSync(
      join(folder, 'cycles-1.csv'),
      HEAD + Array.from({ length: 600 }, (_, at) => row(at)).join(''),
    );
    const history = join(folder, 'history');
    const plain = limited(':', 'watch', folder, '--json', '--history', history);
    expect(readdirSync(history)).toHaveLength(1);
    rmSync(history, { recursive: true });
    // Files of at most 8 blocks: the columns of 600 cycles take more.
    const full = limited('ulimit -f 8', 'watch', folder, '--json', '--history', history);
    expect(full).toMatchObject({ status: plain.status, stdout: plain.stdout });
    expect(readdirSync(history)).toEqual([]);
  });
});

describe('a file that changes while it is read', () => {
  it('is read to where it ends then, each row once', async () => {
    const file = join(folder, 'cycles-1.csv');
    const padding = `${'#'.repeat(200)}\n`.repeat(2000);
    writeFileSync(file, HEAD + row(0));
    let grown = false;
    appendFileSync(file, padding.replaceAll('#', ','));
    const { files } = await readExports(site, folder, {
      ignore: [join(folder, 'site.yaml')],
      onProgress: () => {
        if (!grown) appendFileSync(file, row(1));
        grown = true;
      },
    });
    expect(grown).toBe(true);
    expect(files[0]!.rows).toBe(files[0]!.records + files[0]!.rejected + files[0]!.skipped);
    expect(files[0]!.records).toBe(2);
  });

  it('is kept under what was read of it, and under nothing else', async () => {
    writeFileSync(join(folder, 'cycles-1.csv'), HEAD + row(0));
    // It grows each time it is opened but the first two times: once read, once looked whether it has changed.
    let opened = 0;
    const open = async function* (): AsyncGenerator<Uint8Array> {
      yield Buffer.from(HEAD + row(0) + row(1).repeat(Math.max(0, opened++ - 1)));
    };
    const history = join(folder, 'history');
    const readAgain = async (): Promise<number> => {
      const inputs = await openInputs(site, folder, { ignore: [history], open });
      const read = await readerWithHistory(inputs, history, {});
      const [job] = await readJobs(inputs, 0);
      return (await read(job!)).columns.count;
    };
    expect(await readAgain()).toBe(1);
    const kept = readdirSync(history);
    expect(kept).toHaveLength(1);
    expect(await readAgain()).toBe(1);
    expect(opened).toBe(2);
    // Looked at with one more row, read with two: what was kept stays, and is of no use.
    expect(await readAgain()).toBe(3);
    expect(readdirSync(history)).toEqual(kept);
    expect(await readAgain()).toBe(5);
  });

  it('is not kept where it could not be read to its end', async () => {
    writeFileSync(join(folder, 'cycles-1.csv'), HEAD + row(0) + row(1));
    const open = async function* (): AsyncGenerator<Uint8Array> {
      yield Buffer.from(HEAD + row(0));
      throw Object.assign(new Error('EIO: read'), { code: 'EIO', syscall: 'read' });
    };
    const history = join(folder, 'history');
    const inputs = await openInputs(site, folder, { ignore: [history], open });
    const read = await readerWithHistory(inputs, history, {});
    const [job] = await readJobs(inputs, 0);
    const { count, problems } = (await read(job!)).columns;
    expect([count, problems.map(({ code }) => code)]).toEqual([1, ['unreadable_file']]);
    expect(readdirSync(folder)).not.toContain('history');
  });
});
