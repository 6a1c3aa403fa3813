import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { libraryVersions, readerVersion, SOURCES } from '../../pipeline/ingest/history/reader-version.ts';
import { listFiles } from '../list-files.ts';

const PIPELINE = fileURLToPath(new URL('../../pipeline/', import.meta.url));

const sources = [
  ...SOURCES.stages.flatMap((stage) =>
    listFiles(path.join(PIPELINE, stage), '.ts').map((file) => `${stage}/${file}`),
  ),
  ...SOURCES.files,
];

/** What the sources of reading import, by package name or by place below `pipeline`. */
const imported = sources.flatMap((file) =>
  [
    ...readFileSync(path.join(PIPELINE, file), 'utf8').matchAll(
      /^(?:import|export|\}) .*?from '([^']+)';$/gm,
    ),
  ].map(([, from]) => (from!.startsWith('.') ? path.posix.join(path.posix.dirname(file), from!) : from!)),
);

describe('the version of the reader', () => {
  it('is another with another time zone database, and with other decoders', () => {
    const { versions } = process;
    expect(readerVersion(versions)).toBe(readerVersion());
    const others = [versions, { ...versions, tz: '1999a' }, { ...versions, icu: '1' }].map((of) =>
      readerVersion(of),
    );
    expect(new Set(others).size).toBe(3);
  });

  it('rests on every source that reading imports', () => {
    const others = imported.filter((from) => from.endsWith('.ts') && !sources.includes(from));
    // What an error says gets into no record.
    expect([...new Set(others)]).toEqual(['user-error.ts']);
  });

  it('rests on the version of every library that reading imports', () => {
    const libraries = imported
      .filter((from) => !from.endsWith('.ts') && !from.startsWith('node:'))
      .map((from) =>
        from
          .split('/')
          .slice(0, from.startsWith('@') ? 2 : 1)
          .join('/'),
      );
    expect(Object.keys(libraryVersions())).toEqual([...new Set(libraries)].sort());
    for (const version of Object.values(libraryVersions())) expect(version).toMatch(/^\d+\.\d+\.\d+/);
  });
});
