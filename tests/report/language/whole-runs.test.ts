import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ReportInput, writeReport } from '../../../pipeline/report/report.ts';
import type { ReportFile } from '../../../pipeline/report/report-file.ts';
import { de } from '../../../pipeline/report/words/de.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { dataOf, withoutData } from './data-texts.ts';
import { DECIMAL_POINT, ENGLISH } from './english.ts';
import { inputOf } from './input-of.ts';
import { pageTexts } from './page-texts.ts';
import { outsideMarks, pseudo } from './pseudo.ts';

const FOLDERS = {
  'the demo': '../../../data-samples',
  'messy exports': '../../runs/messy-exports/input',
  'the smallest site file': '../../runs/smallest-site-file/input',
};

const textsOf = (files: readonly ReportFile[]) =>
  files
    .filter((file) => file.path.endsWith('.html'))
    .flatMap(({ path, content }) => pageTexts(String(content)).map((found) => ({ path, ...found })));

describe.each(Object.entries(FOLDERS))('pages of %s', (_, folder) => {
  let input: ReportInput;
  let data: string[];
  beforeAll(async () => {
    input = await inputOf(fileURLToPath(new URL(folder, import.meta.url)));
    data = dataOf(input);
  }, 180_000);

  it('have no text that is neither of the catalogue nor of the records', async () => {
    const stray = textsOf(await writeReport(input, { words: pseudo(en) }))
      .filter(({ text }) => /\p{L}/u.test(withoutData(outsideMarks(text), data)))
      .map(({ path, where, text }) => `${path} ${where}: ${text}`);
    expect([...new Set(stray)]).toEqual([]);
  }, 180_000);

  it('have no English in German, and no decimal point', async () => {
    const stray = textsOf(await writeReport(input, { words: de }))
      .filter(({ text }) => {
        // Words of the site file's own vocabulary, which may be mapped, are codes.
        const own = withoutData(text.replace(/eines von [\w, ]+, oder/, ''), data);
        return ENGLISH.test(own) || DECIMAL_POINT.test(own);
      })
      .map(({ path, where, text }) => `${path} ${where}: ${text}`);
    expect([...new Set(stray)]).toEqual([]);
  }, 180_000);
});
