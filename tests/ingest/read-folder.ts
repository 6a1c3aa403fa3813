import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type ReadEffects, readExports } from '../../pipeline/ingest/read-exports.ts';
import { type Problem, problemSchema, type Reading } from '../../pipeline/ingest/reading.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';

export type Files = Record<string, string | Uint8Array>;

export const BERLIN: SiteFileInput = { sites: [{ zone: 'Europe/Berlin' }] };

/** Runs a test's body with a folder that holds the files, and removes it. */
export async function withFolder<T>(files: Files, body: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(path.join(tmpdir(), 'ingest-'));
  try {
    for (const [name, content] of Object.entries(files)) {
      await mkdir(path.dirname(path.join(folder, name)), { recursive: true });
      await writeFile(path.join(folder, name), content);
    }
    return await body(folder);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** Reads files as exports of a site (default: one site in Berlin, sources by default). Each problem is checked against its schema. */
export async function readFiles(
  files: Files,
  site: SiteFileInput = BERLIN,
  effects?: ReadEffects,
): Promise<Reading> {
  const reading = await withFolder(files, (folder) =>
    readExports(readSiteFile(JSON.stringify(site), 'site.yaml'), folder, effects),
  );
  for (const problem of reading.problems) problemSchema.parse(problem);
  return reading;
}

/** A site in Berlin with one source of cycles. */
export function cyclesFrom(
  source: Partial<NonNullable<SiteFileInput['sources']>[number]>,
  site: Partial<SiteFileInput> = {},
): SiteFileInput {
  return { ...BERLIN, ...site, sources: [{ kind: 'cycles', files: 'cycles.csv', ...source }] };
}

/** What a test says of a problem: code, cost, row and column. */
export const brief = ({ code, costs, row, column }: Problem): string => [code, costs, row, column].join(' ');

export const HEADER = 'unit,start,end,kind,outcome,cycle_number,heat_up_s,abort_text';
export const ROW = 'S1,2025-03-03 06:30:00,2025-03-03 07:00:00,production,completed,17,95,';

export const utc = (text: string): number => Date.parse(text);
