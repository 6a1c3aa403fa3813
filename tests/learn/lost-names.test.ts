import { describe, expect, it } from 'vitest';
import { learn } from '../../pipeline/learn/learn.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';
import { sourceFor } from './blind/judge.ts';
import type { BlindSource, BlindStyle } from './blind/make-blind.ts';
import { makeSecondStyles } from './blind-second/make-second.ts';

const NONSENSE = 'Xqv';
const vocabulary = loadVocabulary();

/** A text file in its encoding, with something changed; undefined where it is none or nothing changes. */
function changed(
  content: string | Uint8Array,
  change: (text: string) => string,
): string | Uint8Array | undefined {
  if (typeof content !== 'string' && content[0] === 0x50) return undefined;
  const encoding = typeof content === 'string' ? 'utf8' : content[0] === 0xff ? 'utf16le' : 'latin1';
  const text = typeof content === 'string' ? content : Buffer.from(content).toString(encoding);
  const other = change(text);
  if (other === text) return undefined;
  return typeof content === 'string' ? other : Buffer.from(other, encoding);
}

/** The file with one name of a column replaced by letters that mean nothing; undefined where it is no text or the name does not stand there by itself. */
function withoutName(content: string | Uint8Array, header: string): string | Uint8Array | undefined {
  const literal = header.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const name = new RegExp(`(^|[;,\\t|"\\ufeff])${literal}(?=[;,\\t|"\\r]|$)`, 'gm');
  return changed(content, (text) => text.replace(name, `$1${NONSENSE}`));
}

/** The file without units of measure in its names of columns: those in brackets, and those that stand last. */
const withoutMeasures = (content: string | Uint8Array): string | Uint8Array | undefined =>
  changed(content, (text) =>
    text
      .replace(/[ _]*[([](?!0)[^()[\]\n;,\t]*[)\]]/g, '')
      .replace(/ (?:mbar\/min|mbara|PSIG|PSI|degC|F)(?=[",;\t])/g, ''),
  );

interface Taken {
  place: string;
  by: readonly string[];
}

async function takenAsCertain(
  style: BlindStyle,
  truth: BlindSource,
): Promise<{ tried: number; taken: Taken[] }> {
  const [name, content] = Object.entries(style.files).find(([file]) => file.includes(truth.file)) ?? [];
  const taken: Taken[] = [];
  let tried = 0;
  for (const [field, want] of Object.entries(truth.columns)) {
    if (name === undefined || content === undefined || !('headers' in want)) continue;
    const other = withoutName(content, want.headers.at(-1)!);
    if (other === undefined) continue;
    tried++;
    await withFolder({ [name]: other }, async (folder) => {
      const proposal = await learn(folder, { vocabulary, zone: style.zone });
      const column = sourceFor(proposal, truth)?.columns.find((one) => one.field === field);
      if (!column || !('headers' in column.from) || column.match.confidence !== 'certain') return;
      if (!column.from.headers.includes(NONSENSE))
        taken.push({ place: `${style.name}: ${truth.file} ${field}`, by: column.from.headers });
    });
  }
  return { tried, taken };
}

describe('a column whose name is lost', () => {
  it('has no other column put in its place as certain', async () => {
    let tried = 0;
    const taken: Taken[] = [];
    for (const style of await makeSecondStyles())
      for (const truth of style.sources) {
        const found = await takenAsCertain(style, truth);
        tried += found.tried;
        taken.push(...found.taken);
      }
    expect(tried).toBeGreaterThan(150);
    expect(taken).toEqual([]);
  }, 240_000);
});

describe('columns whose units of measure are not said', () => {
  it('get the right one, or a question, or one that is marked', async () => {
    const wrong: unknown[] = [];
    let right = 0;
    let all = 0;
    for (const style of await makeSecondStyles())
      for (const truth of style.sources) {
        const [name, content] = Object.entries(style.files).find(([file]) => file.includes(truth.file)) ?? [];
        const other = content && withoutMeasures(content);
        if (name === undefined || other === undefined) continue;
        const [source] = await withFolder(
          { [name]: other },
          async (folder) => (await learn(folder, { vocabulary, zone: style.zone })).sources,
        );
        for (const [field, want] of Object.entries(truth.columns)) {
          if (!('headers' in want) || want.measure === undefined) continue;
          all++;
          const measure = source?.columns.find((one) => one.field === field)?.measure;
          if (measure?.value === want.measure) right++;
          else if (measure?.value !== undefined && measure.confidence === 'certain')
            wrong.push([style.name, truth.file, field, measure]);
        }
      }
    expect(wrong).toEqual([]);
    expect(all).toBeGreaterThan(25);
    expect(right / all).toBeGreaterThanOrEqual(0.6);
  }, 120_000);
});
