// Over 300 lines: the tables of one style and their truth side by side.
import { workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { at, komma, madeUpLog, mmss, table, withRows } from './made-up-log.ts';

const tag = (time: number): string => {
  const { y, m, d } = at(time);
  return `${d}.${m}.${y}`;
};
const latin = (text: string): Uint8Array => Buffer.from(text, 'latin1');

/** Germany: semicolons, windows-1252, comma; a preamble, a line of sums; short names of columns with units of measure in brackets. */
export function anlage(): BlindStyle {
  const runs = madeUpLog(41, 2, '2024-10-07', 6);
  const cycles = runs.filter(({ what }) => what !== 'leak');
  const PROGRAMS = {
    warm: 'Aufheizen',
    test: 'BD-Test',
    leak: '',
    load: 'Instr. 134°C',
    fluid: 'Lösungen 121°C',
  };
  const ENDS = { ok: 'i.O.', stopped: 'Abbruch Bed.', bad: 'n.i.O.' };
  const lines = cycles.map((run) => [
    `SG-0${run.unit + 1}`,
    run.number,
    PROGRAMS[run.what],
    `${tag(run.start)} ${at(run.start).clock}`,
    mmss(run.evacuation),
    mmss(run.heatUp),
    mmss(run.exposure),
    mmss(run.drying),
    komma(run.low, 1),
    komma(run.high, 1),
    komma(run.pressure / 100, 2),
    komma(run.drain, 1),
    ENDS[run.ended],
    run.ended === 'bad' ? 'Aufheizzeit überschr.' : '',
    `Bed. ${run.number % 5}`,
    run.what === 'load' ? run.number * 3 : '',
    `${tag(run.end)} ${at(run.end).clock}`,
  ]);
  const header =
    'Gerät;Ch.-Nr.;Progr.;Beginn;Evak. [min:s];Aufh. [min:s];Halten [min:s];Trockn. [min:s];T min [°C];T max [°C];p Halten [bar abs];T Ablauf [°C];Bewertung;Störmeldung;Bediener;Etik.-Nr.;Ende'.split(
      ';',
    );
  const rows = withRows<(string | number)[]>(lines, [
    [12, lines[11]!],
    [
      25,
      [
        'SG-02',
        '',
        'Instr. 134°C',
        '07.13.2024 09:00:00',
        '05:00',
        '02:00',
        '04:00',
        '15:00',
        '134,5',
        '135,1',
        '3,12',
        '130,1',
        'i.O.',
        '',
        '',
        '',
        '',
      ],
    ],
    [lines.length + 2, ['Summe', lines.length, ...Array<string>(15).fill('')]],
  ]);
  const leaks = madeUpLog(42, 2, '2024-01-01', 84, 0).filter(({ what }) => what === 'leak');
  const leakLines = leaks.map((run) => [
    tag(run.start),
    at(run.start).clock.slice(0, 5),
    `SG-0${run.unit + 1}`,
    komma(run.leak * 10, 2),
    '1,30',
    run.leak > 0.13 ? 'nein' : 'ja',
    'B. 2',
  ]);
  const cleaned = Array.from({ length: 32 }, (_, place) => [
    place + 1,
    tag(Date.parse('2024-10-01') + Math.floor(place / 2) * 86_400_000),
    `SG-0${(place % 2) + 1}`,
    place % 11 === 3 ? 'Kammer ger.' : place % 6 === 2 ? 'Abl. gespült' : 'Sieb ger.',
    place % 7 === 5 ? 'entf.' : place % 12 === 10 ? 'nicht erl.' : 'erl.',
    place % 12 === 10 ? '' : 5 + ((place * 5) % 20),
    place % 9 === 1 ? 'Etikettenreste' : '',
    place % 2 ? 'Frühdienst' : 'Spätdienst',
  ]);
  return {
    name: 'anlage',
    zone: 'Europe/Berlin',
    files: {
      'Chargenliste KW41.csv': latin(
        table(';', [
          ['Chargenliste', 'Aufbereitung', 'KW 41'],
          ['erstellt', '14.10.2024'],
          [],
          header,
          ...rows,
        ]),
      ),
      'Dichtigkeit_2024.csv': latin(
        table(';', [
          ['Datum', 'Uhrz.', 'Ger.', 'Druckanst. [mbar/min]', 'zul. [mbar/min]', 'bestanden', 'Kürzel'],
          ...leakLines,
        ]),
      ),
      'Reinigung_Okt.csv': latin(
        table(';', [
          ['lfd.', 'Dat.', 'Ger.', 'Tätigk.', 'Status', 'Dauer min', 'Bem.', 'Schicht'],
          ...cleaned,
        ]),
      ),
    },
    sources: [
      {
        file: 'Chargenliste KW41.csv',
        kind: 'cycles',
        decimal: ',',
        columns: {
          unit: { headers: ['Gerät'] },
          start: { headers: ['Beginn'], dates: ['dd.MM.yyyy HH:mm:ss'] },
          end: { headers: ['Ende'], dates: ['dd.MM.yyyy HH:mm:ss'] },
          kind: { headers: ['Progr.'] },
          outcome: { headers: ['Bewertung'] },
          cycle_number: { headers: ['Ch.-Nr.'] },
          abort_text: { headers: ['Störmeldung'] },
          evacuation_s: { headers: ['Evak. [min:s]'], measure: 'mm:ss' },
          heat_up_s: { headers: ['Aufh. [min:s]'], measure: 'mm:ss' },
          exposure_s: { headers: ['Halten [min:s]'], measure: 'mm:ss' },
          drying_s: { headers: ['Trockn. [min:s]'], measure: 'mm:ss' },
          exposure_temperature_min_c: { headers: ['T min [°C]'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['T max [°C]'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['p Halten [bar abs]'], measure: 'bar absolute' },
          drain_temperature_c: { headers: ['T Ablauf [°C]'], measure: 'C' },
        },
        words: {
          kind: {
            Aufheizen: 'warm_up',
            'BD-Test': 'air_removal_test',
            'Instr. 134°C': 'production',
            'Lösungen 121°C': 'liquids',
          },
          outcome: { 'i.O.': 'completed', 'Abbruch Bed.': 'aborted', 'n.i.O.': 'failed' },
        },
        counts: { records: cycles.length, duplicates: 1, rejected: 1, skipped: 1 },
      },
      {
        file: 'Dichtigkeit_2024.csv',
        kind: 'leak_tests',
        decimal: ',',
        columns: {
          unit: { headers: ['Ger.'] },
          time: { headers: ['Datum', 'Uhrz.'], dates: ['dd.MM.yyyy HH:mm'] },
          leak_rate_kpa_min: { headers: ['Druckanst. [mbar/min]'], measure: 'mbar per min' },
          limit_kpa_min: { headers: ['zul. [mbar/min]'], measure: 'mbar per min' },
        },
        counts: { records: leaks.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Reinigung_Okt.csv',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Ger.'] },
          task: { headers: ['Tätigk.'] },
          time: { headers: ['Dat.'], dates: ['dd.MM.yyyy'] },
          state: { headers: ['Status'] },
          minutes: { headers: ['Dauer min'] },
          note: { headers: ['Bem.'] },
        },
        words: {
          task: { 'Kammer ger.': 'chamber', 'Abl. gespült': 'drain_flush', 'Sieb ger.': 'drain_strainer' },
          state: { 'erl.': 'done', 'nicht erl.': 'missed', 'entf.': 'not_due' },
        },
        counts: { records: 32, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** Germany: a workbook kept by hand: a wide sheet of a month with initials and strokes, tests with a retest, works by technicians, visual checks. */
export async function blatt(): Promise<BlindStyle> {
  const UNITS = ['Steri 1', 'Steri 2', 'Steri 3'];
  const TASKS = ['Ablaufsieb', 'Ablauf spülen', 'Kammerreinigung'];
  const wide = UNITS.flatMap((unit, line) =>
    TASKS.map((task, which) => [
      unit,
      task,
      ...Array.from({ length: 30 }, (_, day) => {
        const weekend = day % 7 === 1 || day % 7 === 2;
        if (which === 0) return weekend ? '-' : (day + line * 3) % 13 === 4 ? 'o' : 'x';
        if (which === 1) return day % 7 === 5 ? 'x' : '';
        return day === 9 + line * 5 ? 'x' : '';
      }),
      '',
    ]),
  );
  const marks = wide.flatMap((row) => row.slice(2)).filter((cell) => cell !== '').length;
  const datum = (text: string) => ({ value: new Date(text), format: 'dd.mm.yyyy' });
  const tests = madeUpLog(52, 3, '2024-11-04', 12, 0).filter(({ what }) => what === 'test');
  const testRows = tests.map((run) => [
    UNITS[run.unit]!,
    datum(`${at(run.end).date}T00:00:00Z`),
    { value: new Date(`1899-12-30T${at(run.end).clock.slice(0, 5)}:00Z`), format: 'hh:mm' },
    run.ended === 'bad' ? 'negativ' : run.ended === 'stopped' ? 'ungültig' : 'positiv',
    `Lot 77-${run.number % 3}`,
    run.ended === 'bad' ? 'Farbumschlag Mitte fehlt' : null,
  ]);
  const WORKS = ['Wartung', 'Reparatur', 'Grundreinigung Firma', 'Steuerung getauscht', 'stillgelegt'];
  const works = Array.from({ length: 21 }, (_, place) => {
    const from = Date.parse('2023-02-06') + place * 29 * 86_400_000;
    return [
      datum(at(from).date),
      datum(at(from + (place % 3) * 86_400_000).date),
      UNITS[place % 3]!,
      WORKS[place % 5]!,
      place % 5 === 3 ? 'ja' : 'nein',
      place % 5 === 1 ? 'Türdichtung' : null,
      `R-${9100 + place}`,
    ];
  });
  const looks = Array.from({ length: 24 }, (_, place) => [
    datum(at(Date.parse('2024-02-02') + place * 9 * 86_400_000).date),
    UNITS[place % 3]!,
    (place * 3) % 5,
    place % 6 === 1 ? 'ja' : 'nein',
    place % 7 === 2 ? 'Rand am Ablauf' : null,
  ]);
  return {
    name: 'blatt',
    zone: 'Europe/Vienna',
    files: {
      'Aushang Sterilisation.xlsx': await workbook([
        {
          name: 'Reinigungsplan',
          rows: [
            ['Reinigungsplan November 2024'],
            ['x = gemacht, o = vergessen, - = kein Betrieb'],
            ['Gerät', 'Arbeit', ...Array.from({ length: 30 }, (_, day) => day + 1), 'Summe'],
            ...wide,
          ],
        },
        { name: 'BD', rows: [['Gerät', 'Tag', 'Zeit', 'Befund', 'Testblatt', 'Anm.'], ...testRows] },
        {
          name: 'Technik',
          rows: [['von', 'bis', 'Gerät', 'Art der Arbeit', 'Neuvalid.', 'Anm.', 'Beleg'], ...works],
        },
        {
          name: 'Sichtkontrolle',
          rows: [['am', 'Gerät', 'Note 0-4', 'Rückst. nach Spülen', 'Anm.'], ...looks],
        },
      ]),
    },
    sources: [
      {
        file: 'Aushang Sterilisation.xlsx',
        sheet: 'Reinigungsplan',
        kind: 'cleanings',
        wide: 'day of month',
        columns: { unit: { headers: ['Gerät'] }, task: { headers: ['Arbeit'] } },
        words: {
          task: { Ablaufsieb: 'drain_strainer', 'Ablauf spülen': 'drain_flush', Kammerreinigung: 'chamber' },
          state: { x: 'done', o: 'missed', '-': 'not_due' },
        },
        counts: { records: marks, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Aushang Sterilisation.xlsx',
        sheet: 'BD',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Gerät'] },
          time: { headers: ['Tag', 'Zeit'] },
          result: { headers: ['Befund'] },
          note: { headers: ['Anm.'] },
        },
        words: { result: { positiv: null, negativ: null, ungültig: 'invalid' } },
        counts: { records: tests.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Aushang Sterilisation.xlsx',
        sheet: 'Technik',
        kind: 'service',
        columns: {
          unit: { headers: ['Gerät'] },
          from: { headers: ['von'] },
          to: { headers: ['bis'] },
          kind: { headers: ['Art der Arbeit'] },
          major: { headers: ['Neuvalid.'] },
          note: { headers: ['Anm.'] },
        },
        words: {
          kind: {
            Wartung: 'maintenance',
            Reparatur: 'repair',
            'Grundreinigung Firma': 'professional_cleaning',
            'Steuerung getauscht': 'controller_replaced',
            stillgelegt: 'out_of_service',
          },
        },
        counts: { records: 21, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Aushang Sterilisation.xlsx',
        sheet: 'Sichtkontrolle',
        kind: 'inspections',
        columns: {
          unit: { headers: ['Gerät'] },
          time: { headers: ['am'] },
          appearance: { headers: ['Note 0-4'] },
          residue_after_rinsing: { headers: ['Rückst. nach Spülen'] },
          note: { headers: ['Anm.'] },
        },
        counts: { records: 24, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
