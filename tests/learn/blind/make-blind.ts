import { readFileSync } from 'node:fs';
import type { RecordKind } from '../../../pipeline/site/vocabulary.ts';
import { logger, prevac, theatre } from './english.ts';
import { centrale, clinique } from './french.ts';
import { mappe, zentrale } from './german.ts';
import { printout } from './mixed.ts';
import { central, regional } from './spanish.ts';

/**
 * Ten more styles of exports, written from trade knowledge alone by someone who had not seen the vocabularies nor the other ten: what they show is how exports
 * are read that nobody had in mind. All inventions. The truth of each stands in a JSON file of its name. A word's truth of null: nobody can tell from it.
 * Remarks with a comma that is not quoted are meant: such rows are problems.
 */
export interface BlindSource {
  file: string;
  sheet?: string;
  kind: RecordKind;
  decimal?: '.' | ',';
  wide?: string;
  columns: Record<
    string,
    | { headers: string[]; measure?: string; dates?: string[] }
    | { from: 'file_name' | 'sheet_name' | 'always' }
  >;
  words?: Record<string, Record<string, string | null>>;
  counts?: { records: number; duplicates: number; rejected: number; skipped: number };
}

export interface BlindStyle {
  name: string;
  zone: string;
  sources: BlindSource[];
  files: Record<string, string | Uint8Array>;
}

const MAKERS = { theatre, prevac, logger, printout, zentrale, mappe, centrale, clinique, central, regional };

export async function makeBlindStyles(): Promise<BlindStyle[]> {
  return Promise.all(
    Object.entries(MAKERS).map(async ([name, make]) => ({
      name,
      ...(JSON.parse(readFileSync(new URL(`${name}.json`, import.meta.url), 'utf8')) as Omit<
        BlindStyle,
        'name' | 'files'
      >),
      files: await make(),
    })),
  );
}
