import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import {
  clock,
  comma,
  isSunday,
  later,
  lines,
  wall,
  wave,
  windows1252,
  write,
} from '../blind-third/paper.ts';
import { sources } from './german-truth.ts';

const DAY_TIME = 'dd.MM.yyyy HH:mm';
const UNITS = ['Steri 1', 'Steri 2', 'Steri 3'];
const table = (rows: readonly (readonly (string | number)[])[]): Uint8Array => windows1252(lines(rows, ';'));

/** Exports of a German department in Windows-1252 with decimal commas, and its cleaning plan, a column a day. */
export async function german(): Promise<BlindStyle> {
  return {
    name: 'german',
    zone: 'Europe/Berlin',
    sources,
    files: {
      'Chargenuebersicht_Mai.csv': cycles(),
      'BD_Auswertung.csv': tests(),
      'Reinigungsplan Sterilisatoren.xlsx': await workbook([
        { name: 'Mai 2025', rows: plan('Mai 2025', 31) },
        { name: 'Juni 2025', rows: plan('Juni 2025', 30) },
      ]),
      'Medizintechnik.csv': jobs(),
    },
  };
}

/** 48 batches under four lines of preamble; one date is cut off, one row stands twice, a total ends the list. */
function cycles(): Uint8Array {
  const kinds = ['Aufheizcharge', 'Bowie & Dick', 'Universal 134°C', 'Gummi 121°C'];
  const rows: (string | number)[][] = [
    ['Chargenübersicht Sterilisation'],
    ['Zeitraum', '05.05.2025 - 17.05.2025'],
    ['Erstellt', '19.05.2025 07:41'],
    [],
    'Charge;Gerät;Programm;Datum;Startzeit;Endzeit;Status;Störmeldung;Evakuieren [mm:ss];Aufheizen [mm:ss];Haltezeit [mm:ss];Trocknen [mm:ss];T min [°C];T max [°C];Druck abs. [mbar];Freigabe durch'.split(
      ';',
    ),
  ];
  for (let at = 0; at < 48; at++) {
    const start = wall('2025-05-05', Math.floor(at / 4), 350 + 80 * (at % 4));
    const rubber = at % 4 === 3;
    const bad = at === 18 || at === 39;
    rows.push([
      22040 + at,
      UNITS[Math.floor(at / 4) % 3]!,
      kinds[at % 4]!,
      at === 25 ? '11.05.' : write(start, 'dd.MM.yyyy'),
      write(start, 'HH:mm'),
      write(later(start, bad ? 12 : 52 + (at % 5)), 'HH:mm'),
      bad ? 'Abbruch' : at === 31 ? 'n.i.O.' : 'i.O.',
      at === 18
        ? 'Evakuierung zu langsam'
        : at === 39
          ? 'Abbruch durch Bediener'
          : at === 31
            ? 'Temperaturband verlassen'
            : '',
      ...(bad
        ? Array(7).fill('')
        : [
            clock(Number(wave(at, 410, 15, 0))),
            clock(Number(wave(at, 145, 8, 0, 3))),
            clock(rubber ? 1215 : at % 4 === 1 ? 215 : 305),
            clock(rubber ? 900 : at % 4 < 2 ? 60 : 720),
            comma(wave(at, rubber ? 121.5 : 134.4, 0.2, 1)),
            comma(wave(at, rubber ? 122.6 : 135.5, 0.2, 1, 3)),
            wave(at, rubber ? 2110 : 3130, 20, 0, 5),
          ]),
      ['Schicht A', 'Schicht B'][at % 2]!,
    ]);
    if (at === 22) rows.push(rows.at(-1)!);
  }
  return table([...rows, ['Summe', '48 Chargen', ...Array(14).fill('')]]);
}

function tests(): Uint8Array {
  const rows: (string | number)[][] = [
    ['Testdatum', 'Uhrzeit', 'Gerät', 'Charge', 'Farbumschlag', 'Beurteilt von', 'Bemerkung', 'Erfasst am'],
  ];
  for (let at = 0; at < 30; at++) {
    const time = wall('2025-05-05', Math.floor(at / 3), 455 + 6 * (at % 3));
    rows.push([
      write(time, 'dd.MM.yyyy'),
      write(time, 'HH:mm'),
      UNITS[at % 3]!,
      22041 + at * 4,
      at === 13 ? 'ungleichmäßig' : at === 22 ? 'nicht auswertbar' : 'gleichmäßig',
      ['Ki', 'Me', 'Wa'][at % 3]!,
      at === 13 ? 'heller Fleck in der Mitte' : at === 22 ? 'Testblatt nass geworden' : '',
      write(later(time, 25 + (at % 9)), DAY_TIME),
    ]);
  }
  return table(rows);
}

/** Legend above the table, three units with two tasks each; nothing is filled in on Sundays. */
function plan(month: string, days: number): TestCell[][] {
  const first = month.startsWith('Mai') ? '2025-05-01' : '2025-06-01';
  const rows: TestCell[][] = [
    [`Reinigungsplan ${month}`],
    ['x = erledigt, o = nicht erledigt, / = Gerät nicht in Betrieb'],
    [],
    ['Sterilisator', 'Arbeit', ...Array.from({ length: days }, (_, at) => at + 1)],
  ];
  for (let unit = 0; unit < 3; unit++)
    for (const weekly of [false, true])
      rows.push([
        UNITS[unit]!,
        weekly ? 'Kammer reinigen' : 'Ablaufsieb reinigen',
        ...Array.from({ length: days }, (_, at): TestCell => {
          const date = wall(first, at);
          if (isSunday(date) || (weekly && date.getUTCDay() !== 1 + unit)) return null;
          return (at + unit) % 11 === 4 ? 'o' : !weekly && (at + unit) % 13 === 6 ? '/' : 'x';
        }),
      ]);
  return rows;
}

const jobs = (): Uint8Array =>
  windows1252(
    [
      'Auftrag;Gerät;Beginn;Ende;Auftragsart;Große Reparatur;Text',
      'MT-771;Steri 1;14.01.2025 08:00;14.01.2025 11:30;Wartung;nein;Halbjahreswartung',
      'MT-772;Steri 2;15.01.2025 08:00;15.01.2025 11:45;Wartung;nein;Halbjahreswartung',
      'MT-790;Steri 3;27.02.2025 13:10;28.02.2025 16:00;Instandsetzung;ja;Vakuumpumpe ersetzt',
      'MT-803;Steri 2;24.03.2025 07:00;24.03.2025 15:00;Grundreinigung durch Fremdfirma;nein;',
      'MT-811;Steri 1;22.04.2025 07:00;25.04.2025 12:00;Austausch der Steuerung;ja;Abnahme folgt',
      'MT-820;Steri 3;19.05.2025 00:00;23.05.2025 06:00;Stilllegung;nein;Umbau des Raums',
      '',
    ].join('\r\n'),
  );
