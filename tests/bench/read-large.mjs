// One measurement of the benchmark in a process of its own: prints the rows and the peak memory in kB.
import { createReadStream, readFileSync } from 'node:fs';
import { parse } from 'csv-parse';
import { bundled } from '../../pipeline/bundle/fresh.mjs';

const [what, target, threads, history] = process.argv.slice(2);
const quiet = { print() {}, printError() {}, progress() {}, progressDone() {} };
let rows = 0;
// As the program is run.
const settings = bundled('engine.js');
if (!settings) (await import('tsx/esm/api')).register();
(await import(settings ?? '../../pipeline/commands/engine-settings.ts')).tuneEngine();
if (what === 'parse') {
  for (const file of readFileSync(target, 'utf8').split('\n'))
    for await (const row of createReadStream(file).pipe(parse({ bom: true, from: 2 })))
      rows += row.length > 0 ? 1 : 0;
} else if (what === 'duckdb') {
  // Loads each kind of file into a table, as pandas loads each file into one.
  const { DuckDBInstance } = await import('@duckdb/node-api');
  const connection = await (await DuckDBInstance.create(':memory:', { threads })).connect();
  for (const kind of ['log', 'tests', 'cleanings']) {
    await connection.run(
      `CREATE TABLE ${kind} AS SELECT * FROM read_csv('${target.replaceAll("'", "''")}/${kind}-*.csv')`,
    );
    const counted = await connection.runAndReadAll(`SELECT count(*) FROM ${kind}`);
    rows += Number(counted.getRows()[0][0]);
  }
} else if (what === 'keep') {
  const bundles = [bundled('inputs.js'), bundled('receipts.js')];
  if (bundles.includes(undefined)) (await import('tsx/esm/api')).register();
  const { findInputs } = await import(bundles[0] ?? '../../pipeline/commands/find-inputs.ts');
  const { readIntoHistory } = await import(
    bundles[1] ?? '../../pipeline/commands/site-by-site/read-site-by-site.ts'
  );
  const values = { folder: target, threads, history };
  const { files } = await readIntoHistory(await findInputs(values), values, quiet);
  rows = files.reduce((sum, { count }) => sum + count, 0);
} else if (what === 'join') {
  const [bundle, thread] = [bundled('join-large.js'), bundled('join-thread.js')];
  if (!bundle || !thread) throw new Error('the benchmark must be bundled');
  const { joinLarge } = await import(bundle);
  const { read, panel } = await joinLarge({ folder: target, threads, history }, quiet, thread);
  if (panel === 0) throw new Error('the panel must have rows');
  rows = read;
} else {
  const bundles = [bundled('inputs.js'), bundled('reading.js')];
  if (bundles.includes(undefined)) (await import('tsx/esm/api')).register();
  const { findInputs } = await import(bundles[0] ?? '../../pipeline/commands/find-inputs.ts');
  const { readFound } = await import(bundles[1] ?? '../../pipeline/commands/read-inputs.ts');
  const values = { folder: target, threads, history };
  const found = await findInputs(values);
  const reading = await readFound(found, values, quiet);
  rows = Object.values(reading.records).reduce((sum, { length }) => sum + length, 0);
}
console.log(rows, process.resourceUsage().maxRSS);
