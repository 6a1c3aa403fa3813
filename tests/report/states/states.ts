import { intervalCase } from '../../../pipeline/findings/interval/interval-case.ts';
import { type Period, reviewPeriod, spanOfRecords } from '../../../pipeline/findings/period.ts';
import { makeReview } from '../../../pipeline/findings/review.ts';
import type { Problem, Reading } from '../../../pipeline/ingest/reading.ts';
import type { ReportInput } from '../../../pipeline/report/report.ts';
import { rowsOfUnits } from '../../../pipeline/rows-of-units.ts';
import { dayOfDate, formatDay, monthSpan, weekday } from '../../../pipeline/site/day.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import type { Records } from '../../../pipeline/site/records.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cleaning, leak, ordinaryDay, recordsOf, ZONE } from '../../transform/build.ts';

/** Extremes that a report must bear, each made from records by all stages. All end with March 2026. */

const UNTIL = dayOfDate(2026, 4, 1);

interface Plan {
  units: number;
  /** Days of the record up to the end of March 2026. */
  days: number;
  fails?: (unit: number, day: number) => boolean;
  /** Wall time of chamber cleanings, every 28 days; left out: none. 10:10 lies inside a cycle. */
  chamberAt?: string;
}

function recordsOfPlan({ units, days, fails = () => false, chamberAt }: Plan): Records {
  const records = recordsOf({});
  for (let unit = 0; unit < units; unit++) {
    const name = `U${unit + 1}`;
    for (let day = UNTIL - days; day < UNTIL; day++) {
      if (weekday(day) === 7) continue;
      const date = formatDay(day);
      const { cycles, tests } = ordinaryDay(date, fails(unit, day) ? 'fail' : 'pass', 3);
      const own = { unit: name };
      records.cycles.push(...cycles.map((cycle) => ({ ...cycle, ...own, evacuation_s: 300 + (day % 7) })));
      records.air_removal_tests.push(...tests.map((test) => ({ ...test, ...own })));
      records.cleanings.push(cleaning('drain_strainer', `${date} 05:50`, own));
      if (weekday(day) === 1) records.leak_tests.push(leak(`${date} 06:30`, 0.05, own));
      if (chamberAt !== undefined && (day + unit) % 28 === 0)
        records.cleanings.push(cleaning('chamber', `${date} ${chamberAt}`, own));
    }
  }
  return records;
}

const POLICY = `organisation: State Bench
cleaning:
  - { task: chamber, every: 28, counted_in: calendar_days, unrecorded_means: missed }`;

function inputOf(yaml: string, records: Records, problems: Problem[], asked?: Period): ReportInput {
  const site = readSiteFile(`sites: [{ id: s, zone: ${ZONE} }]\n${yaml}`, 'site.yaml');
  const read = Object.values(records).reduce((sum, list) => sum + list.length, 0);
  const reading: Reading = {
    records,
    problems,
    files: [
      {
        source: 'cycles',
        kind: 'cycles',
        file: 'test.csv',
        sheet: null,
        bytes: 1234,
        sha256: 'd'.repeat(64),
        rows: read + problems.length,
        records: read,
        duplicates: 0,
        rejected: problems.length,
        skipped: 0,
        preamble: 0,
        cells_lost: 0,
      },
    ],
  };
  const period = asked ?? reviewPeriod('2026-03', spanOfRecords(site, records));
  const transformed = transform(site, records, period.until);
  const { histories, panel, until } = transformed;
  return {
    review: makeReview({ site, reading, transformed, period, version: '0.0.0' }),
    panel,
    dueOf: rowsOfUnits(histories.flatMap((history) => history.cleaning.due)),
    problems,
    interval: intervalCase(histories, panel, site, records, until),
  };
}

const nowAndThen = (unit: number, day: number) => (day * 7 + unit * 13) % 41 === 0;

/** One input a state, by its name. */
export const STATES = {
  'no failures at all': () => inputOf(POLICY, recordsOfPlan({ units: 3, days: 180, chamberAt: '18:00' }), []),
  'one unit': () =>
    inputOf(POLICY, recordsOfPlan({ units: 1, days: 180, chamberAt: '18:00', fails: nowAndThen }), []),
  'sixty units': () =>
    inputOf(POLICY, recordsOfPlan({ units: 60, days: 60, chamberAt: '18:00', fails: nowAndThen }), []),
  'one month of data': () =>
    inputOf(POLICY, recordsOfPlan({ units: 3, days: 31, chamberAt: '18:00', fails: nowAndThen }), []),
  'everything contradicted': () =>
    inputOf(POLICY, recordsOfPlan({ units: 3, days: 150, chamberAt: '10:10', fails: nowAndThen }), []),
  'nothing readable': () =>
    inputOf(
      `${POLICY}\nunits: [{ id: U1 }, { id: U2 }]`,
      recordsOf({}),
      Array.from(
        { length: 400 },
        (_, at): Problem => ({
          code: 'bad_time',
          costs: 'row',
          source: 'cycles',
          file: 'test.csv',
          sheet: null,
          row: at + 2,
          column: 'Started',
          value: '31/31/2026',
          expected: 'a time like 2024-03-01 06:30',
        }),
      ),
      { month: '2026-03', ...monthSpan('2026-03')! },
    ),
} as const satisfies Record<string, () => ReportInput>;
export type State = keyof typeof STATES;
