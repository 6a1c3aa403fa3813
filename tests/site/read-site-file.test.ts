import { describe, expect, it } from 'vitest';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { UserError } from '../../pipeline/user-error.ts';

const messageOf = (yaml: string): string => {
  try {
    readSiteFile(yaml, 'site.yaml');
  } catch (error) {
    if (error instanceof UserError) return error.message;
    throw error;
  }
  return 'no error';
};

describe('the smallest site file', () => {
  it('is enough: one zone', () => {
    const site = readSiteFile('sites: [{ zone: Europe/Berlin }]', 'site.yaml');
    expect([...site.sites.keys()]).toEqual(['site']);
    expect(site.readUnit('Unit 3', 0)).toEqual({ known: true, unit: 'Unit 3', site: 'site' });
    expect(site.sources.map((source) => source.kind)).toContain('cycles');
    expect(site.policyOf('Unit 3', 'chamber')).toBeUndefined();
    expect(site.policyOf('Unit 3', 'drain_strainer')).toMatchObject({ every: 1, counted_in: 'days_of_use' });
  });
});

describe('a fault of the site file', () => {
  const base = 'sites:\n  - id: north\n    zone: Europe/Berlin\n';
  it.each([
    [
      'wrong key',
      `${base}    day_start: "05:00"\n`,
      /^site.yaml line 4, sites\[1\].day_start: must be a key of the site file, found "day_start"$/,
    ],
    [
      'unknown zone',
      'sites:\n  - zone: Europe/Berlyn\n',
      /^site.yaml line 2, sites\[1\].zone: must be a time zone by its IANA name .* found "Europe\/Berlyn"$/,
    ],
    [
      'duplicate unit',
      `${base}units:\n  - id: A\n  - id: a\n`,
      /^site.yaml line 6, units\[2\].id: must be the only unit of this name, found "a" twice\n/,
    ],
    [
      'overlapping aliases',
      `${base}units:\n  - id: A\n    aliases: [{ name: X, to: 2025-06-30 }]\n  - id: B\n    aliases: [{ name: x, from: 2025-06-30 }]\n`,
      /^site.yaml line 8, units\[2\].aliases\[1\].name: must mean one unit on a day: "x" also means A$/,
    ],
    [
      'a field that no record has',
      `${base}sources:\n  - kind: cycles\n    files: c.csv\n    columns: { colour: C }\n`,
      /line 7, sources\[1\].columns.colour: must be a field of cycles \(unit, start, .* found "colour"$/,
    ],
    [
      'a word that no record has',
      `${base}sources:\n  - kind: cycles\n    files: c.csv\n    values: { outcome: { good: [OK] } }\n`,
      /line 7, sources\[1\].values.outcome.good: must be a word of outcome \(completed, aborted, failed, running\), found "good"$/,
    ],
    [
      'a measure of another kind',
      `${base}sources:\n  - kind: cycles\n    files: c.csv\n    columns:\n      evacuation_s: { column: E, measure: kPa gauge }\n`,
      /line 8, sources\[1\].columns.evacuation_s.measure: must be one of s, min, mm:ss, hh:mm:ss, found "kPa gauge"$/,
    ],
    [
      'a date that is none',
      `${base}units:\n  - id: A\n    in_service_since: 2025-02-30\n`,
      /line 6, units\[1\].in_service_since: must be a date of the calendar, found "2025-02-30"$/,
    ],
    [
      'an id that means all units',
      `${base}units:\n  - id: A\n  - id: Fleet\n`,
      /line 6, units\[2\].id: must be another name, since this one stands for all units together, found "Fleet"; as an alias it may stand$/,
    ],
    ['no YAML', 'sites: [', /^site.yaml line 1, column \d+: can't be read as YAML/],
    ['nothing', '', /^site.yaml line 1, sites: must be a list, found nothing$/],
    ['a wrong kind', 'sites: [{ zone: 7 }]', /^site.yaml line 1, sites\[1\].zone: must be text, found 7$/],
    [
      'a wrong word',
      `${base}cleaning: [{ task: door, every: 3 }]`,
      /line 4, cleaning\[1\].task: must be drain_strainer or drain_flush or chamber or professional, found "door"$/,
    ],
    [
      'a number out of range',
      `${base}    barometric_pressure_kpa: 1013`,
      /line 4, sites\[1\].barometric_pressure_kpa: must be at most 110, found 1013$/,
    ],
    ['a bad time', `${base}    day_starts: 4`, /line 4, sites\[1\].day_starts: must be text, found 4$/],
    [
      'a bad clock',
      `${base}    day_starts: "24:00"`,
      /line 4, sites\[1\].day_starts: must be a time like "04:00", found "24:00"$/,
    ],
  ])('%s is one clear message with its line', (_, yaml, message) => {
    expect(messageOf(yaml)).toMatch(message);
  });

  it('two sites need units, and units their site', () => {
    const two = 'sites:\n  - { id: a, zone: Europe/Berlin }\n  - { id: b, zone: Europe/Lisbon }\n';
    expect(messageOf(two)).toMatch(/must be followed by units/);
    expect(messageOf(`${two}units:\n  - id: U\n`)).toMatch(/line 5, units\[1\]: must say its site/);
  });
});

describe('aliases', () => {
  it('may be names alone', () => {
    const site = readSiteFile(
      'sites: [{ zone: Europe/Berlin }]\nunits: [{ id: A, aliases: [AUT1, { name: OLD, to: 2025-02-01 }, "7"] }, { id: B }]',
      'site.yaml',
    );
    expect(site.declared.units![0]!.aliases).toEqual([
      { name: 'AUT1' },
      { name: 'OLD', to: '2025-02-01' },
      { name: '7' },
    ]);
    for (const name of ['aut1', '7'])
      expect(site.readUnit(name, 30_000)).toMatchObject({ known: true, unit: 'A' });
  });

  it.each([
    ['two units', '[{ id: A, aliases: [X] }, { id: B, aliases: [x] }]', /"x" also means A$/],
    ['an empty name', '[{ id: A, aliases: [""] }]', /units\[1\]\.aliases\[1\]: must be at least 1 char/],
    ['a wrong key', '[{ id: A, aliases: [{ nam: X }] }]', /units\[1\]\.aliases\[1\]\.name: must be text/],
  ])('a name alone is checked as a name with its days: %s', (_, units, message) => {
    expect(messageOf(`sites: [{ zone: Europe/Berlin }]\nunits: ${units}`)).toMatch(message);
  });

  it('mean their unit between their days', () => {
    const site = readSiteFile(
      'sites: [{ zone: Europe/Berlin }]\nunits: [{ id: A, in_service_since: 2025-01-10, aliases: [{ name: OLD, to: 2025-02-01 }] }]',
      'site.yaml',
    );
    const day = (text: string) => Date.parse(text) / 86_400_000;
    expect(site.readUnit(' old ', day('2025-02-01'))).toMatchObject({ known: true, unit: 'A' });
    expect(site.readUnit('OLD', day('2025-02-02'))).toEqual({
      known: false,
      reason: 'name_not_valid_on_day',
    });
    expect(site.readUnit('A', day('2025-01-09'))).toEqual({ known: false, reason: 'before_service' });
    expect(site.readUnit('B', day('2025-02-01'))).toEqual({ known: false, reason: 'unknown_name' });
  });
});
