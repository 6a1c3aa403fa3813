import { workbook } from '../../ingest/workbook.ts';
import { comma, madeUpDays, minutesSeconds, parts, rows, serial } from './made-up-days.ts';

type Files = Record<string, string | Uint8Array>;

/** Text of an older machine: one byte a letter. All letters used here are in ISO 8859-1. */
const oneByte = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

/** A central department: semicolon, one byte a letter, decimal commas, mbar absolute; a wide sheet in text with its month in the file's name. */
export async function zentrale(): Promise<Files> {
  const cycles = madeUpDays(21, 3, '2025-04-01', 30);
  const names = ['Steri 1', 'Steri 2', 'Steri 3'];
  const day = (time: number) => `${parts(time).dd}.${parts(time).MM}.${parts(time).yyyy}`;
  const time = (at: number) => `${day(at)} ${parts(at).HH}:${parts(at).mm}:${parts(at).ss}`;
  const programs = {
    warm_up: 'Aufheizen',
    air_removal_test: 'Bowie-Dick',
    leak_test: 'Vakuumtest',
    production: 'Instrumente 134',
    liquids: 'Flüssigkeiten 121',
  };
  const ends = { completed: 'i.O.', aborted: 'Abbruch', failed: 'n.i.O.' };
  const faults = [
    'Fraktionierung Zeitüberschreitung',
    'Abbruch durch Bediener',
    'Dampfdruck zu niedrig',
    'Türdichtung undicht',
  ];
  const marks = ['x', '-', 'x', 'x', '', 'x', 'x'];
  return {
    'Chargen_2025-04.csv': oneByte(
      rows(';', [
        [
          'Gerät',
          'Chg.-Nr.',
          'Programm',
          'Chargenstart',
          'Chargenende',
          'Evak.zeit [mm:ss]',
          'Steigzeit [mm:ss]',
          'Haltezeit [mm:ss]',
          'Trockenzeit [mm:ss]',
          'Tmin Halten [°C]',
          'Tmax Halten [°C]',
          'Druck Halten [mbar]',
          'Ergebnis',
          'Störung',
          'Bediener',
        ],
        ...cycles.map((one) => [
          names[one.unit]!,
          String(one.number),
          programs[one.kind],
          time(one.start),
          time(one.end),
          minutesSeconds(one.evacuation),
          minutesSeconds(one.heatUp),
          minutesSeconds(one.exposure),
          minutesSeconds(one.drying),
          comma(one.low, 1),
          comma(one.high, 1),
          comma(one.pressure * 10, 0),
          ends[one.outcome],
          one.outcome === 'completed' ? '' : faults[one.abort]!,
          'MK',
        ]),
      ]),
    ),
    'BD-Test.csv': oneByte(
      rows(';', [
        ['Datum', 'Uhrzeit', 'Gerät', 'Chg.-Nr.', 'BD-Test bestanden', 'Bemerkung'],
        ...cycles
          .filter(({ kind }) => kind === 'air_removal_test')
          .map((one) => [
            day(one.end),
            `${parts(one.end).HH}:${parts(one.end).mm}`,
            names[one.unit]!,
            String(one.number),
            one.passed ? 'ja' : 'nein',
            one.passed ? '' : 'Umschlag unvollständig',
          ]),
      ]),
    ),
    'Vakuumtest.csv': oneByte(
      rows(';', [
        ['Prüfdatum', 'Gerät', 'Leckrate [mbar/min]', 'Grenzwert [mbar/min]', 'Bewertung'],
        ...cycles
          .filter(({ kind }) => kind === 'leak_test')
          .map((one) => [
            time(one.end),
            names[one.unit]!,
            comma(one.leak * 10, 2),
            '1,30',
            one.leak <= 0.13 ? 'i.O.' : 'n.i.O.',
          ]),
      ]),
    ),
    'Siebreinigung 2025-04.csv': oneByte(
      rows(';', [
        ['Gerät', ...Array.from({ length: 30 }, (_, at) => String(at + 1))],
        ...names.map((name, unit) => [
          name,
          ...Array.from({ length: 30 }, (_, at) => marks[(at + unit * 2) % 7]!),
        ]),
      ]),
    ),
  };
}

/** A workbook: a sheet a unit, header in two lines, days as serial numbers; a list of cleaning with the weekday before the date. */
export async function mappe(): Promise<Files> {
  const cycles = madeUpDays(22, 2, '2025-09-01', 20);
  const kinds = {
    warm_up: 'Leercharge',
    air_removal_test: 'BD',
    leak_test: 'Dichtheit',
    production: 'Charge 134°',
    liquids: 'Charge 121°',
  };
  const ends = { completed: 'ordnungsgemäß', aborted: 'abgebrochen', failed: 'fehlerhaft' };
  const week = ['So', 'Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa'];
  const sheet = (unit: number) => [
    ['Chargenprotokoll 2025'],
    ['Zyklus', '', 'Beginn', 'Ende', 'Phasendauer (s)', '', '', 'Sterilisieren', '', '', 'Befund', ''],
    [
      'lfd. Nr.',
      'Programm',
      '',
      '',
      'Vorvakuum',
      'Aufheizen',
      'Plateau',
      'T min °C',
      'T max °C',
      'p bar abs',
      'Status',
      'Meldung',
    ],
    ...cycles
      .filter((one) => one.unit === unit)
      .map((one) => [
        one.number,
        kinds[one.kind],
        Number(serial(one.start).toFixed(6)),
        Number(serial(one.end).toFixed(6)),
        one.evacuation,
        one.heatUp,
        one.exposure,
        Number(one.low.toFixed(1)),
        Number(one.high.toFixed(1)),
        Number((one.pressure / 100).toFixed(2)),
        ends[one.outcome],
        one.outcome === 'completed' ? null : 'Dampfmangel',
      ]),
  ];
  const date = (at: number) => `${week[parts(at).weekday]}, ${parts(at).dd}.${parts(at).MM}.${parts(at).yy}`;
  return {
    'Protokolle.xlsx': await workbook([
      { name: 'A1', rows: sheet(0) },
      { name: 'A2', rows: sheet(1) },
    ]),
    'Reinigungsnachweis.csv': rows(';', [
      ['Datum', 'Sterilisator', 'Tätigkeit', 'erledigt', 'Anlass', 'Hdz.'],
      ...cycles
        .filter(({ kind }) => kind === 'warm_up')
        .map((one, at) => [
          date(one.start),
          `A${one.unit + 1}`,
          at % 10 === 4 ? 'Kammerreinigung' : at % 10 === 9 ? 'Ablauf gespült' : 'Ablaufsieb gereinigt',
          at % 11 === 5 ? 'nein' : 'ja',
          at % 20 === 4 ? 'nach Störung' : 'turnusmäßig',
          'mk',
        ]),
    ]),
    'Bowie-Dick.csv': rows(';', [
      ['Datum', 'Sterilisator', 'Farbumschlag', 'Bemerkungen'],
      ...cycles
        .filter(({ kind }) => kind === 'air_removal_test')
        .map((one) => [
          date(one.start),
          `A${one.unit + 1}`,
          one.passed ? 'vollständig' : 'unvollständig',
          '',
        ]),
    ]),
  };
}
