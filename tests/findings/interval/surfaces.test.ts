import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '../../../pipeline/findings/interval/water-limits.ts';
import type { Inspection, Water } from '../../../pipeline/site/records.ts';
import { caseOf, every, FIRST_DAY, type UnitPlan } from './fleet.ts';

const DAY_MS = 86_400_000;
const DAYS = 300;
const mark = (row: number) => ({
  time_mark: 'day' as const,
  origin: { source: 'hand-made', file: 'f', sheet: null, row },
});
const time = (day: number) => (FIRST_DAY + day) * DAY_MS + 4 * 3_600_000;
const inspection = (unit: string, day: number, appearance: number, residue?: boolean): Inspection => ({
  unit,
  time: time(day),
  appearance,
  ...(residue === undefined ? {} : { residue_after_rinsing: residue }),
  ...mark(day + 1),
});
const sample = (point: string, determinand: string, value: number, changes: Partial<Water> = {}): Water => ({
  point,
  time: time(DAYS - 30),
  determinand,
  value,
  measure: 'mg/L',
  ...mark(1),
  ...changes,
});
const units = (count: number): UnitPlan[] =>
  Array.from({ length: count }, (_, index) => ({
    unit: `U${index + 1}`,
    days: DAYS,
    cleanings: every(28, 2, DAYS).map((day) => ({ day })),
  }));
const surfaces = (inspections: Inspection[], water: Water[] = [], site = '') =>
  caseOf(units(3), site, { inspections, water }).found.surfaces;

describe('inspections', () => {
  it('worsen with the days since cleaning: found within units', () => {
    const list = [0, 1, 2].flatMap((unit) =>
      every(28, 2, DAYS - 28).flatMap((cleaned) => [
        inspection(`U${unit + 1}`, cleaned + 3, unit),
        inspection(`U${unit + 1}`, cleaned + 20, Math.min(4, unit + 2)),
      ]),
    );
    const found = surfaces(list);
    expect(found.trend).toMatchObject({ answer: 'rises', units: 3, gamma: 1 });
    expect(found.by_clock[0]).toMatchObject({ from_day: 0, to_day: 6, inspections: 30 });
    expect(found.by_clock[0]!.mean).toBe(1);
    expect(found.by_clock[2]!.mean).toBe(3);
  });

  it('with a date alone on the day of a cleaning are taken as made before it', () => {
    const found = surfaces([inspection('U1', 30, 3), inspection('U1', 58, 2), inspection('U1', 1, 2)]);
    expect(found.inspections).toBe(3);
    expect(found.inspections_without_clock).toBe(1);
    expect(found.by_clock.find((row) => row.from_day === 28)!.inspections).toBe(2);
  });

  it('that are too few say so', () => {
    expect(surfaces([]).trend).toMatchObject({ answer: 'cannot_tell', p: null });
    expect(surfaces([]).by_clock).toEqual([]);
    expect(surfaces([inspection('U1', 30, 3)]).trend.not_computable).toMatch(/No stratum/);
  });
});

describe('water', () => {
  it('is set beside the default limit of its kind, marked by its status', () => {
    const found = surfaces(
      [],
      [
        sample('feed water', 'Silicate', 1.2),
        sample('condensate U1', 'silicate', 0.05, { units: 'U1' }),
        sample('feed water', 'conductivity', 4, { measure: '\u00b5S/cm' }),
        sample('feed water', 'pH', 4.9, { measure: 'pH' }),
        sample('feed water', 'iron', 0.1, { measure: 'mmol/L' }),
        sample('feed water', 'taste', 1),
      ],
    );
    const row = (point: string, determinand: string) =>
      found.water.find((of) => of.point === point && of.determinand === determinand)!;
    expect(row('feed water', 'Silicate')).toMatchObject({
      kind: 'feed_water',
      high: 1,
      out: 1,
      last_out: true,
      status: 'verified',
    });
    expect(row('condensate U1', 'silicate')).toMatchObject({
      kind: 'condensate',
      high: 0.1,
      out: 0,
      status: 'unverified',
      units: ['U1'],
    });
    // A limit from memory is shown, and nothing is said to be in or out of it.
    expect(row('feed water', 'conductivity')).toMatchObject({
      high: 5,
      out: 0,
      last_out: null,
      not_compared: 'example_limit',
    });
    expect(row('feed water', 'pH')).toMatchObject({ low: 5, high: 7.5, out: 1 });
    expect(row('feed water', 'iron')).toMatchObject({ not_compared: 'other_measure', last_out: null });
    expect(row('feed water', 'taste')).toMatchObject({ not_compared: 'no_limit', status: null });
  });

  it('takes the limits of the site before the defaults, and the last year alone', () => {
    const site =
      'interval: { water: { condensate_points: [steam], limits: [{ kind: condensate, determinand: silicate, measure: mg/L, high: 0.02, edition: own }] } }';
    const found = surfaces(
      [],
      [
        sample('steam line', 'silicate', 0.05),
        sample('steam line', 'silicate', 9, { time: time(DAYS - 400) }),
      ],
      site,
    );
    expect(found.water).toHaveLength(1);
    expect(found.water[0]).toMatchObject({ samples: 1, high: 0.02, edition: 'own', status: 'site', out: 1 });
  });

  it('has default limits for the determinands of the table, each with edition and status', () => {
    expect(
      DEFAULT_LIMITS.every((limit) => limit.edition !== '' && (limit.low !== null || limit.high !== null)),
    ).toBe(true);
    // Values of the French circular DGS/DH 100 (1995) for feed water, as reproduced on a trade page.
    const verified = Object.fromEntries(
      DEFAULT_LIMITS.filter((limit) => limit.kind === 'feed_water' && limit.status === 'verified').map(
        (limit) => [limit.determinand, limit.high],
      ),
    );
    expect(verified).toEqual({
      silicate: 1,
      iron: 0.2,
      cadmium: 0.005,
      lead: 0.05,
      'heavy metals': 0.1,
      phosphate: 0.5,
      ph: 7.5,
    });
  });
});

describe('deposits that stay after rinsing', () => {
  const residues = [60, 88, 116, 144].map((day, index) => inspection('U1', day, 2, index % 2 === 1));

  it('point to water and professional cleaning where water is out of limits', () => {
    const found = surfaces(residues, [sample('feed water', 'silicate', 3, { units: 'U1 U2' })]);
    expect(found.deposits).toEqual([
      {
        unit: 'U1',
        site: 's',
        residue: 2,
        of: 4,
        last_date: '2025-05-30',
        water_out: [{ point: 'feed water', determinand: 'silicate', status: 'verified' }],
        water_within: [],
        water_examples: [],
        advice: 'water_and_professional',
      },
    ]);
  });

  it('ask for a sample where none reaches the unit, and for another look where water is in its limits', () => {
    expect(surfaces(residues).deposits[0]!.advice).toBe('sample_water');
    expect(
      surfaces(residues, [sample('feed water', 'silicate', 3, { units: 'U2' })]).deposits[0]!.advice,
    ).toBe('sample_water');
    const chloride = sample('feed water', 'chloride', 0.1);
    expect(surfaces(residues, [sample('feed water', 'silicate', 0.3), chloride]).deposits[0]!).toMatchObject({
      advice: 'look_again',
      water_within: ['silicate'],
      water_examples: ['chloride'],
    });
  });

  it('conclude nothing from limits that were not checked, in or out of them', () => {
    for (const value of [0.1, 50])
      expect(surfaces(residues, [sample('feed water', 'chloride', value)]).deposits[0]!).toMatchObject({
        advice: 'compare_water',
        water_out: [],
      });
  });

  it('are not read from one inspection alone', () => {
    expect(surfaces(residues.slice(0, 3)).deposits).toEqual([]);
  });
});
