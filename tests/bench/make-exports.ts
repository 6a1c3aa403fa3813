import { closeSync, mkdirSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

const DAY = 86_400_000;
/** Units of one site, at most. */
const UNITS_OF_SITE = 20;
const START = Date.UTC(2024, 0, 1, 6);

/** Columns of the made cycle logs: those that a unit exports, of which the tool maps twelve. */
export const HEAD =
  'unit,number,start,end,kind,outcome,text,evacuation,heat_up,exposure,exhaust,drying,t_min,t_max,pressure,printer,load,remark';

const two = (value: number): string => (value < 10 ? `0${value}` : String(value));
function wall(at: number): string {
  const date = new Date(at);
  return `${date.getUTCFullYear()}-${two(date.getUTCMonth() + 1)}-${two(date.getUTCDate())} ${two(date.getUTCHours())}:${two(date.getUTCMinutes())}:${two(date.getUTCSeconds())}`;
}

/** Columns of the made records of tests and cleanings, named as the fields. */
const TEST_HEAD = 'unit,time,result,cycle_number';
const CLEANING_HEAD = 'unit,task,time,state';
/** Days from one chamber cleaning to the next, most of the time. */
const CHAMBER_EVERY = 28;

const source = (site: string): string => `  - kind: air_removal_tests
    site: ${site}
    files: 'tests-${site}-*.csv'
  - kind: cleanings
    site: ${site}
    files: 'cleanings-${site}-*.csv'
  - kind: cycles
    site: ${site}
    files: 'log-${site}-*.csv'
    columns: { unit: unit, cycle_number: number, start: start, end: end, kind: kind, outcome: outcome, abort_text: text, evacuation_s: evacuation, heat_up_s: heat_up, exposure_s: exposure, exhaust_s: exhaust, drying_s: drying }
`;

/**
 * Writes cycle logs of so many cycles, one file a unit and year, records of daily tests and cleanings beside them, and a site file; the same for the same arguments. Made for speed alone:
 * the values say nothing.
 *
 * @returns bytes written to the logs
 */
export function makeExports(folder: string, cycles: number, units: number): number {
  const random = xoroshiro128plus(7);
  const draw = (): number => (random.next() >>> 0) / 2 ** 32;
  mkdirSync(folder, { recursive: true });
  const ids = Array.from({ length: units }, (_, at) => `U${at + 1}`);
  const sites = Array.from({ length: Math.ceil(units / UNITS_OF_SITE) }, (_, at) => `S${at + 1}`);
  const siteOf = (unit: number): string => sites[Math.floor(unit / UNITS_OF_SITE)]!;
  const site = openSync(join(folder, 'site.yaml'), 'w');
  writeSync(
    site,
    `sites: [${sites.map((id) => `{ id: ${id}, zone: Etc/UTC }`).join(', ')}]
units: [${ids.map((id, at) => `{ id: ${id}, site: ${siteOf(at)} }`).join(', ')}]
cleaning: [{ task: chamber, every: ${CHAMBER_EVERY}, counted_in: calendar_days }]
sources:
${sites.map(source).join('')}`,
  );
  closeSync(site);
  let bytes = 0;
  const each = Math.ceil(cycles / units);
  for (const [at, id] of ids.entries()) {
    const own = Math.min(each, cycles - at * each);
    let file: number | undefined;
    let year = 0;
    let lines: string[] = [];
    let tests: string[] = [];
    let cleanings: string[] = [];
    const flush = (): void => {
      if (file !== undefined && lines.length > 0) bytes += writeSync(file, `${lines.join('\n')}\n`);
      for (const [kind, head, own] of [
        ['tests', TEST_HEAD, tests],
        ['cleanings', CLEANING_HEAD, cleanings],
      ] as const)
        if (own.length > 0)
          writeFileSync(
            join(folder, `${kind}-${siteOf(at)}-${id}-${year}.csv`),
            `${head}\n${own.join('\n')}\n`,
          );
      lines = [];
    };
    for (let cycle = 0; cycle < own; cycle++) {
      const start =
        START + Math.floor(cycle / 8) * DAY + (cycle % 8) * 4_500_000 + Math.floor(draw() * 600) * 1000;
      const newYear = new Date(start).getUTCFullYear();
      if (newYear !== year) {
        flush();
        tests = [];
        cleanings = [];
        if (file !== undefined) closeSync(file);
        file = openSync(join(folder, `log-${siteOf(at)}-${id}-${newYear}.csv`), 'w');
        year = newYear;
        lines.push(HEAD);
      }
      const aborted = draw() < 0.01;
      const kind = cycle % 8 === 0 ? 'air_removal_test' : 'production';
      const seconds = [300, 240, 210, 90, 1200].map((mean) => Math.round(mean * (0.95 + 0.1 * draw())));
      lines.push(
        `${id},${cycle + 1},${wall(start)},${wall(start + 3_000_000)},${kind},${aborted ? 'aborted' : 'completed'},${aborted ? '"Door, locked"' : ''},${seconds.join(',')},134.2,135.1,312.${cycle % 10},P${at},L${cycle},`,
      );
      if (cycle % 8 === 0) {
        const day = Math.floor(cycle / 8);
        tests.push(
          `${id},${wall(start + 3_300_000).slice(0, 16)},${draw() < 0.01 ? 'fail' : 'pass'},${cycle + 1}`,
        );
        cleanings.push(
          `${id},drain_strainer,${wall(start - 1_200_000).slice(0, 16)},${draw() < 0.05 ? 'missed' : 'done'}`,
        );
        if (day % CHAMBER_EVERY === 0 && draw() < 0.8)
          cleanings.push(`${id},chamber,${wall(start + 50_000_000).slice(0, 16)},done`);
      }
      if (lines.length >= 5000) flush();
    }
    flush();
    if (file !== undefined) closeSync(file);
  }
  return bytes;
}
