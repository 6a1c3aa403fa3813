import { beforeAll, describe, expect, it } from 'vitest';
import { type ReportInput, writeReport } from '../../../pipeline/report/report.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { driftOf } from '../fixtures/drift-parts.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { reviewOf, unitOf } from '../fixtures/review-of.ts';
import { CASES } from '../pages/interval/pages-of.ts';
import { dataOf, withoutData } from './data-texts.ts';
import { pageTexts } from './page-texts.ts';
import { OPEN, outsideMarks, pseudo } from './pseudo.ts';

const empty = { review: reviewOf(), panel: [], dueOf: () => [], problems: [] };
const inputs: Record<string, ReportInput> = {
  'three units, a rise supported': {
    ...fleetInput(3, { drift: driftOf('A1', 'north') }),
    interval: CASES.supported!,
  },
  'three units, no rise': { ...fleetInput(3), interval: CASES.not_supported! },
  'two units, nothing to say of the interval': { ...fleetInput(2), interval: CASES.cannot_tell! },
  'a unit without a record': {
    ...empty,
    review: reviewOf({ units: [unitOf('B1')] }),
    interval: CASES.empty!,
  },
  nothing: empty,
};

describe('catalogue of words', () => {
  it('marks: what stands inside them does not count, nested and cut short ones too', () => {
    const words = pseudo(en);
    expect(words.pages.review.startsWith(OPEN)).toBe(true);
    expect(outsideMarks(words.pages.unit('A1'))).toBe('');
    expect(outsideMarks(`${words.pages.review} of ${words.format.month('2026-03')}`)).toBe(' of ');
    expect(outsideMarks(words.pages.review.slice(0, 3).concat('\u2026'))).toBe('');
  });

  it('texts of a page: nodes, text of pictures and what is read out, nothing of style and script', () => {
    const page =
      '<html lang="en"><style>p{}</style><p title="a">b &amp; c</p><svg><desc>d</desc><text>e</text></svg><script>f()</script><p><span lang="en">g</span></p></html>';
    expect(pageTexts(page).map((found) => found.text)).toEqual(['a', 'b & c', 'd', 'e']);
  });
});

describe.each(Object.keys(inputs))('every text of the report of %s', (name) => {
  let stray: string[];
  let pages: string[];
  beforeAll(async () => {
    const input = inputs[name]!;
    const data = dataOf(input);
    const files = await writeReport(input, { words: pseudo(en) });
    const html = files.filter((file) => file.path.endsWith('.html'));
    pages = html.map((file) => file.path);
    stray = html.flatMap((file) =>
      pageTexts(String(file.content))
        .filter(({ text }) => /\p{L}/u.test(withoutData(outsideMarks(text), data)))
        .map(({ where, text }) => `${file.path} ${where}: ${text}`),
    );
  }, 60_000);

  it('comes from the catalogue or from the records', () => {
    expect(pages).toContain('index.html');
    expect([...new Set(stray)]).toEqual([]);
  });
});
