import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser, offlineContext } from '../../browser.ts';
import { CASES, hostileCase, pageOf } from './pages-of.ts';

const NAMES = ['supported', 'not_supported', 'cannot_tell', 'hostile'];
let browser: Browser;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'interval-'));
  for (const name of NAMES)
    await writeFile(
      join(folder, `${name}.html`),
      await pageOf(name === 'hostile' ? hostileCase() : CASES[name]!),
    );
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

async function visit(name: string, width: number, check: (page: Page) => Promise<void>): Promise<string[]> {
  const { context, complaints } = await offlineContext(browser, {
    javaScriptEnabled: true,
    viewport: { width, height: 900 },
  });
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(folder, `${name}.html`)).href);
  await check(page);
  await context.close();
  return complaints;
}

describe.each(NAMES)('page of the case, %s', (name) => {
  it('shows no accessibility violation and asks for nothing', async () => {
    const complaints = await visit(name, 1280, async (page) => {
      const { violations } = await new AxeBuilder({ page })
        .exclude('.chart svg > g')
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`)).toEqual([]);
    });
    expect(complaints).toEqual([]);
  });

  it.each([1280, 390, 320])('fits a screen of %i px without sideways scrolling', async (width) => {
    await visit(name, width, async (page) => {
      const wide = await page.evaluate(
        'document.documentElement.scrollWidth - document.documentElement.clientWidth',
      );
      expect(wide).toBeLessThanOrEqual(0);
    });
  });
});

describe('tables with long words', () => {
  it('fit a desktop, so that what a limit rests on is in sight', async () => {
    await visit('supported', 1280, async (page) => {
      const cut = await page.evaluate(
        '[...document.querySelectorAll("#surfaces .table")].map((of) => of.scrollWidth - of.clientWidth)',
      );
      expect(cut).toEqual([0]);
    });
  });
});

describe.each(['supported', 'not_supported', 'cannot_tell'])('charts of the case, %s', (name) => {
  it('cuts no label of a chart', async () => {
    await visit(name, 1280, async (page) => {
      const cut = await page.evaluate(`[...document.querySelectorAll('.chart svg')].flatMap((svg) => {
        const box = svg.getBoundingClientRect();
        return [...svg.querySelectorAll('text')].filter((text) => {
          const own = text.getBoundingClientRect();
          return own.width > 0 && (own.left < box.left - 2 || own.right > box.right + 2 || own.top < box.top - 3 || own.bottom > box.bottom + 3);
        }).map((text) => svg.querySelector('title').textContent + ': ' + text.textContent);
      })`);
      expect(cut).toEqual([]);
    });
  });
});

describe('printed', () => {
  it.each(['supported', 'not_supported', 'cannot_tell'])(
    'the argument stands on one A4 sheet (%s)',
    async (name) => {
      await visit(name, 672, async (page) => {
        await page.emulateMedia({ media: 'print' });
        // The sheet less the margins of the style (19 and 18 mm), at 96 px an inch.
        const room = ((297 - 37) / 25.4) * 96;
        const bottom = await page.evaluate(
          `document.querySelector('#argument').getBoundingClientRect().bottom`,
        );
        expect(bottom).toBeLessThan(room);
      });
    },
  );
});
