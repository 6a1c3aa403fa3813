#!/usr/bin/env node
// The TypeScript sources run as they are: tsx turns them into JavaScript on import.
import { register } from 'tsx/esm/api';

register();
const { main } = await import('./main.ts');
await main(process.argv.slice(2));
