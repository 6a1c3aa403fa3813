import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';

/** Files below a folder whose names end so, relative to it, with forward slashes, in order. */
export function listFiles(folder: string, ending: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}
