import type { BlindStyle } from '../blind/make-blind.ts';
import { later, lines, wall, wave, write } from '../blind-third/paper.ts';
import { sources } from './australian-truth.ts';

const UNITS = ['AutoclaveA', 'AutoclaveB'];
const utf16 = (rows: readonly (readonly (string | number)[])[]): Uint8Array =>
  Buffer.from(`\uFEFF${lines(rows, '\t')}`, 'utf16le');
const iso = (time: Date): string => write(time, 'yyyy-MM-ddTHH:mm:ss');

/** Tables of an Australian research laboratory's database: UTF-16 with tabs, names in camel case, gauge pressure in kPa. */
export function australian(): BlindStyle {
  return {
    name: 'australian',
    zone: 'Australia/Melbourne',
    sources,
    files: {
      'autoclaveCycles.tsv': cycles(),
      'leakRateTests.tsv': leaks(),
      'chamberInspections.tsv': inspections(),
      'feedwaterResults.tsv': water(),
    },
  };
}

/** 42 cycles; one program has the name "Custom 7", of which nobody can tell the kind, one result is a bare X. */
function cycles(): Uint8Array {
  const programs = ['Warm-up', 'Wrapped goods 134', 'Media and liquids 121', 'Wrapped goods 134'];
  const rows: (string | number)[][] = [
    [
      'recordId',
      'autoclaveName',
      'cycleCounter',
      'programName',
      'startedAt',
      'finishedAt',
      'cycleResult',
      'faultText',
      'evacuationSecs',
      'heatUpSecs',
      'holdSecs',
      'dryingSecs',
      'holdTempMinC',
      'holdTempMaxC',
      'holdPressureKPaGauge',
      'dryVacuumKPaAbs',
      'loadOwner',
    ],
  ];
  for (let at = 0; at < 42; at++) {
    const start = later(wall('2025-02-10', Math.floor(at / 4), 455 + 100 * (at % 4)), (at % 7) / 4);
    const hot = at % 4 !== 2;
    const liquid = at % 4 === 2;
    const stopped = at === 13 || at === 29;
    rows.push([
      90110 + at,
      UNITS[Math.floor(at / 4) % 2]!,
      1480 + at,
      at === 23 ? 'Custom 7' : programs[at % 4]!,
      iso(start),
      iso(later(start, stopped ? 9 : 55 + (at % 8))),
      at === 35 ? 'X' : stopped ? 'Stopped' : 'Successful',
      at === 13 ? 'Chamber not drained' : at === 29 ? 'Stopped by operator' : '',
      ...(stopped
        ? Array(8).fill('')
        : [
            wave(at, 295, 14, 0),
            wave(at, 190, 12, 0, 3),
            hot ? 242 : 1203,
            liquid ? '' : 900,
            wave(at, hot ? 134.5 : 121.3, 0.2, 1),
            wave(at, hot ? 135.6 : 122.2, 0.2, 1, 3),
            wave(at, hot ? 208 : 107, 2, 0, 5),
            liquid ? '' : wave(at, 6.1, 0.5, 1, 9),
          ]),
      ['Plant lab', 'Micro', 'Teaching'][at % 3]!,
    ]);
  }
  return utf16(rows);
}

/** 20 tests; one time is no time of the calendar. */
function leaks(): Uint8Array {
  const rows: (string | number)[][] = [
    [
      'recordId',
      'autoclaveName',
      'testedAt',
      'cycleCounter',
      'leakRateKPaPerMin',
      'allowableKPaPerMin',
      'passFail',
    ],
  ];
  for (let at = 0; at < 20; at++)
    rows.push([
      4100 + at,
      UNITS[at % 2]!,
      at === 9 ? '2025-02-30T07:20:00' : iso(wall('2025-01-06', 7 * Math.floor(at / 2), 430 + 25 * (at % 2))),
      1200 + at * 31,
      wave(at, 0.06, 0.03, 3),
      '0.130',
      'Pass',
    ]);
  return utf16(rows);
}

/** 14 inspections; one score lies outside its scale. */
function inspections(): Uint8Array {
  const rows: (string | number)[][] = [
    ['autoclaveName', 'inspectedOn', 'appearanceScore0to4', 'residueAfterRinse', 'comments'],
  ];
  for (let at = 0; at < 14; at++)
    rows.push([
      UNITS[at % 2]!,
      write(wall('2025-01-08', 14 * Math.floor(at / 2)), 'yyyy-MM-dd'),
      at === 6 ? 7 : (at * 3) % 5,
      at % 4 === 3 ? 'yes' : 'no',
      (at * 3) % 5 === 4 ? 'brown film on the floor' : '',
    ]);
  return utf16(rows);
}

function water(): Uint8Array {
  const analytes: [string, string, number][] = [
    ['Conductivity', 'µS/cm', 4.2],
    ['Silica', 'mg/L', 0.4],
    ['Chloride', 'mg/L', 0.3],
  ];
  const rows: (string | number)[][] = [
    ['samplePoint', 'sampledOn', 'analyte', 'resultValue', 'resultUnit', 'autoclavesServed'],
  ];
  for (let at = 0; at < 24; at++) {
    const [analyte, unit, middle] = analytes[at % 3]!;
    rows.push([
      Math.floor(at / 3) % 2 === 0 ? 'RO feed' : 'Condensate',
      write(wall('2025-01-15', 30 * Math.floor(at / 6)), 'yyyy-MM-dd'),
      analyte,
      wave(at, middle, middle / 8, 2),
      unit,
      'AutoclaveA AutoclaveB',
    ]);
  }
  return utf16(rows);
}
