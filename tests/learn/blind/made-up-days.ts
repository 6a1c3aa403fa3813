import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** One cycle of an invented unit. Times are wall times as if they were UTC, milliseconds. */
export interface MadeCycle {
  unit: number;
  number: number;
  kind: 'warm_up' | 'air_removal_test' | 'leak_test' | 'production' | 'liquids';
  outcome: 'completed' | 'aborted' | 'failed';
  start: number;
  end: number;
  evacuation: number;
  heatUp: number;
  exposure: number;
  exhaust: number;
  drying: number;
  low: number;
  high: number;
  /** kPa absolute, of saturated steam. */
  pressure: number;
  vacuum: number;
  drain: number;
  /** Which of a style's own abort texts. */
  abort: number;
  leak: number;
  passed: boolean;
}

const MINUTE = 60_000;

/** Vapour pressure over water, kPa, after Buck (1996), good to 1 % at 100 to 140 C: enough for made-up exports. */
const steam = (celsius: number): number =>
  0.61121 * Math.exp((18.678 - celsius / 234.5) * (celsius / (257.14 + celsius)));

/** Days of a department: warm-up, air-removal test, three loads; a leak test on the first day of each seven. */
export function madeUpDays(seed: number, units: number, from: string, days: number): MadeCycle[] {
  const rng = xoroshiro128plus(seed);
  const between = (low: number, high: number): number => uniformInt(rng, low, high);
  const cycles: MadeCycle[] = [];
  const counter = Array.from({ length: units }, (_, unit) => 4100 + 731 * unit);
  for (let day = 0; day < days; day++)
    for (let unit = 0; unit < units; unit++) {
      let clock = Date.parse(`${from}T06:00:00Z`) + day * 86_400_000 + (unit * 7 + between(0, 20)) * MINUTE;
      const plan = [
        'warm_up',
        'air_removal_test',
        'production',
        'production',
        'liquids',
      ] as MadeCycle['kind'][];
      if (day % 7 === 0) plan.splice(1, 0, 'leak_test');
      for (const kind of plan) {
        const low = kind === 'liquids' ? 121.1 + between(0, 5) / 10 : 134.2 + between(0, 5) / 10;
        const aborted = (kind === 'production' || kind === 'liquids') && between(0, 14) === 0;
        const length = kind === 'leak_test' ? 22 : between(31, 58);
        cycles.push({
          unit,
          number: counter[unit]!++,
          kind,
          outcome: aborted ? (between(0, 2) === 0 ? 'failed' : 'aborted') : 'completed',
          start: clock + between(0, 59) * 1000,
          end: clock + length * MINUTE + between(0, 59) * 1000,
          evacuation: between(380, 560),
          heatUp: between(95, 185),
          exposure: kind === 'liquids' ? between(902, 930) : between(241, 330),
          exhaust: between(70, 140),
          drying: between(600, 1210),
          low,
          high: low + between(4, 11) / 10,
          pressure: steam(low + 0.4),
          vacuum: between(35, 62) / 10,
          drain: low - between(1, 8) / 10,
          abort: between(0, 3),
          leak: between(1, 14) / 100,
          passed: between(0, 19) !== 0,
        });
        clock += (length + between(9, 35)) * MINUTE;
      }
    }
  return cycles;
}

const pad = (value: number, width = 2): string => String(value).padStart(width, '0');

export const parts = (time: number) => {
  const date = new Date(time);
  const hours = date.getUTCHours();
  return {
    yyyy: pad(date.getUTCFullYear(), 4),
    yy: pad(date.getUTCFullYear() % 100),
    MM: pad(date.getUTCMonth() + 1),
    M: String(date.getUTCMonth() + 1),
    month: date.getUTCMonth(),
    dd: pad(date.getUTCDate()),
    d: String(date.getUTCDate()),
    weekday: date.getUTCDay(),
    HH: pad(hours),
    H: String(hours),
    h: String(hours % 12 === 0 ? 12 : hours % 12),
    half: hours < 12 ? 'AM' : 'PM',
    mm: pad(date.getUTCMinutes()),
    ss: pad(date.getUTCSeconds()),
  };
};

export const minutesSeconds = (seconds: number): string =>
  `${pad(Math.floor(seconds / 60))}:${pad(seconds % 60)}`;
export const comma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
export const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;
/** Days since the beginning of a spreadsheet's calendar, 1900 as all spreadsheets count. */
export const serial = (time: number): number => time / 86_400_000 + 25_569;
export const rows = (mark: string, lines: readonly (readonly string[])[], end = '\r\n'): string =>
  lines.map((line) => line.join(mark)).join(end) + end;
