import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildDemoData } from './build.ts';

/** Writes the demo data into `data-samples`, or into the folder given as the first argument. */
const target = process.argv[2] ?? fileURLToPath(new URL('..', import.meta.url));
const files = await buildDemoData();
await rm(path.join(target, 'exports'), { recursive: true, force: true });
let total = 0;
for (const [name, bytes] of files) {
  const file = path.join(target, name);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, bytes);
  total += bytes.length;
}
process.stdout.write(`${files.size} files, ${total} bytes\n`);
