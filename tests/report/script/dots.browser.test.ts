import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { writeReport } from '../../../pipeline/report/report.ts';
import { launchBrowser, offlineContext, type Watched } from '../browser.ts';
import { driftOf } from '../fixtures/drift-parts.ts';
import { fleetInput } from '../fixtures/fleet.ts';

const DAY_MS = 86_400_000;
/** The probe's figure, whose values are thirty days, three apart from 1 January 2026, and one left out on the fifth. */
const FIGURE = '#figure-drift-A1-evacuation_time';
const DOTS = 31;

let browser: Browser;
let folder: string;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'dots-'));
  const files = await writeReport(fleetInput(3, { drift: driftOf('A1', 'north') }));
  await writeFile(join(folder, 'page.html'), files.find(({ path }) => path === 'unit-A1.html')!.content);
  browser = await launchBrowser();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

beforeEach(async () => {
  watched = await offlineContext(browser, {
    javaScriptEnabled: true,
    viewport: { width: 1280, height: 900 },
  });
  page = await watched.context.newPage();
  await page.goto(pathToFileURL(join(folder, 'page.html')).href);
  await settle();
});

afterEach(async () => {
  await watched.context.close();
  expect(watched.complaints).toEqual([]);
});

/** Brings the figure into sight and lets the scrolling end, which hides the words of a mark. */
async function settle(): Promise<void> {
  await page.locator(`${FIGURE} svg`).scrollIntoViewIfNeeded();
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
}

const tip = () => page.locator('.tip');
const rings = () => page.locator('circle.read');

/** Where the path of the dots says that they are, px of the window, by the browser's own geometry. */
const places = (): Promise<{ x: number; y: number }[]> =>
  page.locator(`${FIGURE} path[data-tips]`).evaluate((path) => {
    const { d, matrix } = {
      d: (path as unknown as { getAttribute(name: string): string }).getAttribute('d'),
      matrix: (path as unknown as { getScreenCTM(): Record<'a' | 'd' | 'e' | 'f', number> }).getScreenCTM(),
    };
    return d
      .split('M')
      .slice(1)
      .map((dot) => dot.replace('Z', '').split(',').map(Number) as [number, number])
      .map(([x, y]) => ({ x: matrix.a * x + matrix.e, y: matrix.d * y + matrix.f }));
  });
const tips = async () =>
  (await page.locator(`${FIGURE} path[data-tips]`).getAttribute('data-tips'))!.split('\n');
const plot = async () => (await page.locator(`${FIGURE} path[data-plot]`).boundingBox())!;

describe('dots that one path draws', () => {
  it('have words each, and stand where their day and value are', async () => {
    expect(await places()).toHaveLength(DOTS);
    const told = await tips();
    expect(told).toHaveLength(DOTS);
    expect(told[0]).toBe('1 January 2026: 30 s');
    const { x, width } = await plot();
    const [from, to] = (await page.locator(`${FIGURE} svg`).getAttribute('data-time'))!.split(' ');
    for (const [index, place] of (await places()).entries()) {
      const day = Date.parse(`${told[index]!.split(':')[0]} UTC`) / DAY_MS;
      expect(place.x).toBeCloseTo(x + ((day - Number(from)) / (Number(to) + 1 - Number(from))) * width, -0.5);
    }
  });

  it('say their words to the pointer, and the one that is read is ringed', async () => {
    const [told, at] = [await tips(), await places()];
    for (const index of [3, 17]) {
      const { x, y } = at[index]!;
      await page.mouse.move(x, y);
      expect(await tip().textContent()).toBe(told[index]);
      expect(await rings().count()).toBe(1);
      const ring = (await rings().boundingBox())!;
      expect(Math.abs(ring.x + ring.width / 2 - x)).toBeLessThan(1);
      expect(Math.abs(ring.y + ring.height / 2 - y)).toBeLessThan(1);
    }
    await page.keyboard.press('Escape');
    expect(await tip().isVisible()).toBe(false);
    expect(await rings().count()).toBe(0);
  });

  it('are read one after the other by the slider', async () => {
    const told = await tips();
    const slider = page.locator(`${FIGURE} input[type=range]`);
    await slider.focus();
    const heard = new Set<string | null>();
    const last = Number(await slider.getAttribute('max'));
    for (let press = 0; press <= last; press++) {
      await page.keyboard.press(press === 0 ? 'Home' : 'ArrowRight');
      heard.add(await slider.getAttribute('aria-valuetext'));
    }
    expect(last + 1).toBeGreaterThan(DOTS);
    for (const words of told) expect(heard).toContain(words);
  });

  it('move with the time that is shown, and those outside of it are not read', async () => {
    const told = await tips();
    for (const way of ['closer', 'closer', 'closer', ...Array(8).fill('later')])
      await page.locator(`${FIGURE} button[data-way=${way}]`).click();
    const text = (await page.locator(`${FIGURE} .time output`).textContent())!;
    const [from, to] = text.split(' to ').map((day) => Date.parse(`${day} UTC`)) as [number, number];
    await settle();
    const { x, width } = await plot();
    let [inside, outside] = [0, 0];
    for (const [index, place] of (await places()).entries()) {
      const at = Date.parse(`${told[index]!.split(':')[0]} UTC`);
      // The words of the span name its days, which it need not begin and end with.
      const day = (DAY_MS / (to + DAY_MS - from)) * width;
      expect(Math.abs(place.x - x - ((at - from) / DAY_MS) * day)).toBeLessThan(day);
      if (at > from && at < to) {
        inside++;
        await page.mouse.move(place.x, place.y);
        expect(await tip().textContent()).toBe(told[index]);
      } else if (at < from || at > to) outside++;
    }
    expect(inside).toBeGreaterThan(3);
    expect(outside).toBeGreaterThan(3);
    const slider = page.locator(`${FIGURE} input[type=range]`);
    await slider.focus();
    await page.keyboard.press('End');
    await page.keyboard.press('Home');
    const first = Date.parse(`${(await slider.getAttribute('aria-valuetext'))!.split(':')[0]} UTC`);
    expect(first).toBeGreaterThanOrEqual(from);
  });
});
