import { writeFileSync } from 'node:fs';
import { makeReference } from './make-reference.ts';

for (const [name, content] of Object.entries(await makeReference())) {
  writeFileSync(new URL(name, import.meta.url), content);
}
