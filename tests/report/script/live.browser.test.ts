// Over 300 lines: one browser is started for all behaviours of the page script.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeReport } from '../../../pipeline/report/report.ts';
import { launchBrowser, offlineContext } from '../browser.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { hostileInput } from '../fixtures/hostile.ts';
import { CASES, pageOf } from '../pages/interval/pages-of.ts';

let browser: Browser;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'live-'));
  for (const [name, input] of [
    ['fleet', fleetInput(3)],
    ['many', fleetInput(60)],
    ['hostile', hostileInput()],
  ] as const)
    for (const { path, content } of await writeReport(input))
      if (path === 'index.html' || path === 'unit-A1.html')
        await writeFile(join(folder, `${name}-${path}`), content);
  await writeFile(join(folder, 'interval.html'), await pageOf(CASES.supported!));
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

interface Look {
  width?: number;
  hash?: string;
  touch?: boolean;
}

/** Opens a page with script, and checks in the end that it said nothing and asked for nothing. */
async function open(file: string, check: (page: Page) => Promise<void>, look: Look = {}): Promise<void> {
  const { context, complaints } = await offlineContext(browser, {
    javaScriptEnabled: true,
    viewport: { width: look.width ?? 1280, height: 900 },
    hasTouch: look.touch ?? false,
  });
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(folder, file)).href + (look.hash ?? ''));
  await check(page);
  await context.close();
  expect(complaints).toEqual([]);
}

/** Brings a figure into sight and lets the scrolling end, which hides the words of a mark. */
async function settle(page: Page, selector: string): Promise<void> {
  await page.locator(selector).scrollIntoViewIfNeeded();
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
}

const tip = (page: Page) => page.locator('.tip');
const voice = (page: Page) => page.locator('[data-part="voice"]');
const reader = (page: Page, figure: string) => page.locator(`#${figure} input[type=range]`);
const opacity = (page: Page, selector: string): Promise<string[]> =>
  page
    .locator(selector)
    .evaluateAll((all) => [...new Set(all.map((of) => getComputedStyle(of as never).opacity))]);
declare const getComputedStyle: (of: never) => { opacity: string };

describe('words of a mark', () => {
  it('stand beside the mark under the pointer, and go with Escape', async () => {
    await open('fleet-unit-A1.html', async (page) => {
      const mark = page.locator('#figure-history path[data-tip]').first();
      await settle(page, '#figure-history');
      await mark.hover();
      expect(await tip(page).textContent()).toBe(await mark.getAttribute('data-tip'));
      expect(await tip(page).isVisible()).toBe(true);
      await page.keyboard.press('Escape');
      expect(await tip(page).isVisible()).toBe(false);
    });
  });

  it('stay while the pointer is on them, and lie within the window on a telephone', async () => {
    await open(
      'fleet-unit-A1.html',
      async (page) => {
        const mark = page.locator('#figure-history path[data-tip]').first();
        await mark.scrollIntoViewIfNeeded();
        await settle(page, '#figure-history');
        await mark.hover();
        const box = (await tip(page).boundingBox())!;
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(390);
        await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
        await page.waitForTimeout(400);
        expect(await tip(page).isVisible()).toBe(true);
      },
      { width: 390 },
    );
  });

  it('come by touch', async () => {
    await open(
      'fleet-index.html',
      async (page) => {
        const mark = page.locator('#figure-calendar-drain-strainer path[data-tip]').first();
        await settle(page, '#figure-calendar-drain-strainer');
        await mark.tap();
        expect(await tip(page).textContent()).toBe(await mark.getAttribute('data-tip'));
        expect(await page.locator('.marked').isVisible()).toBe(false);
        await mark.tap();
        expect(await page.locator('.marked b').textContent()).toBe(await mark.getAttribute('data-unit'));
      },
      { touch: true, width: 390 },
    );
  });

  it('are read one by one with the arrow keys, as the value of a slider with a name', async () => {
    await open('fleet-index.html', async (page) => {
      const slider = reader(page, 'figure-due');
      await slider.focus();
      expect(await slider.getAttribute('aria-label')).toMatch(/^Read the marks of Figure \d+ one by one$/);
      const tips = new Set<string>();
      const marks = await page.locator('#figure-due [data-tip]').count();
      for (let step = 1; step < marks; step++) {
        await page.keyboard.press('ArrowRight');
        const text = (await slider.getAttribute('aria-valuetext')) ?? '';
        await expect.poll(() => tip(page).textContent()).toBe(text);
        tips.add(text);
      }
      expect(tips.size).toBe(marks - 1);
      await page.keyboard.press('Tab');
      expect(await tip(page).isVisible()).toBe(false);
    });
  });

  it('are text where they come from hostile files', async () => {
    await open('hostile-index.html', async (page) => {
      const mark = page.locator('#figure-calendar-drain-strainer path[data-tip]').first();
      await settle(page, '#figure-calendar-drain-strainer');
      await mark.hover();
      expect(await tip(page).textContent()).toContain('<img src=x');
      await mark.click();
      expect(await page.locator('.marked b').textContent()).toContain('<script>');
      expect(await page.title()).not.toBe('owned');
    });
  });
});

describe('one unit in all figures', () => {
  it('stands out while the pointer is on it, and after a click until Escape', async () => {
    await open('fleet-index.html', async (page) => {
      const cells = '[id^=figure-calendar] svg [data-unit="A2"]';
      const others = '[id^=figure-calendar] svg [data-unit="A1"]';
      await page.emulateMedia({ reducedMotion: 'reduce' });
      await settle(page, '#figure-calendar-drain-strainer');
      await page.locator(cells).first().hover();
      expect(await opacity(page, others)).toEqual(['0.16']);
      expect(await opacity(page, cells)).toEqual(['1']);
      await page.locator(cells).first().click();
      await page.mouse.move(5, 5);
      expect(await opacity(page, '[id^=figure-failed-units] [data-unit="A1"]')).toEqual(['0.16']);
      expect(await page.locator('.marked b').textContent()).toBe('A2');
      expect(await page.locator('.marked a').getAttribute('href')).toBe('unit-A2.html');
      expect(await voice(page).textContent()).toMatch(/^Unit A2 is marked in \d+ figures\.$/);
      expect(page.url()).toMatch(/#unit=A2$/);
      await page.waitForTimeout(300);
      await page.keyboard.press('Escape');
      expect(await page.locator('.marked').isVisible()).toBe(false);
      expect(await opacity(page, others)).toEqual(['1']);
      expect(page.url()).not.toContain('#');
    });
  });

  it('is marked by Enter on a mark that is read, and then alone is read', async () => {
    await open('fleet-index.html', async (page) => {
      const slider = reader(page, 'figure-calendar-drain-strainer');
      await slider.focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Enter');
      const unit = await page.locator('.marked b').textContent();
      const all = await page.locator('#figure-calendar-drain-strainer path[data-tip]').count();
      await page.keyboard.press('End');
      expect(Number(await slider.getAttribute('max'))).toBeLessThan(all / 2);
      expect(await slider.getAttribute('aria-valuetext')).toMatch(new RegExp(`^${unit}, `));
    });
  });

  it('comes from the address, is shown in its list, and does not fade what is printed', async () => {
    await open(
      'many-index.html',
      async (page) => {
        expect(await page.locator('.marked b').textContent()).toBe('A47');
        const row = page.locator('tr[data-unit="A47"]');
        expect(await row.getAttribute('class')).toContain('lit');
        const first = page.locator('[data-find][data-unit="A47"]').first();
        const box = (await first.boundingBox())!;
        expect(box.y).toBeGreaterThan(-5);
        expect(box.y).toBeLessThan(900);
        await page.emulateMedia({ media: 'print' });
        expect(await opacity(page, '.chart svg [data-unit="A1"]')).toEqual(['1']);
        expect(await page.locator('.marked').isVisible()).toBe(false);
      },
      { hash: '#unit=A47' },
    );
  });
});

describe('page of the cleaning interval', () => {
  it('has a slider below every figure, which reads its marks, and no buttons of time, as no axis is one', async () => {
    await open('interval.html', async (page) => {
      const figures = await page.locator('figure[id]').evaluateAll((all) => all.map((of) => of.id));
      expect(figures).toEqual([
        'interval-failures',
        'interval-aborts',
        'interval-cumulative',
        'interval-curve',
        'interval-week-1',
        'interval-appearance',
      ]);
      for (const figure of figures) {
        const slider = reader(page, figure);
        await slider.focus();
        await page.keyboard.press('End');
        const text = (await slider.getAttribute('aria-valuetext')) ?? '';
        expect(text, figure).toMatch(/\d/);
        await expect.poll(() => tip(page).textContent()).toBe(text);
        expect(Number(await slider.getAttribute('max')), figure).toBeGreaterThan(0);
      }
      expect(await page.locator('.time').count()).toBe(0);
    });
  });

  it('says in words what the mark under the pointer is worth', async () => {
    await open('interval.html', async (page) => {
      const last = async (figure: string) =>
        (await page.locator(`#${figure} [data-tip]`).last().getAttribute('data-tip')) ?? '';
      expect(await last('interval-failures')).toMatch(
        /^Calendar days \d+.*: \d+ of \d[\d,]*; [\d.]+ per 100 \(interval [\d.]+ to [\d.]+\); the fit expects [\d.]+$/,
      );
      expect(await last('interval-cumulative')).toMatch(/^Up to \d+ days: [\d.]+ failed tests of a unit/);
      expect(await last('interval-curve')).toMatch(/^\d+ days: a year costs [\d,]+ \(interval /);
      expect(await last('interval-week-1')).toMatch(
        /^U\d+, \w+day \d\d:00 to \d\d:00: a cycle ran in \d+% of weeks$/,
      );
      expect(await last('interval-appearance')).toMatch(
        /^Days \d+.*: \d+ inspections? with appearance [0-4]$/,
      );
      await settle(page, '#interval-curve svg');
      const mark = page.locator('#interval-curve [data-tip]').nth(8);
      const box = (await mark.boundingBox())!;
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      expect(await tip(page).textContent()).toBe(await mark.getAttribute('data-tip'));
    });
  });
});

describe('time shown', () => {
  const shown = (page: Page, figure: string) => page.locator(`#${figure} .time output`).textContent();

  it('comes closer in all figures over time, moves, and comes back', async () => {
    await open('fleet-unit-A1.html', async (page) => {
      const button = (way: string) => page.locator(`#figure-history button[data-way=${way}]`);
      const xs = () =>
        page
          .locator('#figure-history path[data-tip]:not([visibility=hidden])')
          .evaluateAll((all) => all.map((of) => of.getAttribute('transform')));
      const before = await xs();
      await button('closer').focus();
      await page.keyboard.press('Enter');
      await page.keyboard.press('Enter');
      const text = await shown(page, 'figure-history');
      expect(text).toMatch(/^\d+ \w+ \d{4} to \d+ \w+ \d{4}$/);
      expect(await shown(page, 'figure-failed')).toBe(text);
      expect(await voice(page).textContent()).toBe(`${text} is shown in all figures over time.`);
      expect((await xs()).length).toBeLessThan(before.length);
      await button('later').click();
      expect(await shown(page, 'figure-history')).not.toBe(text);
      await button('whole').click();
      expect(await xs()).toEqual(before);
      expect(await shown(page, 'figure-history')).toBe('');
    });
  });

  it('leaves every mark in sight within its plot, where its day is', async () => {
    await open('fleet-unit-A1.html', async (page) => {
      await page.locator('#figure-history button[data-way=closer]').click();
      const [from, to] = ((await shown(page, 'figure-history')) ?? '')
        .split(' to ')
        .map((text) => Date.parse(`${text} UTC`));
      const plot = (await page.locator('#figure-history path[data-plot]').boundingBox())!;
      const marks = await page
        .locator('#figure-history path[data-tip][d*="A"]:not([visibility=hidden])')
        .all();
      expect(marks.length).toBeGreaterThan(3);
      for (const mark of marks.slice(0, 20)) {
        const box = (await mark.boundingBox())!;
        const day = Date.parse(`${(await mark.getAttribute('data-tip'))!.split(':')[0]} UTC`);
        const due = plot.x + ((day - from!) / (to! + 86_400_000 - from!)) * plot.width;
        expect(Math.abs(box.x + box.width / 2 - due)).toBeLessThan(2);
      }
    });
  });

  it('is what the mouse is pulled over', async () => {
    await open('fleet-unit-A1.html', async (page) => {
      await settle(page, '#figure-history svg');
      const plot = (await page.locator('#figure-history path[data-plot]').boundingBox())!;
      await page.mouse.move(plot.x + plot.width * 0.25, plot.y + 5);
      await page.mouse.down();
      await page.mouse.move(plot.x + plot.width * 0.4, plot.y + 8);
      await page.mouse.move(plot.x + plot.width * 0.5, plot.y + 8);
      await page.mouse.up();
      expect(await shown(page, 'figure-history')).not.toBe('');
      expect(await page.locator('.marked').isVisible()).toBe(false);
      await page.keyboard.press('Escape');
      expect(await shown(page, 'figure-history')).toBe('');
    });
  });

  it('begins at the newest end where a picture is wider than a telephone, and only there', async () => {
    const scrolled = (page: Page, figure: string) =>
      page.locator(`#${figure} .chart`).evaluate((of) => {
        const { scrollLeft, scrollWidth, clientWidth } = of as unknown as {
          scrollLeft: number;
          scrollWidth: number;
          clientWidth: number;
        };
        return { scrollLeft, room: scrollWidth - clientWidth };
      });
    await open(
      'fleet-unit-A1.html',
      async (page) => {
        for (const figure of ['figure-history', 'figure-failed']) {
          await expect.poll(async () => (await scrolled(page, figure)).scrollLeft).toBeGreaterThan(0);
          const { scrollLeft, room } = await scrolled(page, figure);
          expect(room).toBeGreaterThan(100);
          expect(Math.abs(scrollLeft - room)).toBeLessThan(2);
        }
        const clock = await scrolled(page, 'figure-clock');
        expect(clock.room).toBeGreaterThan(100);
        expect(clock.scrollLeft).toBe(0);
        expect(await page.evaluate('scrollX + scrollY')).toBe(0);
      },
      { width: 390 },
    );
    await open(
      'fleet-index.html',
      async (page) => {
        await expect.poll(async () => (await scrolled(page, 'figure-failed')).scrollLeft).toBeGreaterThan(0);
        const units = await scrolled(page, 'figure-failed-units');
        expect(units.room).toBeGreaterThan(100);
        expect(units.scrollLeft).toBe(0);
        await page.locator('#figure-failed .chart').evaluate((of) => {
          (of as unknown as { scrollLeft: number }).scrollLeft = 40;
        });
        await page.setViewportSize({ width: 360, height: 780 });
        await page.waitForTimeout(100);
        expect((await scrolled(page, 'figure-failed')).scrollLeft).toBe(40);
      },
      { width: 390 },
    );
  });

  it('is the whole record on paper', async () => {
    await open('fleet-unit-A1.html', async (page) => {
      await page.locator('#figure-history button[data-way=closer]').click();
      const zoomed = await shown(page, 'figure-history');
      await page.evaluate("dispatchEvent(new Event('beforeprint'))");
      expect(await shown(page, 'figure-history')).toBe('');
      await page.evaluate("dispatchEvent(new Event('afterprint'))");
      expect(await shown(page, 'figure-history')).toBe(zoomed);
    });
  });
});

describe('search over units', () => {
  const rows = (page: Page) => page.locator('#units tbody tr:visible').count();

  it('is not there without script', async () => {
    const { context } = await offlineContext(browser, { javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(folder, 'many-index.html')).href);
    expect(await page.locator('#finder').isVisible()).toBe(false);
    expect(await rows(page)).toBe(60);
    await context.close();
  });

  it('leaves what has the text, says how many, writes it into the address, and opens what is folded', async () => {
    await open('many-index.html', async (page) => {
      await page.locator('#finder input').fill('a4');
      expect(await rows(page)).toBe(11);
      expect(await page.locator('#finder output').textContent()).toBe('11 of 60 units');
      expect(await voice(page).textContent()).toBe('11 of 60 units');
      expect(page.url()).toMatch(/#find=a4$/);
      expect(await page.locator('#attention .case:visible').count()).toBe(
        await page.locator('#attention .case[data-find^="A4"]').count(),
      );
      await page.emulateMedia({ media: 'print' });
      expect(await rows(page)).toBe(60);
      await page.emulateMedia({ media: 'screen' });
      await page.locator('#finder input').focus();
      await page.keyboard.press('Escape');
      expect(await rows(page)).toBe(60);
    });
  });

  it('leaves what has the state', async () => {
    await open('many-index.html', async (page) => {
      const has = await page.locator('#units tr[data-has~="missed"]').count();
      await page.locator('#finder select[name=state]').selectOption('missed');
      expect(await rows(page)).toBe(has);
      await page.locator('#finder button').click();
      expect(await rows(page)).toBe(60);
      expect(await page.evaluate('document.activeElement.name')).toBe('text');
    });
  });

  it('keeps its place on the screen while blocks above it come and go', async () => {
    for (const width of [1280, 390])
      await open(
        'many-index.html',
        async (page) => {
          const box = page.locator('#finder input');
          const where = "document.querySelector('#finder input').getBoundingClientRect().top";
          const top = (): Promise<number> => page.evaluate(where);
          await page.evaluate(`window.scrollBy(0, ${where} - 441)`);
          const before = await top();
          await box.focus();
          for (const text of ['A', 'A4', 'A47', 'zzz', 'A1', '']) {
            await box.fill(text);
            await page.evaluate(
              'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))',
            );
            expect(Math.abs((await top()) - before), `${width} px, "${text}"`).toBeLessThanOrEqual(2);
          }
          expect(Math.abs(before - 441)).toBeLessThan(1);
        },
        { width },
      );
  });

  it('says where no unit has the name', async () => {
    await open('many-index.html', async (page) => {
      await page.locator('#finder input').fill('zzz');
      expect(await rows(page)).toBe(0);
      expect(await page.locator('#finder output').textContent()).toBe('No unit of that name');
      expect(await voice(page).textContent()).toBe('No unit of that name');
    });
  });

  it('comes from the address', async () => {
    await open(
      'many-index.html',
      async (page) => {
        expect(await page.locator('#finder input').inputValue()).toBe('a1');
        expect(await page.locator('#finder select[name=state]').inputValue()).toBe('calm');
      },
      { hash: '#find=a1&state=calm' },
    );
  });
});

describe('accessibility', () => {
  it('holds with tools, words, mark, search and zoom in use', async () => {
    await open('fleet-index.html', async (page) => {
      await page.locator('#finder input').fill('a');
      await page.locator('#finder select[name=unit]').selectOption('A1');
      await page.locator('button[data-way=closer]').first().click();
      await reader(page, 'figure-due').focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => tip(page).isVisible()).toBe(true);
      const { violations } = await new AxeBuilder({ page })
        .exclude('.chart svg > g')
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`)).toEqual([]);
    });
  });

  it('moves nothing by itself where less motion is asked for', async () => {
    await open('fleet-index.html', async (page) => {
      await page.emulateMedia({ reducedMotion: 'reduce' });
      const moving = await page.evaluate(
        `[...document.querySelectorAll('*')].filter((of) => getComputedStyle(of).transitionDuration !== '0s' || getComputedStyle(of).animationName !== 'none').length`,
      );
      expect(moving).toBe(0);
    });
  });
});
