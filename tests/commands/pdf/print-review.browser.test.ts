import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import chromium from '@sparticuz/chromium';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../../pipeline/commands/pdf/find-chromium.ts';
import { PAPERS, printPages } from '../../../pipeline/commands/pdf/print-pages.ts';
import { runProgram } from '../terminal.ts';

let folder: string;
let place: string;
const kept = { ...process.env };
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pdf-'));
  place = await mkdtemp(join(tmpdir(), 'pdf-out-'));
  const days = Array.from({ length: 31 }, (_, at) => `2025-03-${String(at + 1).padStart(2, '0')}`);
  await writeFile(join(folder, 'site.yaml'), 'sites: [{ zone: Europe/Berlin }]\norganisation: Print Bench\n');
  await writeFile(
    join(folder, 'cycles.csv'),
    [
      'unit,start,end,kind,outcome',
      ...days.map((day) => `S1,${day} 08:00,${day} 08:45,production,completed`),
    ].join('\n'),
  );
  await writeFile(
    join(folder, 'air-removal-tests.csv'),
    [
      'unit,time,result',
      ...days.map((day) => `S1,${day} 06:30,${day.endsWith('10') ? 'fail' : 'pass'}`),
    ].join('\n'),
  );
});
afterAll(async () => {
  process.env = kept;
  for (const of of [folder, place]) await rm(of, { recursive: true, force: true });
});

/** Pages of a PDF, by its page objects (ISO 32000-1, 7.7.3.3), and the boxes of their paper, points. */
function pagesOf(pdf: Buffer): { pages: number; boxes: string[] } {
  const text = pdf.toString('latin1');
  return {
    pages: [...text.matchAll(/\/Type \/Page\b(?!s)/g)].length,
    boxes: [...new Set([...text.matchAll(/\/MediaBox \[([^\]]*)\]/g)].map((match) => match[1]!))],
  };
}

/** Whether streams of the PDF unpack: it was not cut. */
function streams(pdf: Buffer): number {
  let found = 0;
  for (let at = pdf.indexOf('stream\n'); at >= 0; at = pdf.indexOf('stream\n', at + 7)) {
    try {
      inflateSync(pdf.subarray(at + 7));
      found++;
    } catch {
      // Not each stream is packed.
    }
  }
  return found;
}

describe('review --pdf', () => {
  it('prints the review, the page for the meeting and units that need attention, the same each time', async () => {
    process.env = { ...kept, CHROMIUM_PATH: await chromium.executablePath() };
    const made: Buffer[] = [];
    for (const run of ['a', 'b']) {
      const out = join(place, run);
      const { code, out: said, err } = await runProgram('review', folder, '--out', out, '--pdf');
      expect([code, err]).toEqual([0, 'Printed index.pdf, meeting.pdf, unit-S1.pdf.\n']);
      expect(said).toContain('Review of 2025-03');
      for (const name of ['index', 'meeting', 'unit-S1']) {
        const pdf = await readFile(join(out, '2025-03', `${name}.pdf`));
        expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
        expect(pdf.subarray(-6).toString()).toContain('%%EOF');
        // The day of the period in place of the clock.
        expect(pdf.toString('latin1')).toContain('/CreationDate (D:20250331000000');
        expect(pagesOf(pdf).pages, name).toBeGreaterThan(0);
        expect(streams(pdf), name).toBeGreaterThan(0);
        // No link names a place on this machine.
        expect(pdf.toString('latin1')).not.toContain('file:');
        if (name === 'meeting') made.push(pdf);
      }
      // The running header of the sheets is part of the page.
      const page = await readFile(join(out, '2025-03', 'meeting.html'), 'utf8');
      expect(page).toMatch(/@top-left \{ content: "Print Bench[^"]*March 2025"/);
    }
    expect(made[0]!.equals(made[1]!)).toBe(true);
  });

  it('prints on the paper that is asked for', async () => {
    const path = await chromium.executablePath();
    const paperPlace = join(place, 'paper');
    await mkdir(paperPlace);
    await writeFile(join(paperPlace, 'x.html'), `<!doctype html><title>x</title><p>${'word '.repeat(3000)}`);
    for (const [paper, box] of [
      ['a4', '0 0 596 842'],
      ['letter', '0 0 612 792'],
    ] as const) {
      await printPages(path, paperPlace, ['x.html'], paper, '2025-03-31');
      const { pages, boxes } = pagesOf(await readFile(join(paperPlace, 'x.pdf')));
      expect(pages).toBeGreaterThan(1);
      expect(
        boxes.map((of) =>
          of
            .split(' ')
            .map((value) => Math.round(Number(value)))
            .join(' '),
        ),
      ).toEqual([box]);
    }
    // The browser's A4 is 595.9 points wide. ISO 216: A4 is 210 mm by 297 mm; 8.5 by 11 inches is US Letter (ANSI/ASME Y14.1).
    expect(PAPERS.a4.map((inches) => Math.round(inches * 25.4))).toEqual([210, 297]);
  });

  it('says how, and makes the review, where there is no Chromium', async () => {
    process.env = { ...kept, CHROMIUM_PATH: join(folder, 'nothing') };
    const { code, out, err } = await runProgram('review', folder, '--out', join(place, 'c'), '--pdf');
    expect(code).toBe(0);
    expect(out).toContain('Review of 2025-03');
    expect(err).toMatch(
      /^No PDF was made: CHROMIUM_PATH must name a program that can be run, found ".*nothing"\. Install/,
    );
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('says so, and makes the review, where the program is no browser', async () => {
    process.env = { ...kept, CHROMIUM_PATH: process.execPath };
    const { code, err } = await runProgram('review', folder, '--out', join(place, 'd'), '--pdf');
    expect(code).toBe(0);
    expect(err).toMatch(/^No PDF was made: .*browser ended/);
  });

  it('refuses a paper that it does not know', async () => {
    const { code, err } = await runProgram('review', folder, '--pdf', '--paper', 'foolscap');
    expect(code).toBe(2);
    expect(err).toContain('--paper must be one of a4, letter, found "foolscap"');
  });
});

describe('the search for a Chromium', () => {
  it('takes the one that is named, else one on the path, by its usual names', async () => {
    const bin = join(folder, 'bin');
    await mkdir(bin);
    await writeFile(join(bin, 'chromium'), '#!/bin/sh\n', { mode: 0o755 });
    await writeFile(join(bin, 'google-chrome'), 'not to be run', { mode: 0o644 });
    expect(await findChromium({ PATH: `/nowhere:${bin}` })).toEqual({ path: join(bin, 'chromium') });
    expect(await findChromium({ PATH: bin, CHROMIUM_PATH: process.execPath })).toEqual({
      path: process.execPath,
    });
    expect(await findChromium({ PATH: bin, CHROMIUM_PATH: join(bin, 'google-chrome') })).toEqual({
      path: undefined,
      named: join(bin, 'google-chrome'),
    });
  });
});
