import { describe, expect, it } from 'vitest';
import { argumentText } from '../../../../pipeline/report/pages/interval/argument-text.ts';
import { caseText } from '../../../../pipeline/report/pages/interval/case-text.ts';
import { intervalFiles } from '../../../../pipeline/report/pages/interval/interval-page.ts';
import { intervalWords } from '../../../../pipeline/report/pages/interval/interval-words.ts';
import { pageScript } from '../../../../pipeline/report/script/page-script.ts';
import { CASES, contextOf, hostileCase, pageOf } from './pages-of.ts';

const said = (name: string) =>
  argumentText(CASES[name]!, intervalWords)
    .flatMap((part) => [part.lead ?? '', ...part.paragraphs, ...part.list])
    .join(' ');

describe('the argument', () => {
  it('answers in plain words, the same on the page and in the terminal', () => {
    expect(CASES.supported!.answer.code).toBe('supported');
    expect(CASES.not_supported!.answer.code).toBe('not_supported');
    expect(said('not_supported')).toContain('These records do not support cleaning earlier.');
    expect(said('supported')).toContain(
      'The risk of a failed test rises with the time since the last cleaning.',
    );
    expect(said('cannot_tell')).toContain('These records cannot say. No chamber cleaning is recorded.');
    for (const name of Object.keys(CASES)) {
      const flat = caseText(CASES[name]!, intervalWords).replace(/\s+/g, ' ');
      for (const part of argumentText(CASES[name]!, intervalWords))
        for (const text of part.paragraphs) expect(flat, name).toContain(text);
    }
  });

  it('names a best interval only where a rise is supported', () => {
    expect(said('supported')).toMatch(/The least cost is at \d+ days \(range \d+ to \d+ days\)/);
    expect(said('supported')).toContain('EUR');
    expect(said('not_supported')).not.toMatch(/The least/);
    expect(said('not_supported')).toContain('no interval is named as the best');
  });

  it('always has its seven parts, and cautions that it releases nothing', () => {
    for (const [name, found] of Object.entries(CASES)) {
      expect(
        argumentText(found, intervalWords).map((part) => part.id),
        name,
      ).toEqual(['question', 'records', 'finding', 'cost', 'mind', 'limits', 'cautions']);
      expect(said(name)).toContain('never releases, rejects or recalls a load');
      expect(said(name).replace(pageScript, '')).not.toMatch(/undefined|NaN|null|Infinity|\[object/);
    }
  });
});

describe('the page', () => {
  it('says once what holds for each of many sites', async () => {
    const found = CASES.supported!;
    const [site] = found.schedule.sites;
    const withSites = (count: number, ...others: Partial<NonNullable<typeof site>>[]) => {
      const ids = Array.from({ length: count }, (_, at) => ({ ...site!, site: `S${at + 1}` }));
      const sites = ids.map((of, at) => ({ ...of, ...others[at] }));
      return pageOf({ ...found, schedule: { ...found.schedule, sites } });
    };
    expect(await withSites(4)).toMatch(/<li>S1: [^<]*<\/li><li>S2: [^<]*<\/li>/);
    expect(await withSites(6)).toMatch(/<ul><li>All 6 sites: [^<]*<\/li><\/ul>/);
    expect(await withSites(6, { needed_origin: 'site' })).toMatch(
      /<ul><li>S1: [^<]*<\/li><li>S2, S3, S4, S5 and S6: [^<]*<\/li><\/ul>/,
    );
  });

  it.each(Object.keys(CASES))(
    'of a case of the kind %s is made, twice the same, with nothing unsaid',
    async (name) => {
      const page = await pageOf(CASES[name]!);
      expect(await pageOf(CASES[name]!)).toBe(page);
      expect(page.replace(pageScript, '')).not.toMatch(/undefined|NaN|Infinity|\[object/);
      expect(page).toContain('The case for a cleaning interval');
      expect(page.match(/<section /g)!.length).toBe(8);
    },
  );

  it('holds charts for what there is, and the limits of water with their status', async () => {
    const page = await pageOf(CASES.supported!);
    for (const id of ['failures', 'aborts', 'cumulative', 'curve', 'week-1', 'appearance'])
      expect(page).toContain(`<figure id="interval-${id}">`);
    expect(page).toContain('seen in a public reproduction');
    expect(page).toContain('limit is in another unit of measure');
  });

  it('escapes what an export may hold', async () => {
    const page = await pageOf(hostileCase());
    expect(page.split('<script')).toHaveLength(2);
    expect(page).toContain(`<script>${pageScript}</script>`);
    expect(page).not.toContain('<img');
    expect(page).not.toContain('\u202e');
  });

  it('comes with its data and its calendar file', async () => {
    const files = await intervalFiles(contextOf(CASES.supported!), CASES.supported!);
    expect(files.map((file) => file.path)).toEqual(['interval.html', 'interval.json', 'interval.ics']);
    expect(JSON.parse(String(files[1]!.content))).toEqual(JSON.parse(JSON.stringify(CASES.supported)));
  });
});
