import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { countProblems } from '../../pipeline/ingest/reading.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { HEADER, ROW } from './read-folder.ts';

/** Reads an endless-looking input in a process whose memory is bounded from outside, and prints the counts as JSON. */
const [, , folder = '', what = '', count = '0'] = process.argv;

/** Bytes of no order at all, the same in each run: the high byte of a linear congruential generator (Numerical Recipes, 2nd ed., p. 284). */
function* randomBytes(pieces: number): Generator<Uint8Array> {
  let state = 1;
  for (let piece = 0; piece < pieces; piece++) {
    const bytes = new Uint8Array(1 << 16);
    for (let at = 0; at < bytes.length; at++) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      bytes[at] = state >>> 24;
    }
    yield bytes;
  }
}

function* wrongRows(rows: number): Generator<Uint8Array> {
  yield Buffer.from(`${HEADER}\n`);
  const block = Buffer.from(`${ROW.replace('2025', '20x5')}\n`.repeat(1000));
  for (let at = 0; at < rows; at += 1000) yield block;
}

const site = readSiteFile('sites: [{ zone: Europe/Berlin }]', 'site.yaml');
const { files, problems } = await readExports(site, folder, {
  open: async function* () {
    if (what === 'random-below-header') yield Buffer.from(`${HEADER}\n${ROW}\n`);
    yield* what === 'wrong' ? wrongRows(Number(count)) : randomBytes(Number(count));
  },
});
const read = files[0]!;
process.stdout.write(
  JSON.stringify({
    ...read,
    listed: problems.length,
    counted: countProblems(problems.filter(({ costs }) => costs === 'row')),
    rss: process.resourceUsage().maxRSS / 1024,
  }),
);
