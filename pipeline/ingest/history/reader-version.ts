import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';

const FOLDERS = ['../', '../../site/', '../../steam/'];

let known: string | undefined;

/** SHA-256 over the sources that reading is made of: what another version kept is read again. */
export function readerVersion(): string {
  known ??= FOLDERS.reduce((hash, folder) => {
    const base = new URL(folder, import.meta.url);
    const files = readdirSync(base, { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.ts'),
    );
    for (const file of files.map((file) => file.replaceAll('\\', '/')).sort())
      hash.update(`${folder}${file}\0`).update(readFileSync(new URL(file, base)));
    return hash;
  }, createHash('sha256')).digest('hex');
  return known;
}
