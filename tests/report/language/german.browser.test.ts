import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeReport } from '../../../pipeline/report/report.ts';
import { de } from '../../../pipeline/report/words/de.ts';
import { launchBrowser, offlineContext } from '../browser.ts';
import { driftOf } from '../fixtures/drift-parts.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { CASES } from '../pages/interval/pages-of.ts';

let browser: Browser;
let folder: string;
let pages: string[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'german-'));
  const input = {
    ...fleetInput(3, { drift: driftOf('A1', 'north') }),
    interval: CASES.supported!,
    measures: { pressure: 'mbar', temperature: 'F' } as const,
  };
  const files = await writeReport(input, { words: de });
  for (const { path, content } of files) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), content);
  }
  pages = files.map((file) => file.path).filter((path) => path.endsWith('.html'));
  browser = await launchBrowser();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

async function visit(width: number, check: (page: Page, path: string) => Promise<void>): Promise<string[]> {
  const { context, complaints } = await offlineContext(browser, {
    javaScriptEnabled: true,
    viewport: { width, height: 900 },
  });
  for (const path of pages) {
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(folder, path)).href);
    await check(page, path);
    await page.close();
  }
  await context.close();
  return complaints;
}

describe('pages in German', () => {
  it.each([320, 390, 768, 1280])(
    'fit a screen of %i px: nothing but charts and tables scrolls, and those by themselves',
    async (width) => {
      const complaints = await visit(width, async (page, path) => {
        expect(
          await page.evaluate('document.documentElement.scrollWidth - window.innerWidth'),
          path,
        ).toBeLessThanOrEqual(0);
      });
      expect(complaints).toEqual([]);
    },
    120_000,
  );

  it('show no accessibility violation that a checker can find (WCAG 2.2 A and AA)', async () => {
    await visit(390, async (page, path) => {
      const { violations } = await new AxeBuilder({ page })
        // A picture is one image with title and description; its marks are not read out.
        .exclude('.chart svg > g')
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
        path,
      ).toEqual([]);
    });
  }, 180_000);

  it('say their language and show leak rates and differences in the measures of the site', async () => {
    let text = '';
    await visit(1280, async (page, path) => {
      expect(await page.evaluate('document.documentElement.lang'), path).toBe('de');
      text += await page.evaluate<string>('document.body.innerText');
    });
    expect(text).toContain('mbar/min');
    expect(text).toContain('°F');
    expect(text).not.toMatch(/\d\s(kPa\/min|K)\b/);
  });

  it.each([
    ['A4', 672, 297],
    ['Letter', 695, 279],
  ] as const)('hold answers, decisions and picture on the first sheet (%s)', async (_, width, height) => {
    const room = ((height - 37) / 25.4) * 96;
    await visit(width, async (page, path) => {
      if (path !== 'index.html') return;
      await page.emulateMedia({ media: 'print' });
      expect(
        await page.evaluate(`document.querySelector('#key').getBoundingClientRect().bottom`),
      ).toBeLessThan(room);
    });
  });
});
