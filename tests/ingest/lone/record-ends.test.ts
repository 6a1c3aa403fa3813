import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type EndKind,
  endsOfRecords,
  mergeEnds,
  splitEnds,
} from '../../../pipeline/ingest/lone/record-ends.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import type { AirRemovalTest, Cycle } from '../../../pipeline/site/records.ts';

// Clocks a day apart, and days that open at the far ends of the clock.
const SITE = readSiteFile(
  `sites: [{ id: east, zone: Pacific/Kiritimati, day_starts: '00:00' }, { id: west, zone: Pacific/Midway, day_starts: '23:00' }]
units: [{ id: E, site: east }, { id: W, site: west }]`,
  'site.yaml',
);
const HOUR = 3_600_000;
const NOON = Date.UTC(2026, 2, 1, 12);

interface Given {
  kind: EndKind;
  unit: string;
  hours: number;
}

/** Records as they are read: of each an origin of its own. */
function recordsOf(given: readonly (Given & { row: number })[]) {
  const origin = (row: number) => ({ source: 'log', file: 'log.csv', sheet: null, row });
  const of = (kind: EndKind) => given.filter((record) => record.kind === kind);
  return {
    cycles: of('cycles').map(
      ({ unit, hours, row }) => ({ unit, start: NOON + hours * HOUR, origin: origin(row) }) as Cycle,
    ),
    air_removal_tests: of('air_removal_tests').map(
      ({ unit, hours, row }) => ({ unit, time: NOON + hours * HOUR, origin: origin(row) }) as AirRemovalTest,
    ),
  };
}

const records = fc
  .array(
    fc.record<Given>({
      kind: fc.constantFrom('cycles', 'air_removal_tests'),
      unit: fc.constantFrom('E', 'W'),
      hours: fc.oneof(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -9000, max: 9000 })),
    }),
    { maxLength: 60 },
  )
  .map((list) => list.map((of, row) => ({ ...of, row })));

describe('the ends of a record', () => {
  it('are the earliest and latest by operating day, whatever the clocks of the sites', () => {
    fc.assert(
      fc.property(records, (given) => {
        const ends = endsOfRecords(SITE, recordsOf(given));
        // Kiritimati is 14 h ahead of UTC, Midway 11 h behind, and its day opens at 23:00.
        const days = given
          .map(({ unit, hours }) =>
            Math.floor((NOON + (hours + (unit === 'E' ? 14 : -11 - 23)) * HOUR) / (24 * HOUR)),
          )
          .sort((a, b) => a - b);
        expect(ends.count).toBe(given.length);
        expect(ends.earliest.map(({ day }) => day)).toEqual(days.slice(0, 5));
        expect(ends.latest.map(({ day }) => day)).toEqual(days.slice(-5).reverse());
      }),
    );
  });

  it('are the same in whichever parts and order the records are taken', () => {
    fc.assert(
      fc.property(records, fc.integer({ min: 1, max: 5 }), (given, parts) => {
        const whole = endsOfRecords(SITE, recordsOf(given));
        const dealt = Array.from({ length: parts }, (_, part) =>
          endsOfRecords(SITE, recordsOf(given.filter((_, at) => at % parts === part).toReversed())),
        );
        expect(mergeEnds(dealt)).toEqual(whole);
        expect(mergeEnds(structuredClone(dealt).reverse())).toEqual(whole);
      }),
    );
  });

  it('are split into lone records, in order of time, and the first and last of the others', () => {
    const days = Array.from({ length: 30 }, (_, day) => 24 * day);
    const hours = [-90_000, ...days, 87_600, 87_603, 175_200];
    const given = hours.map((at, row) => ({ kind: 'cycles' as const, unit: 'E', hours: at, row }));
    const split = splitEnds(endsOfRecords(SITE, recordsOf(given)))!;
    expect(split.lone.map(({ origin }) => origin.row)).toEqual([0, 31, 32, 33]);
    expect([split.first.origin.row, split.last.origin.row]).toEqual([1, 30]);
    expect(splitEnds(endsOfRecords(SITE, recordsOf([])))).toBeNull();
  });
});
