import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type {
  AirRemovalTest,
  Cleaning,
  Cycle,
  LeakTest,
  Origin,
  Records,
  Service,
} from '../../pipeline/site/records.ts';
import type { Site } from '../../pipeline/site/site.ts';

/** Small builders: records as a test needs them, times as wall time of the site's zone. */
export const ZONE = 'America/Halifax';

let row = 0;
const origin = (): Origin => ({ source: 'test', file: 'test.csv', sheet: null, row: ++row });

export function siteOf(yaml = ''): Site {
  return readSiteFile(`sites: [{ id: s, zone: ${ZONE} }]\n${yaml}`, 'site.yaml');
}

const clock = siteOf().sites.get('s')!.clock;

/** "2025-03-03 07:00" as wall time of the site, to an instant. */
export const at = (wall: string): number => clock.instantOf(Date.parse(`${wall.replace(' ', 'T')}:00Z`)).at;

export function cycle(start: string, fields: Partial<Cycle> & { minutes?: number } = {}): Cycle {
  const { minutes = 45, ...rest } = fields;
  return {
    unit: 'U1',
    start: at(start),
    end: at(start) + minutes * 60_000,
    kind: 'production',
    outcome: 'completed',
    time_mark: 'time',
    origin: origin(),
    ...rest,
  };
}

export const test_ = (
  time: string,
  result: AirRemovalTest['result'],
  fields: Partial<AirRemovalTest> = {},
): AirRemovalTest => ({
  unit: 'U1',
  time: at(time),
  result,
  time_mark: 'time',
  origin: origin(),
  ...fields,
});

export const cleaning = (task: Cleaning['task'], time: string, fields: Partial<Cleaning> = {}): Cleaning => ({
  unit: 'U1',
  task,
  time: at(time),
  time_mark: 'time',
  origin: origin(),
  ...fields,
});

export const service = (
  kind: Service['kind'],
  from: string,
  to: string | undefined,
  fields: Partial<Service> = {},
): Service => ({
  unit: 'U1',
  kind,
  from: at(from),
  ...(to === undefined ? {} : { to: at(to) }),
  time_mark: 'time',
  origin: origin(),
  ...fields,
});

export const leak = (time: string, rate: number, fields: Partial<LeakTest> = {}): LeakTest => ({
  unit: 'U1',
  time: at(time),
  leak_rate_kpa_min: rate,
  time_mark: 'time',
  origin: origin(),
  ...fields,
});

export const recordsOf = (some: Partial<Records>): Records => ({
  cycles: [],
  air_removal_tests: [],
  leak_tests: [],
  cleanings: [],
  service: [],
  inspections: [],
  water: [],
  actions: [],
  ...some,
});

/** An ordinary day of use: warm-up at 06:00, air-removal test at 07:00, production from 08:00 on. */
export function ordinaryDay(
  date: string,
  result: AirRemovalTest['result'] = 'pass',
  production = 2,
): { cycles: Cycle[]; tests: AirRemovalTest[] } {
  return {
    cycles: [
      cycle(`${date} 06:00`, { kind: 'warm_up', minutes: 20 }),
      cycle(`${date} 07:00`, { kind: 'air_removal_test', minutes: 25 }),
      ...Array.from({ length: production }, (_, index) =>
        cycle(`${date} ${String(8 + index).padStart(2, '0')}:00`),
      ),
    ],
    tests: [test_(`${date} 07:25`, result)],
  };
}
