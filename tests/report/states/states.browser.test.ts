import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reviewSchema } from '../../../pipeline/findings/review-schema.ts';
import { writeReport } from '../../../pipeline/report/report.ts';
import { launchBrowser, offlineContext } from '../browser.ts';
import { STATES, type State } from './states.ts';

/** What the first page and the page for the meeting must say of themselves in each state. */
const SAYS: Record<State, { index: RegExp[]; meeting: RegExp[] }> = {
  'no failures at all': {
    index: [/No failed air-removal tests in .* to 31 March 2026/, /No air-removal test failed in March 2026/],
    meeting: [/No unit has a reason on record to need attention/, /Chamber cleaning/],
  },
  'one unit': { index: [/of the 1 unit/], meeting: [/Tasks that fall due in April 2026/] },
  'sixty units': { index: [/U60/, /1,680 tasks due/], meeting: [/U60/] },
  'one month of data': {
    index: [/2 to 31 March 2026/],
    meeting: [/78 times on 3 units/],
  },
  'everything contradicted': {
    index: [/a cycle was running/],
    meeting: [/The cycle log contradicts/, /outstanding/],
  },
  'nothing readable': {
    index: [
      /400 of 400 rows/,
      /The question can’t be put to this record/,
      /Nothing is known to have been due/,
    ],
    meeting: [/Source without any record/, /No task with an interval is known to fall due in April 2026/],
  },
};
const SCREENS = { desktop: 1280, telephone: 390 } as const;
/** A4 less the margins of the style (19 and 18 mm high, 16 mm at either side), at 96 px an inch. */
const SHEET = { width: 672, height: ((297 - 37) / 25.4) * 96 };
/** Pages whose form is the same for each unit: the first stands for all. */
const sameForm = (path: string) => /^unit-U(?!1\.)/.test(path);

let browser: Browser;
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'states-'));
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

describe.each(Object.keys(STATES) as State[])('a report with %s', (state) => {
  let pages: string[];
  const texts = new Map<string, string>();
  beforeAll(async () => {
    const input = STATES[state]();
    expect(reviewSchema.safeParse(input.review).error).toBeUndefined();
    const files = await writeReport(input);
    for (const { path, content } of files) {
      await mkdir(dirname(join(folder, state, path)), { recursive: true });
      await writeFile(join(folder, state, path), content);
      if (path.endsWith('.html')) expect(String(content).length, path).toBeLessThan(3_000_000);
    }
    pages = files.map(({ path }) => path).filter((path) => path.endsWith('.html') && !sameForm(path));
  });

  it('says what it is on its pages, with no word or number missing', async () => {
    const { context, complaints } = await offlineContext(browser, { javaScriptEnabled: false });
    for (const path of pages) {
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(folder, state, path)).href);
      const text = String(await page.evaluate(`document.querySelector('main').innerText`)).replace(
        /\s+/g,
        ' ',
      );
      texts.set(path, text);
      expect(text, path).not.toMatch(/undefined|NaN|Infinity|\[object/);
      const empty = await page.evaluate(
        `[...document.querySelectorAll('main section')].filter((of) => of.innerText.length < 20).map((of) => of.id)`,
      );
      expect(empty, path).toEqual([]);
      await page.close();
    }
    await context.close();
    expect(complaints).toEqual([]);
    for (const said of SAYS[state].index) expect(texts.get('index.html')).toMatch(said);
    for (const said of SAYS[state].meeting) expect(texts.get('meeting.html')).toMatch(said);
  });

  it.each(Object.entries(SCREENS))('fits a %s without sideways scrolling', async (_, width) => {
    const { context } = await offlineContext(browser, {
      javaScriptEnabled: true,
      viewport: { width, height: 900 },
    });
    for (const path of pages) {
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(folder, state, path)).href);
      const wide = await page.evaluate(
        'document.documentElement.scrollWidth - document.documentElement.clientWidth',
      );
      expect(wide, path).toBeLessThanOrEqual(0);
      await page.close();
    }
    await context.close();
  });

  it('prints with each figure whole on its sheet', async () => {
    const { context } = await offlineContext(browser, {
      javaScriptEnabled: true,
      viewport: { width: SHEET.width, height: 900 },
    });
    for (const path of pages) {
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(folder, state, path)).href);
      await page.emulateMedia({ media: 'print' });
      const figures = (await page.evaluate(
        `[...document.querySelectorAll('figure')].map((of) => [of.id, of.getBoundingClientRect().height])`,
      )) as [string, number][];
      for (const [id, height] of figures) expect(height, `${path}: ${id}`).toBeLessThan(SHEET.height);
      await page.close();
    }
    await context.close();
  });
});
