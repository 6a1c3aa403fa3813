import { gzipSync } from 'node:zlib';
import { madeUpDays, parts, rows } from './made-up-days.ts';

type Files = Record<string, string | Uint8Array>;

/** A printout kept as text: header repeated on each page, a line of totals, everything in minutes; months as letters; packed. A score of the chamber's looks. */
export async function printout(): Promise<Files> {
  const cycles = madeUpDays(51, 2, '2025-07-01', 24);
  const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug'];
  const stamp = (at: number) =>
    `${parts(at).dd}-${months[parts(at).month]}-${parts(at).yy} ${parts(at).HH}:${parts(at).mm}`;
  const day = (at: number) => `${parts(at).dd}-${months[parts(at).month]}-${parts(at).yy}`;
  const header = [
    'Washer/Ster',
    'Run',
    'Began',
    'Finished',
    'Programme',
    'Completed',
    'Reason',
    'Air removal (min)',
    'Come up (min)',
    'Hold (min)',
    'Lo temp',
    'Hi temp',
    'Chamber press (kPa)',
  ];
  const kinds = {
    warm_up: 'Warm up',
    air_removal_test: 'Bowie & Dick',
    leak_test: 'Leak rate',
    production: 'Theatre sets',
    liquids: 'Bottled fluids',
  };
  const body = cycles.map((one) => [
    `PV${one.unit + 1}`,
    String(one.number),
    stamp(one.start),
    stamp(one.end),
    kinds[one.kind],
    one.outcome === 'completed' ? 'Yes' : 'No',
    one.outcome === 'completed' ? '' : 'Heat-up over time',
    (one.evacuation / 60).toFixed(1),
    (one.heatUp / 60).toFixed(1),
    (one.exposure / 60).toFixed(1),
    one.low.toFixed(1),
    one.high.toFixed(1),
    one.pressure.toFixed(0),
  ]);
  const pages = body.flatMap((line, at) => (at % 60 === 0 && at > 0 ? [header, line] : [line]));
  const dates = Array.from({ length: 24 }, (_, at) => `${String(at + 1).padStart(2, '0')}-Jul-25`);
  return {
    'runs.csv.gz': gzipSync(rows(',', [header, ...pages])),
    'daily tests.csv': rows(',', [
      ['Steriliser', 'Day', 'Result', 'Notes'],
      ...cycles
        .filter(({ kind }) => kind === 'air_removal_test')
        .map((one) => [`PV${one.unit + 1}`, day(one.start), one.passed ? 'OK' : 'Not OK', '']),
    ]),
    'strainer.csv': rows(',', [
      ['Steriliser', ...dates],
      ...[0, 1].map((unit) => [
        `PV${unit + 1}`,
        ...dates.map((_, at) => ((at + unit) % 6 === 0 ? '' : (at * 3 + unit) % 7 === 0 ? 'N/D' : 'Y')),
      ]),
    ]),
    'chamber looks.csv': rows(',', [
      ['Steriliser', 'Inspected', 'Score 0-4', 'Residue after rinse', 'Comment'],
      ...cycles
        .filter(({ kind, number }) => kind === 'warm_up' && number % 3 === 0)
        .map((one, at) => [
          `PV${one.unit + 1}`,
          day(one.start),
          String(at % 5),
          at % 3 === 0 ? 'Y' : 'N',
          '',
        ]),
    ]),
  };
}
