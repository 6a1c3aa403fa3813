#!/usr/bin/env node
// The bundle starts in a tenth of the time. Where there is none, or sources have changed since, tsx runs the TypeScript sources as they are.
import { bundled } from '../bundle/fresh.mjs';

const bundle = bundled('main.js');
if (!bundle) (await import('tsx/esm/api')).register();
const { main } = await import(bundle ?? './main.ts');
await main(process.argv.slice(2));
