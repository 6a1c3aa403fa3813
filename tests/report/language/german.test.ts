import { beforeAll, describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../../pipeline/ingest/reading.ts';
import { type ReportInput, writeReport } from '../../../pipeline/report/report.ts';
import type { ReportFile } from '../../../pipeline/report/report-file.ts';
import { de } from '../../../pipeline/report/words/de.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { driftOf } from '../fixtures/drift-parts.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { reviewOf } from '../fixtures/review-of.ts';
import { CASES } from '../pages/interval/pages-of.ts';
import { dataOf, withoutData } from './data-texts.ts';
import { DECIMAL_POINT, ENGLISH } from './english.ts';
import { pageTexts } from './page-texts.ts';

/** Columns of a source, which are named in a sentence. */
const ACTION_COLUMNS = 'time, unit, action, role, due, done_on';

const inputs: Record<string, ReportInput> = {
  full: { ...fleetInput(3, { drift: driftOf('A1', 'north') }), interval: CASES.supported! },
  'no rise': { ...fleetInput(2), interval: CASES.not_supported! },
  'nothing to say': { ...fleetInput(1), interval: CASES.cannot_tell! },
  empty: { review: reviewOf(), panel: [], dueOf: () => [], problems: [], interval: CASES.empty! },
};

describe.each(Object.keys(inputs))('report in German, %s', (name) => {
  let files: ReportFile[];
  const pages = () => files.filter((file) => file.path.endsWith('.html'));
  beforeAll(async () => {
    files = await writeReport(inputs[name]!, { words: de });
  }, 60_000);

  it('says so in each page, and holds no English', () => {
    const data = [ACTION_COLUMNS, ...dataOf(inputs[name]!)];
    const found = new Set<string>();
    for (const { path, content } of pages()) {
      expect(String(content), path).toContain('<html lang="de">');
      for (const { where, text } of pageTexts(String(content)))
        if (ENGLISH.test(withoutData(text, data))) found.add(`${path} ${where}: ${text.slice(0, 200)}`);
    }
    expect([...found]).toEqual([]);
  });

  it('has decimal commas', () => {
    const data = dataOf(inputs[name]!);
    const texts = pages()
      .flatMap(({ content }) => pageTexts(String(content)))
      .map(({ text }) => withoutData(text, data));
    const decimals = texts.filter((text) => DECIMAL_POINT.test(text));
    expect(decimals).toEqual([]);
  });

  it('has the data of the English report, byte for byte, but for the sentences of the next steps', async () => {
    const english = await writeReport(inputs[name]!, { words: en });
    const data = (of: readonly ReportFile[]) =>
      of.filter(({ path }) => /\.(json|csv)$/.test(path) && path !== 'tables/next-steps.csv');
    expect(data(files).length).toBeGreaterThan(5);
    expect(data(files)).toEqual(data(english));
  });
});

describe('German sentences', () => {
  it('count in the way of the trade', () => {
    expect(de.series.point('März 2026', 7, 212, de.terms.trials.failed_test)).toBe(
      'März 2026 7 von 212 Prüftagen',
    );
    const reason = { failures: 2, day_results: 26, episodes: 1 };
    expect(de.attention.reason.failed_test(reason, '95\u00a0%').evidence).toBe(
      '2 von 26 Prüftagen nicht bestanden, in 1 Episode, die in diesem Monat begann.',
    );
  });

  it('name each problem of the reading', () => {
    for (const [code, meaning] of Object.entries(PROBLEM_CODES)) {
      expect(de.records.data.problem(code, meaning), code).toBeTruthy();
      expect(de.records.data.problem(code, meaning), code).not.toBe(meaning);
    }
  });

  it('mean each setting of the site file that English describes', () => {
    const untold = inputs
      .full!.review.settings.filter((row) => row.description !== '')
      .filter((row) => de.methods.settingMeans(row.name, row.description) === row.description)
      .map((row) => row.name);
    expect(untold).toEqual([]);
  });
});
