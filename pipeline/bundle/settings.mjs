// How the program is bundled; also asked by the reference, which lists the libraries that go into the bundle.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const dist = path.join(root, 'dist');

/** Modules read the files beside them (vocabularies, kept measurements); from the bundle these still stand below pipeline/. */
const ownPlace = {
  name: 'own-place',
  setup(bundling) {
    bundling.onLoad({ filter: /pipeline\/.*\.ts$/ }, async ({ path: file }) => {
      const place = path.relative(dist, file).split(path.sep).join('/');
      const text = await readFile(file, 'utf8');
      return {
        contents: text.replaceAll(
          'import.meta.url',
          `new URL(${JSON.stringify(place)}, import.meta.url).href`,
        ),
        loader: 'ts',
      };
    });
  },
};

const json = async (...place) => JSON.parse(await readFile(path.join(root, ...place), 'utf8'));
const readingLibraries = await json('pipeline/ingest/history/reading-libraries.json');

/** Versions of the libraries that read exports, by name: what was kept by others is read again. */
const readingVersions = Object.fromEntries(
  await Promise.all(
    readingLibraries.map(async (name) => [name, (await json('node_modules', name, 'package.json')).version]),
  ),
);

/** @type {import('esbuild').BuildOptions} */
export const settings = {
  absWorkingDir: root,
  entryPoints: {
    index: 'pipeline/index.ts',
    main: 'pipeline/commands/main.ts',
    thread: 'pipeline/commands/threads/thread.ts',
  },
  outdir: dist,
  entryNames: '[name]',
  chunkNames: 'part-[hash]',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  // Starts its threads from a file of its own.
  external: ['tinypool'],
  target: 'node20',
  sourcemap: 'linked',
  legalComments: 'linked',
  logLevel: 'warning',
  banner: {
    js: "import { createRequire as requireOfBundle } from 'node:module'; const require = requireOfBundle(import.meta.url);",
  },
  define: { READING_LIBRARIES: JSON.stringify(JSON.stringify(readingVersions)) },
  plugins: [ownPlace],
};
