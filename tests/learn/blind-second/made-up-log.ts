import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** One run of a made-up sterilizer: times in ms as if the wall clock were UTC, lengths in s, temperatures in C, pressures in kPa absolute. */
export interface MadeRun {
  unit: number;
  number: number;
  what: 'warm' | 'test' | 'leak' | 'load' | 'fluid';
  ended: 'ok' | 'stopped' | 'bad';
  start: number;
  end: number;
  evacuation: number;
  heatUp: number;
  exposure: number;
  exhaust: number;
  drying: number;
  low: number;
  high: number;
  pressure: number;
  vacuum: number;
  drain: number;
  leak: number;
}

const MINUTE = 60_000;
const DAY = 86_400_000;

/** Saturation pressure of water, kPa, by the Antoine equation (constants for 99 to 374 C, from memory), good to 1 % near 121 and 134 C: enough for made-up exports. */
const saturated = (celsius: number): number => 10 ** (8.14019 - 1810.94 / (244.485 + celsius)) * 0.133322;

/** Days of a few units: warm-up, air-removal test, a leak test each Monday, loads, some of them at 121 C. The same seed gives the same days. */
export function madeUpLog(seed: number, units: number, from: string, days: number, loads = 3): MadeRun[] {
  const generator = xoroshiro128plus(seed);
  const draw = (low: number, high: number, digits = 0): number =>
    uniformInt(generator, Math.round(low * 10 ** digits), Math.round(high * 10 ** digits)) / 10 ** digits;
  const runs: MadeRun[] = [];
  const numbers = Array.from({ length: units }, (_, unit) => 4100 + unit * 1370);
  for (let day = 0; day < days; day++)
    for (let unit = 0; unit < units; unit++) {
      const opened = Date.parse(from) + day * DAY;
      let clock = opened + (5 * 60 + 40 + unit * 4) * MINUTE + draw(0, 600) * 1000;
      const plan: MadeRun['what'][] = ['warm', 'test'];
      if (new Date(opened).getUTCDay() === 1) plan.push('leak');
      for (let load = 0; load < loads; load++) plan.push(draw(0, 9) === 0 ? 'fluid' : 'load');
      for (const what of plan) {
        const luck = draw(0, what === 'test' ? 7 : 19);
        const ended = luck === 0 ? 'stopped' : luck === 1 ? 'bad' : 'ok';
        const hot = what === 'fluid' ? draw(121.2, 121.9, 1) : draw(134.3, 135.2, 1);
        const run = {
          evacuation: draw(240, 420),
          heatUp: draw(85, 200),
          exposure: what === 'fluid' ? 1200 : what === 'test' ? 210 : draw(240, 243),
          exhaust: draw(55, 170),
          drying: what === 'test' ? 60 : draw(900, 1500),
        };
        const length = run.evacuation + run.heatUp + run.exposure + run.exhaust + run.drying + draw(90, 200);
        runs.push({
          unit,
          number: numbers[unit]!++,
          what,
          ended,
          start: clock,
          end: clock + (ended === 'stopped' ? draw(200, 700) : length) * 1000,
          ...run,
          low: hot,
          high: Math.round((hot + draw(0.3, 1.1, 1)) * 10) / 10,
          pressure: saturated(hot + 0.3),
          vacuum: draw(4, 8, 1),
          drain: draw(128, 133, 1),
          leak: draw(0.02, 0.14, 3),
        });
        clock += length * 1000 + draw(4, 35) * MINUTE;
      }
    }
  return runs.sort((a, b) => a.start - b.start || a.unit - b.unit);
}

/** Parts of a wall time as texts. */
export function at(time: number) {
  const [date = '', rest = ''] = new Date(time).toISOString().split('T');
  const [y = '', m = '', d = ''] = date.split('-');
  const [hour = '', minute = '', second = ''] = rest.slice(0, 8).split(':');
  const half = Number(hour) < 12 ? 'AM' : 'PM';
  return {
    y,
    m,
    d,
    hour,
    minute,
    second,
    half,
    twelve: String(Number(hour) % 12 || 12),
    date,
    clock: rest.slice(0, 8),
  };
}

const two = (value: number): string => String(value).padStart(2, '0');
export const mmss = (seconds: number): string => `${two(Math.floor(seconds / 60))}:${two(seconds % 60)}`;
export const hhmmss = (seconds: number): string =>
  `${two(Math.floor(seconds / 3600))}:${mmss(seconds % 3600)}`;
export const komma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
export const degreesF = (celsius: number): string => (celsius * 1.8 + 32).toFixed(1);
export const PSI = 6.894757;

/** Lines of cells as delimited text. */
export const table = (
  delimiter: string,
  lines: readonly (readonly (string | number)[])[],
  end = '\r\n',
): string => lines.map((line) => line.join(delimiter) + end).join('');

/** The elements with others put in: each at the place that it had in the finished list. */
export function withRows<T>(list: readonly T[], more: readonly (readonly [number, T])[]): T[] {
  const rows = [...list];
  for (const [place, row] of more) rows.splice(place, 0, row);
  return rows;
}
