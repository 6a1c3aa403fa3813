#!/usr/bin/env node
// The bundle starts in a tenth of the time. Where there is none, or sources have changed since, tsx runs the TypeScript sources as they are.
import { bundled } from '../bundle/fresh.mjs';
import { startAnew } from './start-anew.mjs';

const bundle = bundled('main.js');
if (!bundle) (await import('tsx/esm/api')).register();
const { main, largerHeap } = await import(bundle ?? './main.ts');
const args = process.argv.slice(2);
const heap = isSetByUser() ? undefined : await largerHeap(args);
if (heap === undefined) await main(args);
else await startAnew([...process.execArgv, `--max-old-space-size=${heap}`, process.argv[1], ...args]);

/** Whether the size of the heap was asked for: by the user, or by this file. */
function isSetByUser() {
  return [...process.execArgv, process.env.NODE_OPTIONS ?? ''].some((option) =>
    /max.old.space.size/.test(option),
  );
}
