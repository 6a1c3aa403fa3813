import { readdir, readFile } from 'node:fs/promises';
import { type Part, partsOf } from './parts.ts';
import { type Shown, takeShown } from './show.ts';

const FOLDER = new URL('../', import.meta.url);

/** A notebook that was run: its parts, each with what its code showed. */
export interface RunNotebook {
  name: string;
  title: string;
  /** What it is about: its first paragraph, Markdown. */
  lede: string;
  parts: (Part & { shown: Shown[] })[];
}

/** Names of all notebooks, in their order: the files that begin with a number. */
export async function notebookNames(): Promise<string[]> {
  const files = await readdir(FOLDER);
  return files
    .filter((file) => /^\d.*\.ts$/.test(file))
    .map((file) => file.slice(0, -'.ts'.length))
    .sort();
}

/**
 * Runs a notebook, once in the life of the program, and sorts what it showed to its code.
 *
 * @throws Error where the notebook fails, does not begin with a title and a paragraph, or shows something from within a loop or function
 */
export async function runNotebook(name: string): Promise<RunNotebook> {
  const file = new URL(`${name}.ts`, FOLDER);
  const parts = partsOf(await readFile(file, 'utf8'));
  const [first] = parts;
  const opening = first?.kind === 'prose' ? /^# (.+)\n\n([\s\S]+?)(?:\n\n|$)/.exec(first.markdown) : null;
  if (!opening) throw new Error(`${name}: must begin with a title and a paragraph`);
  takeShown();
  await import(file.href);
  const shown = takeShown();
  const expected = parts.reduce((sum, part) => sum + (part.kind === 'code' ? part.shows : 0), 0);
  if (shown.length !== expected)
    throw new Error(
      `${name}: show must stand at the start of a line, outside loops and functions: ${expected} such lines, ${shown.length} things shown`,
    );
  return {
    name,
    title: opening[1]!,
    lede: opening[2]!,
    parts: parts.map((part) => ({ ...part, shown: part.kind === 'code' ? shown.splice(0, part.shows) : [] })),
  };
}
