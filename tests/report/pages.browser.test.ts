import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { OPERATING_CHARACTERISTICS } from '../../pipeline/findings/operating-characteristics.ts';
import { type ReportInput, writeReport } from '../../pipeline/report/report.ts';
import { launchBrowser, offlineContext } from './browser.ts';
import { fleetInput } from './fixtures/fleet.ts';
import { HOSTILE, hostileInput } from './fixtures/hostile.ts';
import { reviewOf } from './fixtures/review-of.ts';
import { CASES } from './pages/interval/pages-of.ts';

const WIDTHS = { desktop: 1280, tablet: 768, telephone: 390, narrow: 320 } as const;

let browser: Browser;
let folder: string;
const reports: Record<string, string[]> = {};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'report-'));
  const inputs: Record<string, ReportInput> = {
    fleet: { ...fleetInput(3), interval: CASES.supported! },
    measured: fleetInput(6, { operating_characteristics: OPERATING_CHARACTERISTICS }),
    hostile: hostileInput(),
    empty: { review: reviewOf(), panel: [], dueOf: () => [], problems: [] },
  };
  for (const [name, input] of Object.entries(inputs)) {
    const files = await writeReport(input);
    for (const { path, content } of files) {
      await mkdir(dirname(join(folder, name, path)), { recursive: true });
      await writeFile(join(folder, name, path), content);
    }
    reports[name] = files.map((file) => file.path).filter((path) => path.endsWith('.html'));
  }
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

const urlOf = (report: string, path: string): string => pathToFileURL(join(folder, report, path)).href;

/** Opens each page of a report without network, runs the check, and gives back what the pages said or asked for. */
async function visit(
  report: string,
  options: { javaScriptEnabled: boolean; width?: number },
  check: (page: Page, path: string) => Promise<void>,
): Promise<string[]> {
  const { context, complaints } = await offlineContext(browser, {
    javaScriptEnabled: options.javaScriptEnabled,
    viewport: { width: options.width ?? WIDTHS.desktop, height: 900 },
  });
  for (const path of reports[report]!) {
    const page = await context.newPage();
    await page.goto(urlOf(report, path));
    await check(page, path);
    await page.close();
  }
  await context.close();
  return complaints;
}

const kindOf = (path: string): string => path.replace(/^unit-.*/, 'unit');

/** What a checker finds on one page of each kind, and what the pages said or asked for. */
async function violations(report: string, width: number): Promise<string[]> {
  const once = new Set<string>();
  const found: string[] = [];
  const complaints = await visit(report, { javaScriptEnabled: true, width }, async (page, path) => {
    if (once.has(kindOf(path))) return;
    once.add(kindOf(path));
    const checked = await new AxeBuilder({ page })
      // A picture is one image with title and description; its marks are not read out. Their contrast is measured in the tests of the palette.
      .exclude('.chart svg > g')
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    found.push(
      ...checked.violations.map(({ id, nodes }) => `${path}: ${id}: ${nodes[0]?.html.slice(0, 160)}`),
    );
  });
  return [...found, ...complaints];
}

describe.each(['fleet', 'hostile', 'empty'])('pages of the %s report', (report) => {
  it('are complete with script off and no network, ask for nothing and say nothing', async () => {
    const complaints = await visit(report, { javaScriptEnabled: false }, async (page, path) => {
      const sections = await page.locator('main section').count();
      expect(sections, path).toBeGreaterThan(0);
      expect(await page.locator('main h2').allInnerTexts(), path).not.toContain('');
      for (const chart of await page.locator('.chart svg').all()) {
        const box = await chart.boundingBox();
        expect(box!.width, path).toBeGreaterThan(100);
        expect(box!.height, path).toBeGreaterThan(40);
      }
    });
    expect(complaints).toEqual([]);
  });

  it('show no accessibility violation that a checker can find (WCAG 2.2 A and AA)', async () => {
    expect(await violations(report, WIDTHS.desktop)).toEqual([]);
  });

  it.each(Object.entries(WIDTHS))(
    'fit a %s screen of %i px without sideways scrolling, say nothing and ask for nothing',
    async (_, width) => {
      const complaints = await visit(report, { javaScriptEnabled: true, width }, async (page, path) => {
        const wide = await page.evaluate(
          'document.documentElement.scrollWidth - document.documentElement.clientWidth',
        );
        expect(wide, path).toBeLessThanOrEqual(0);
      });
      expect(complaints).toEqual([]);
    },
  );
});

describe('the fleet report', () => {
  it('has a page of each kind', () => {
    const kinds = new Set(reports.fleet!.map(kindOf));
    expect([...kinds].toSorted()).toEqual(
      ['index', 'unit', 'interval', 'meeting', 'comparisons', 'records', 'methods']
        .map((kind) => (kind === 'unit' ? kind : `${kind}.html`))
        .toSorted(),
    );
  });

  it('shows no accessibility violation on a telephone, where lists and tables take another form', async () => {
    expect(await violations('fleet', WIDTHS.telephone)).toEqual([]);
  });
});

describe('hostile text', () => {
  it('is shown as it stands, runs nothing and draws nothing', async () => {
    await visit('hostile', { javaScriptEnabled: true }, async (page, path) => {
      expect(await page.title(), path).not.toBe('owned');
      expect(await page.locator('main img, main script, main iframe').count(), path).toBe(0);
      const text = (await page.locator('body').textContent()) ?? '';
      expect(text.includes(HOSTILE.slice(0, 60)), path).toBe(true);
    });
  });
});

describe('labels of charts', () => {
  it('do not reach out of their picture', async () => {
    await visit('fleet', { javaScriptEnabled: true }, async (page, path) => {
      const cut = await page.evaluate(`(() => {
        const cut = [];
        for (const svg of document.querySelectorAll('.chart svg')) {
          const box = svg.getBoundingClientRect();
          for (const text of svg.querySelectorAll('text')) {
            const own = text.getBoundingClientRect();
            if (own.width > 0 && (own.left < box.left - 2 || own.right > box.right + 2 || own.top < box.top - 3 || own.bottom > box.bottom + 3))
              cut.push(svg.querySelector('title').textContent + ': ' + text.textContent);
          }
        }
        return cut;
      })()`);
      expect(cut, path).toEqual([]);
    });
  });
});

describe('printed pages', () => {
  it.each(['A4', 'Letter'] as const)('cut no figure on %s and open what is folded', async (format) => {
    const height = format === 'A4' ? 297 : 279;
    await visit(
      'fleet',
      { javaScriptEnabled: true, width: format === 'A4' ? 672 : 695 },
      async (page, path) => {
        await page.emulateMedia({ media: 'print' });
        // The sheet less the margins of the style (19 and 18 mm), at 96 px an inch.
        const room = ((height - 37) / 25.4) * 96;
        const figures = await page.evaluate(
          `[...document.querySelectorAll('figure')].map((of) => [of.id, of.getBoundingClientRect().height, getComputedStyle(of).breakInside])`,
        );
        for (const [id, tall, breakInside] of figures as [string, number, string][]) {
          expect(tall, `${path}: ${id}`).toBeLessThan(room);
          expect(breakInside, `${path}: ${id}`).toBe('avoid');
        }
        const folded = await page.evaluate(
          `[...document.querySelectorAll('details')].filter((of) => of.getBoundingClientRect().height < of.firstElementChild.getBoundingClientRect().height + 10).length`,
        );
        expect(folded, path).toBe(0);
        expect(await page.locator('nav.contents').isVisible(), path).toBe(false);
        // The head of a table stays with its first rows, and its last row with the one before.
        const torn = await page.evaluate(
          `[...document.querySelectorAll('tbody tr:first-child, tbody tr:last-child')].filter((of) => getComputedStyle(of).breakBefore !== 'avoid').length`,
        );
        expect(torn, path).toBe(0);
        const pdf = await page.pdf({ format });
        expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      },
    );
  });
});

describe('the first sheet', () => {
  it.each([
    ['A4', 672, 297],
    ['Letter', 695, 279],
  ] as const)('holds the answers, the decisions and the picture (%s)', async (_, width, height) => {
    const room = ((height - 37) / 25.4) * 96;
    for (const report of ['fleet', 'measured', 'empty'])
      await visit(report, { javaScriptEnabled: true, width }, async (page, path) => {
        if (path !== 'index.html') return;
        await page.emulateMedia({ media: 'print' });
        expect(
          await page.evaluate(`document.querySelector('#key').getBoundingClientRect().bottom`),
          report,
        ).toBeLessThan(room);
        expect(
          await page.evaluate(`getComputedStyle(document.querySelectorAll('section.begins')[1]).breakBefore`),
        ).toBe('page');
      });
  });
});

describe('keyboard', () => {
  it('reaches the content by the first tab stop', async () => {
    await visit('fleet', { javaScriptEnabled: true }, async (page, path) => {
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      expect(await page.evaluate('document.activeElement.id'), path).toBe('content');
    });
  });
});
