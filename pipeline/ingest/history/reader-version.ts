import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';

/** The sources that reading is made of, by their places below `pipeline`: two stages, and single files of all. */
export const SOURCES = {
  stages: ['ingest', 'site'],
  files: ['by-code-unit.ts', 'first-from.ts', 'group-by.ts', 'narrow-numbers.ts', 'packed-rows.ts'],
};

const PIPELINE = new URL('../../', import.meta.url);

/** Versions of the libraries that read, by name, as JSON, written in where the program is bundled: they are in the bundle then, and none of their packages need be there. */
declare const READING_LIBRARIES: string | undefined;

let known: string | undefined;

/**
 * SHA-256, hexadecimal, over the sources, the libraries and the parts of the engine that reading is made of: what others kept is read again. Of the engine it takes the
 * time zone database, which `Intl` gives to the clocks, and the library of decoders and tables of characters.
 */
export function readerVersion({ tz, icu }: NodeJS.ProcessVersions = process.versions): string {
  known ??= versionOfProgram();
  return createHash('sha256')
    .update(JSON.stringify([known, tz ?? null, icu ?? null]))
    .digest('hex');
}

function versionOfProgram(): string {
  const hash = createHash('sha256').update(JSON.stringify(libraryVersions()));
  for (const file of [...SOURCES.stages.flatMap(filesOf), ...SOURCES.files])
    hash.update(`${file}\0`).update(readFileSync(new URL(file, PIPELINE)));
  return hash.digest('hex');
}

/** Versions by name of library. */
export function libraryVersions(): Record<string, string> {
  return typeof READING_LIBRARIES === 'undefined' ? installedVersions() : JSON.parse(READING_LIBRARIES);
}

function installedVersions(): Record<string, string> {
  const json = (url: URL) => JSON.parse(readFileSync(url, 'utf8'));
  const names: string[] = json(new URL('./reading-libraries.json', import.meta.url));
  return Object.fromEntries(
    names.map((name) => [name, json(new URL(`../node_modules/${name}/package.json`, PIPELINE)).version]),
  );
}

function filesOf(stage: string): string[] {
  return readdirSync(new URL(stage, PIPELINE), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `${stage}/${file.replaceAll('\\', '/')}`)
    .sort();
}
