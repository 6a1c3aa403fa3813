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
    expect(said('not_supported')).toContain('Earlier cleaning is not supported by this record.');
    expect(said('supported')).toContain(
      'The risk of a failed test rises with the time since the last cleaning.',
    );
    expect(said('cannot_tell')).toMatch(
      /These records cannot tell whether the risk .* No chamber cleaning is recorded\./,
    );
    for (const name of Object.keys(CASES)) {
      const flat = caseText(CASES[name]!, intervalWords).replace(/\s+/g, ' ');
      for (const part of argumentText(CASES[name]!, intervalWords))
        for (const text of part.paragraphs) expect(flat, name).toContain(text);
    }
  });

  it('tells no rise from too few failures to show one', () => {
    expect(CASES.too_few!.answer).toMatchObject({ code: 'cannot_tell', because: ['too_few_to_show'] });
    expect(said('too_few')).toContain('These records cannot tell');
    expect(said('too_few')).toContain('This is not the same as no rise.');
    expect(said('too_few')).toMatch(/times this record would tell a shape of 1\.5/);
  });

  it('has a unit with a rise of its own in the headline, with its numbers', () => {
    const found = structuredClone(CASES.not_supported!);
    const row = found.levels.find((of) => of.level === 'unit')!;
    row.shape = { ...row.shape!, estimate: 1.893, low: 1.204, high: 2.79, adjusted_p: 0.047 };
    const part = argumentText(found, intervalWords).find(({ id }) => id === 'finding')!;
    expect(part.lead).toContain('it is not shown');
    expect(part.lead).toContain(`for ${row.scope} by itself it is`);
    expect(part.paragraphs.join(' ')).toContain(`${row.scope} by itself: shape 1.89 (1.20 to 2.79, p 0.047)`);
  });

  it('says of the aborts what their numbers say, on other clocks too', () => {
    const found = structuredClone(CASES.not_supported!);
    const on = (clock: string) =>
      found.fits.find((of) => of.outcome === 'cleanliness_abort' && of.clock === clock)!;
    Object.assign(on('calendar_days'), { shape: 1.13, low: 0.98, high: 1.28, p: 0.086 });
    Object.assign(on('cycles'), { shape: 1.14, p: 0.048 });
    const says = () =>
      argumentText(found, intervalWords)
        .flatMap((part) => part.paragraphs)
        .join(' ');
    expect(says()).toContain(
      'shape 1.13 (0.98 to 1.28, p 0.086): a rise with the clock is not shown; but counted in cycles p 0.048.',
    );
    // A fall at the same p is no rise.
    Object.assign(on('cycles'), { shape: 0.88 });
    expect(says()).not.toContain('but counted in');
  });

  it('has the kept interval beside the stated one where it is clearly longer', () => {
    const found = structuredClone(CASES.not_supported!);
    const first = () => argumentText(found, intervalWords)[0]!.paragraphs[1]!;
    found.in_force = 28;
    found.spells.median_length = 40;
    expect(first()).toContain('Stated: 28 days; kept: median 40 days');
    expect(first()).toContain('Keeping the stated interval comes before shortening it.');
    found.spells.median_length = 30;
    expect(first()).toMatch(/^Stated: every 28 days\./);
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
