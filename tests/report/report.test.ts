// Over 300 lines: the pages of one report, made once.
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { reviewSchema } from '../../pipeline/findings/review-schema.ts';
import { type ReportInput, writeReport } from '../../pipeline/report/report.ts';
import type { ReportFile } from '../../pipeline/report/report-file.ts';
import { pageScript } from '../../pipeline/report/script/page-script.ts';
import { TABLE_NAMES } from '../../pipeline/report/tables/table.ts';
import { en } from '../../pipeline/report/words/en.ts';
import { ALL_REASONS, fleetInput } from './fixtures/fleet.ts';
import { HOSTILE, hostileInput } from './fixtures/hostile.ts';
import { reviewOf, unitOf } from './fixtures/review-of.ts';

const SECTIONS = [
  'answers',
  'decisions',
  'key',
  'meeting',
  'attention',
  'units',
  'cleaning',
  'failures',
  'aborts',
  'clock',
  'comparisons',
  'contradicted',
  'tests',
  'look-back',
  'returns',
  'early-stops',
  'quality',
  'data',
  'methods',
  'settings',
  'cautions',
];

const textOf = (files: readonly ReportFile[], path: string): string =>
  String(files.find((file) => file.path === path)?.content ?? `no file ${path}`);
/** Whole pages make no message: only what was looked for is told. */
function expectIn(page: string, where: string, text: string): void {
  expect(page.includes(text), `${where} must hold: ${text}`).toBe(true);
}
function expectNotIn(page: string, where: string, text: string): void {
  expect(page.includes(text), `${where} must not hold: ${text}`).toBe(false);
}
const pagesOf = (files: readonly ReportFile[]) => files.filter((file) => file.path.endsWith('.html'));
const empty = (parts: Parameters<typeof reviewOf>[0] = {}): ReportInput => ({
  review: reviewOf(parts),
  panel: [],
  dueOf: () => [],
  problems: [],
});

let input: ReportInput;
let files: ReportFile[];
beforeAll(async () => {
  input = fleetInput(3);
  files = await writeReport(input);
});

/** The one script that a page has, the same on each. */
const PAGE_SCRIPT = `<script>${pageScript}</script>`;
const withoutScript = (content: string | Uint8Array): string => String(content).replace(PAGE_SCRIPT, '');

describe('writeReport', () => {
  it('gives pages, data and tables', () => {
    expect(files.map((file) => file.path)).toEqual([
      'index.html',
      'unit-A1.html',
      'unit-A2.html',
      'unit-A3.html',
      'meeting.html',
      'comparisons.html',
      'records.html',
      'methods.html',
      'review.json',
      'review.schema.json',
      'problems.csv',
      ...TABLE_NAMES.map((name) => `tables/${name}.csv`),
      'review.xlsx',
    ]);
  });

  it('gives the same bytes for the same input, and leaves the input as it was', async () => {
    const data = () => {
      const { dueOf, ...rest } = input;
      return { ...rest, due: input.review.units.map(({ unit }) => dueOf(unit)) };
    };
    const frozen = structuredClone(data());
    expect(await writeReport(input)).toEqual(files);
    expect(data()).toEqual(frozen);
  });

  it('writes the review as data, with a schema that it holds to', () => {
    const data = JSON.parse(textOf(files, 'review.json'));
    expect(reviewSchema.parse(data)).toEqual(input.review);
    expect(JSON.parse(textOf(files, 'review.schema.json'))).toEqual(z.toJSONSchema(reviewSchema));
  });

  it('writes every problem, one a row', () => {
    const rows = parse(textOf(files, 'problems.csv'), { bom: true, columns: true }) as object[];
    expect(rows).toHaveLength(input.problems.length);
    expect(rows[0]).toMatchObject({ code: 'bad_time', row: '412', value: '24:10' });
  });

  it('writes the numbers that the charts draw', () => {
    const due = parse(textOf(files, 'tables/cleaning-due-by-unit.csv'), { bom: true, columns: true }) as {
      due: string;
    }[];
    expect(due.reduce((sum, row) => sum + Number(row.due), 0)).toBe(
      input.review.cleaning.month.reduce((sum, row) => sum + row.due, 0),
    );
    const comparisons = parse(textOf(files, 'tables/comparisons.csv'), { bom: true, columns: true }) as {
      id: string;
      ratio: string;
    }[];
    expect(comparisons.find((row) => row.id === 'A1/chamber_overdue/failed_test')).toMatchObject({
      ratio: '5.4',
    });
    expect(comparisons.find((row) => row.id === 'A2/chamber_overdue/failed_test')).toMatchObject({
      ratio: '',
    });
  });

  it('has every section on the first page, each once and with a heading', () => {
    const page = textOf(files, 'index.html');
    for (const id of SECTIONS) {
      expect(page.split(`<section id="${id}"`), id).toHaveLength(2);
      expectIn(page, id, `<h2 id="${id}-heading">`);
    }
  });

  it('prints each caution and each answer on the first page', () => {
    const page = textOf(files, 'index.html');
    expect(en.methods.cautions).toHaveLength(13);
    for (const caution of en.methods.cautions) expectIn(page, 'page', caution.replaceAll("'", '&#39;'));
    for (const question of Object.values(en.answers.questions)) expectIn(page, 'page', question);
  });

  it('stands each rate with its counts and its interval', () => {
    const failed = input.review.units[0]!.tests[0]!.failed_days;
    expectIn(
      textOf(files, 'index.html'),
      'index.html',
      `<span class="figures">${failed.events} of ${failed.of}</span> <span class="sub">`,
    );
  });

  it('gives evidence, next step and who decides for each reason', () => {
    const page = textOf(files, 'unit-A1.html');
    expect(page.match(/<b>Decides:<\/b>/g)).toHaveLength(ALL_REASONS.length);
    expectIn(
      page,
      'page',
      'More failed air-removal tests with chamber overdue: shown (ratio 5.4, 95% interval 2.1 to 16, adjusted p 0.010).',
    );
    expectIn(
      page,
      'page',
      '6 production or liquids cycles ran after a failed air-removal test and before one passed (29 March 2026, 07:18 to 19:02; of 2 not sure, since only the date of a test is known).',
    );
    expectIn(page, 'page', 'those who are responsible decide about them');
  });

  it('counts the failed days of the month where a picture holds the first of each episode only', async () => {
    const review = structuredClone(input.review);
    const { month } = review.period;
    const point = review.charts.failed_days.find((of) => of.scope === 'fleet' && of.month === month)!;
    point.events = 2;
    const counts = review.units.map(({ tests }) => tests.find(({ span }) => span === 'month')!);
    for (const [index, of] of counts.entries()) of.failures = index === 0 ? 4 : 1;
    const page = textOf(await writeReport({ ...input, review }), 'index.html');
    const failed = counts.length + 3;
    expectIn(page, 'index.html', `in March 2026 2 of ${failed} failed days in all.`);
  });

  it('says both readings where the verdict depends on them, and only there', () => {
    const page = textOf(files, 'comparisons.html');
    expect(
      page.match(/If records that the cycle log contradicts counted as done: suggested\./g),
    ).toHaveLength(1);
  });

  it('speaks of clocks and records, never of people, where records are in question', () => {
    const page = textOf(files, 'records.html');
    const section = page.slice(page.indexOf('<section id="quality"'), page.indexOf('<section id="data"'));
    expectIn(section, 'quality', '13 min before');
    expectIn(section, 'quality', 'clock of the tests runs behind, or that of the log ahead');
    expectIn(section, 'quality', 'clock of the cleaning log runs ahead, or work is written down late');
    expectIn(section, 'quality', '+63 min');
    expectIn(section, 'quality', '1 cleaning log with a clock that is not in step with the cycle log.');
    expectIn(
      page,
      'records',
      'The times of North cleaning log as a whole do not fit the cycle log, as if a clock were off',
    );
    expectNotIn(page, 'records', 'The times of South cleaning log');
    expectIn(section, 'quality', '+55 to +70 min');
    expectIn(section, 'quality', '260 of 290');
    expectIn(section, 'quality', 'set back to its start');
    expect(section).not.toMatch(/\b(staff|blame|careless|wrong|forgot|falsif|cheat)/i);
    expectIn(textOf(files, 'unit-A1.html'), 'unit', 'How good these records are');
  });
});

describe('every page', () => {
  it('has links that lead somewhere', () => {
    const paths = new Set(files.map((file) => file.path));
    for (const { path, content } of pagesOf(files)) {
      for (const [, href] of String(content).matchAll(/href="([^"]*)"/g)) {
        if (href === 'data:,' || href === 'tables/') continue;
        const [target, fragment] = href!.split('#') as [string, string?];
        expect(target === '' || paths.has(target), `${path}: ${href}`).toBe(true);
        if (fragment) expectIn(textOf(files, target || path), `${path}: ${href}`, ` id="${fragment}"`);
      }
    }
  });

  it('says in its head and at the foot of each printed sheet that it never releases a load', () => {
    for (const { path, content } of pagesOf(files)) {
      const page = String(content);
      expectIn(page.split('</header>')[0]!, `${path}, head`, en.pages.never);
      expect(page, path).toMatch(
        /@bottom-left \{ content: "[^"]*Never releases, rejects or recalls a load\."/,
      );
    }
  });

  it('has ids that stand once, and labels that name one', () => {
    for (const { path, content } of pagesOf(files)) {
      const ids = [...String(content).matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]!);
      expect(new Set(ids).size, path).toBe(ids.length);
      for (const [, names] of String(content).matchAll(/aria-labelledby="([^"]*)"/g))
        for (const name of names!.split(' ')) expect(ids, path).toContain(name);
    }
  });

  it('has headings in order, one of the first rank', () => {
    for (const { path, content } of pagesOf(files)) {
      const ranks = [...String(content).matchAll(/<h([1-6])[ >]/g)].map((match) => Number(match[1]));
      expect(
        ranks.filter((rank) => rank === 1),
        path,
      ).toHaveLength(1);
      for (const [index, rank] of ranks.entries())
        expect(rank - (ranks[index - 1] ?? 0), `${path}, heading ${index}`).toBeLessThanOrEqual(1);
    }
  });

  it('is under 3 MB and asks for nothing', () => {
    for (const { path, content } of pagesOf(files)) {
      expect(String(content).length, path).toBeLessThan(3_000_000);
      expect(String(content).split(PAGE_SCRIPT), path).toHaveLength(2);
      expect(withoutScript(String(content)), path).not.toMatch(
        /<script|<iframe|<object|<embed| src=|url\((?!#)|@import|style="/,
      );
    }
  });

  it('shows no code, no missing word and no number that is none', () => {
    for (const { path, content } of pagesOf(files)) {
      const text = String(content)
        .replace(/<style>.*?<\/style>/s, '')
        .replace(PAGE_SCRIPT, '')
        .replace(/<(?:svg|code)\b.*?<\/(?:svg|code)>/gs, '')
        .replace(/<[^>]*>/g, ' ');
      expect(text, path).not.toMatch(
        /undefined|NaN|Infinity|\[object|chamber_overdue|not_shown|calendar_days/,
      );
    }
  });
});

describe('empty and extreme states', () => {
  it('says that nothing was read', async () => {
    const page = textOf(await writeReport(empty()), 'index.html');
    expectIn(page, 'page', 'Nothing was read.');
    expectIn(page, 'page', 'No unit has a record.');
    expectIn(page, 'page', 'The question can’t be put to this record.');
    expectIn(page, 'page', 'Nothing is known to have been due.');
    for (const id of SECTIONS) expectIn(page, id, `<section id="${id}"`);
  });

  it('makes a page for a unit with no record', async () => {
    const made = await writeReport(empty({ units: [unitOf('B1')] }));
    expect(textOf(made, 'unit-B1.html')).toContain('No record of this unit.');
  });

  it('says that no test failed, and draws nothing in its place', async () => {
    const calm = fleetInput(2);
    const none = { events: 0 };
    const review = {
      ...calm.review,
      charts: {
        failed_days: calm.review.charts.failed_days.map((point) => ({
          ...point,
          ...none,
          value: 0,
          signals: [],
        })),
        aborts: calm.review.charts.aborts,
      },
      by_clock: calm.review.by_clock.map((row) => ({ ...row, failed_days: { ...row.failed_days, ...none } })),
      ranking: calm.review.ranking.map((row) => ({ ...row, failed: 0 })),
      look_backs: [],
    };
    const page = textOf(await writeReport({ ...calm, review }), 'index.html');
    expectIn(page, 'page', 'No failed air-removal tests in 1 January 2025 to 31 March 2026.');
    expectNotIn(page, 'page', 'id="figure-failed"');
    expectIn(page, 'page', 'No air-removal test failed in March 2026');
  });

  it('holds one unit without pictures that compare units', async () => {
    const page = textOf(await writeReport(fleetInput(1)), 'index.html');
    expectNotIn(page, 'page', 'figure-failed-units');
    expectNotIn(page, 'page', 'figure-ranking');
    expectIn(page, 'page', 'id="figure-failed"');
  });

  it('holds sixty units, in pictures that fit a sheet, under 3 MB', async () => {
    const page = textOf(await writeReport(fleetInput(60)), 'index.html');
    expect(page.length).toBeLessThan(3_000_000);
    const heights = [...page.matchAll(/<svg xmlns[^>]* height="(\d+)"/g)].map((match) => Number(match[1]));
    expect(heights.length).toBeGreaterThan(10);
    // A4 with our margins leaves 260 mm, Letter 242 mm: at 96 px an inch and scaled to the sheet's width, some 900 px.
    expect(Math.max(...heights)).toBeLessThan(900);
    expectIn(page, 'page', 'id="figure-calendar-drain-strainer-30"');
  });

  it('says that a month has no day of use', async () => {
    const idle = fleetInput(2);
    const review = {
      ...idle.review,
      cleaning: {
        ...idle.review.cleaning,
        month: [],
        days: idle.review.cleaning.days.map((day) => ({ ...day, state: 'idle' as const })),
      },
      units: idle.review.units.map((unit) => ({
        ...unit,
        days_of_use_in_month: 0,
        tests: unitOf('x').tests,
        cycles: unitOf('x').cycles,
      })),
    };
    const page = textOf(await writeReport({ ...idle, review }), 'index.html');
    expectIn(page, 'page', 'No task is known to have fallen due in March 2026.');
    expectIn(page, 'page', 'There was no production in March 2026.');
  });
});

describe('hostile text', () => {
  it('is shown as text in each page, and harmless in each table', async () => {
    const made = await writeReport(hostileInput());
    for (const { path, content } of pagesOf(made)) {
      const page = withoutScript(String(content));
      expect(page.match(/<script|<img|onerror=(?!alert\(1\)&gt;)/g), path).toBeNull();
      expect(page.match(/<\/style>/g), path).toHaveLength(1);
      expectIn(page, path, '&lt;script&gt;');
      expectNotIn(page, path, '\u202e');
    }
    const cells = (parse(textOf(made, 'problems.csv'), { bom: true }) as string[][]).flat();
    expect(cells.some((cell) => cell.startsWith("'="))).toBe(true);
    expect(cells.some((cell) => /^[=+@\t\r]/.test(cell))).toBe(false);
    expect(textOf(made, 'review.json')).toContain(JSON.stringify(HOSTILE).slice(1, 40));
  });
});
