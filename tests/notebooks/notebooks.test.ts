import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { joined, MONTH, reading, site } from '../../notebooks/demo.ts';
import { notebookPage, notebooksIndex } from '../../notebooks/runner/notebook-page.ts';
import { notebookNames, type RunNotebook, runNotebook } from '../../notebooks/runner/run-notebook.ts';
import { numberText, type Shown } from '../../notebooks/runner/show.ts';
import { interval, review, watch } from '../../pipeline/index.ts';
import { launchBrowser, offlineContext } from '../report/browser.ts';

const FOLDER = new URL('../../notebooks/', import.meta.url);
const notebooks = new Map<string, RunNotebook>();
let pages: string;

/** Runs all notebooks, as `npm run notebooks` does: one that fails, fails here. */
beforeAll(async () => {
  for (const name of await notebookNames()) notebooks.set(name, await runNotebook(name));
  pages = await mkdtemp(join(tmpdir(), 'notebooks-'));
  const all = [...notebooks.values()];
  await writeFile(join(pages, 'index.html'), notebooksIndex(all));
  for (const notebook of all)
    await writeFile(join(pages, `${notebook.name}.html`), await notebookPage(notebook, all));
}, 400_000);
afterAll(() => rm(pages, { recursive: true, force: true }));

const shownBy = (name: string): Shown[] => notebooks.get(name)!.parts.flatMap(({ shown }) => shown);

/** The values that a notebook states to be the report's, by what they are. */
function stated(name: string): Record<string, string> {
  const pairs = shownBy(name).flatMap((shown) => (shown.kind === 'same' ? shown.values : []));
  return Object.fromEntries(pairs.map(({ what, value }) => [what, value]));
}

function tableOf(name: string, caption: string) {
  const found = shownBy(name).find((shown) => shown.kind === 'table' && shown.caption.startsWith(caption));
  if (found?.kind !== 'table') throw new Error(`no table ${caption}`);
  return found;
}

describe('the notebooks', () => {
  it('are five, each told of in the README', async () => {
    const names = await notebookNames();
    expect(names).toHaveLength(5);
    const readme = await readFile(new URL('README.md', FOLDER), 'utf8');
    for (const name of names) expect(readme).toContain(`[${notebooks.get(name)!.title}](${name}.ts)`);
  });

  it('import the public library, the runner’s words and general libraries alone', async () => {
    const files = (await readdir(FOLDER)).filter((file) => file.endsWith('.ts') && /^(?:\d|demo)/.test(file));
    for (const file of files) {
      const text = await readFile(new URL(file, FOLDER), 'utf8');
      const own = [...text.matchAll(/from '(\.[^']+)'/g)].map(([, path]) => path);
      expect(
        own.filter((path) => !/^(?:\.\.\/pipeline\/index|\.\/demo|\.\/runner\/show)\.ts$/.test(path!)),
        file,
      ).toEqual([]);
    }
  });

  it('give the report’s numbers: the verdict', () => {
    const report = review(site, reading, MONTH);
    const verdict = report.comparisons.find(({ id }) => id === 'Q2/chamber_overdue/failed_test')!;
    expect(stated('1-how-a-verdict-is-made')).toMatchObject({
      'overdue, days': String(verdict.exposed.days),
      'overdue, failed': String(verdict.exposed.events),
      'in time, failed': String(verdict.unexposed.events),
      'exact odds ratio': numberText(verdict.ratio),
      'lower end of its interval': numberText(verdict.low),
      'p of the shift test': numberText(verdict.p),
      'adjusted p': numberText(verdict.adjusted_p),
      'questions of the family': String(report.family_size),
      verdict: 'shown',
    });
  });

  it('give the report’s numbers: interval and drift', () => {
    const { best, candidates } = interval(joined);
    expect(stated('2-choosing-a-cleaning-interval')['lowest of the curve, days']).toBe(
      String(best!.interval),
    );
    const years = tableOf('2-choosing-a-cleaning-interval', 'A year of all units');
    expect(years.rows.map(([days]) => days)).toEqual(
      candidates.flatMap(({ year, interval: days }) => (year === null ? [] : [days])),
    );
    const moving = watch(joined).probes.find(
      ({ unit, probe, era }) => unit === 'Q4' && probe === 'evacuation_time' && era.current,
    )!;
    expect(stated('3-watching-a-unit-drift')).toMatchObject({
      state: 'moving',
      'off its level since': moving.since,
      'rate, s a week': numberText(moving.rate_per_week!.value),
    });
  });

  it('find what the demo data were built with: a drift of Q4 from 12 August 2026, no effect of training', () => {
    // data-samples/generator/truth.json tells of both.
    const months = tableOf('3-watching-a-unit-drift', 'Q4, evacuation time').rows;
    expect(months.map(([month, state]) => [month, state])).toEqual([
      ['2026-06', 'steady'],
      ['2026-07', 'steady'],
      ['2026-08', 'moving'],
      ['2026-09', 'moving'],
    ]);
    const answers = tableOf('4-asking-your-own-question', 'Days after training').rows;
    for (const [outcome, , , , , , low, high] of answers) {
      expect(low, String(outcome)).toBeLessThan(1);
      expect(high, String(outcome)).toBeGreaterThan(1);
    }
  });

  it('do not find what is not there: the small fleets keep their level', () => {
    const shares = tableOf('5-when-nothing-is-going-on', 'What the small fleets gave').rows;
    const [small, covered, wrong] = shares;
    expect(small![3]).toBeLessThan(8);
    expect(covered![3]).toBeGreaterThan(92);
    expect(wrong![3]).toBeLessThanOrEqual(10);
  });

  it('make pages that open from disk, load nothing and read well', { timeout: 120_000 }, async () => {
    const browser = await launchBrowser();
    try {
      const { context, complaints } = await offlineContext(browser, {
        javaScriptEnabled: true,
        viewport: { width: 390, height: 800 },
      });
      for (const file of await readdir(pages)) {
        const page = await context.newPage();
        await page.goto(pathToFileURL(join(pages, file)).href);
        expect(await page.evaluate('document.documentElement.scrollWidth'), file).toBeLessThanOrEqual(390);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(
          violations.map(({ id, nodes }) => [file, id, nodes[0]?.html]),
          file,
        ).toEqual([]);
        await page.close();
      }
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});
