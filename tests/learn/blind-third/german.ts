import type { BlindStyle } from '../blind/make-blind.ts';
import { clock, comma, counts, later, lines, wall, wave, windows1252, write } from './paper.ts';

/** A German hospital: semicolons, decimal comma, Windows code page; a line of sums at the end. */
export async function german(): Promise<BlindStyle> {
  const cycles: (string | number)[][] = [
    ['Chargenliste 01.11.2024 bis 30.11.2024'],
    [],
    [
      'Gerät',
      'Chargennr.',
      'Programm',
      'Beginn',
      'Ende',
      'Evakuierung [mm:ss]',
      'Aufheizzeit [mm:ss]',
      'Plateauzeit [mm:ss]',
      'Temp. min. [°C]',
      'Temp. max. [°C]',
      'Druck [mbar abs.]',
      'Status',
      'Störmeldung',
      'Freigabe durch',
    ],
  ];
  const programs = ['Aufheizen', 'Bowie-Dick-Test', 'Instrumente 134°C', 'Textilien 134°C', 'Gummi 134°C'];
  for (let at = 0; at < 40; at++) {
    const start = wall('2024-11-04', Math.floor(at / 4), 350 + 70 * (at % 4) + (at % 9));
    const bad = at === 9 || at === 31;
    cycles.push([
      `Dampf ${1 + (at % 2)}`,
      23_100 + at,
      programs[(at * 2 + Math.floor(at / 10)) % 5]!,
      write(start, 'dd.MM.yyyy HH:mm:ss'),
      write(later(start, 45 + (at % 6)), 'dd.MM.yyyy HH:mm:ss'),
      clock(720 + ((at * 13) % 40)),
      bad ? '' : clock(150 + ((at * 7) % 30)),
      bad ? '' : clock(300 + (at % 5)),
      bad ? '' : comma(wave(at, 134.3, 0.2, 1)),
      bad ? '' : comma(wave(at, 135.4, 0.3, 1, 5)),
      bad ? '' : wave(at, 3120, 20, 0),
      bad ? 'Abbruch' : at === 20 ? 'fehlerhaft' : 'i.O.',
      bad ? 'Vakuum nicht erreicht' : '',
      'Kz. 14',
    ]);
  }
  cycles.push(['Summe', '40', '', '', '', '', '', '', '', '', '', '', '', '']);
  const leaks: (string | number)[][] = [
    [
      'Prüfdatum',
      'Uhrzeit',
      'Gerät',
      'Anfangsdruck (mbar)',
      'Enddruck (mbar)',
      'Leckrate (mbar/min)',
      'Grenzwert (mbar/min)',
      'Bewertung',
    ],
  ];
  for (let at = 0; at < 20; at++)
    leaks.push([
      write(wall('2024-09-02', 7 * Math.floor(at / 2)), 'dd.MM.yyyy'),
      write(wall('2024-09-02', 0, 335 + (at % 6)), 'HH:mm'),
      `Dampf ${1 + (at % 2)}`,
      comma(wave(at, 48, 3, 1)),
      comma(wave(at, 52, 3, 1)),
      comma(wave(at, 0.4, 0.2, 2, 3)),
      '1,3',
      'bestanden',
    ]);
  leaks.push(leaks[7]!);
  const tests: (string | number)[][] = [
    ['Datum', 'Gerät', 'Chargennr.', 'Ergebnis Bowie-Dick', 'Bemerkung', 'Erfasst am'],
  ];
  for (let at = 0; at < 24; at++) {
    const time = wall('2024-11-04', Math.floor(at / 2), 395 + 12 * (at % 2));
    tests.push([
      write(time, 'dd.MM.yyyy HH:mm'),
      `Dampf ${1 + (at % 2)}`,
      23_101 + at * 2,
      at === 7 ? 'nicht bestanden' : at === 15 ? 'ungültig' : 'bestanden',
      at === 7 ? 'heller Fleck in der Mitte' : '',
      write(later(time, 25), 'dd.MM.yyyy HH:mm'),
    ]);
  }
  return {
    name: 'german',
    zone: 'Europe/Berlin',
    sources: [
      {
        file: 'Chargenliste',
        kind: 'cycles',
        decimal: ',',
        columns: {
          unit: { headers: ['Gerät'] },
          start: { headers: ['Beginn'], dates: ['dd.MM.yyyy HH:mm:ss'] },
          end: { headers: ['Ende'], dates: ['dd.MM.yyyy HH:mm:ss'] },
          kind: { headers: ['Programm'] },
          outcome: { headers: ['Status'] },
          cycle_number: { headers: ['Chargennr.'] },
          abort_text: { headers: ['Störmeldung'] },
          evacuation_s: { headers: ['Evakuierung [mm:ss]'], measure: 'mm:ss' },
          heat_up_s: { headers: ['Aufheizzeit [mm:ss]'], measure: 'mm:ss' },
          exposure_s: { headers: ['Plateauzeit [mm:ss]'], measure: 'mm:ss' },
          exposure_temperature_min_c: { headers: ['Temp. min. [°C]'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Temp. max. [°C]'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Druck [mbar abs.]'], measure: 'mbar absolute' },
        },
        words: {
          kind: {
            Aufheizen: 'warm_up',
            'Bowie-Dick-Test': 'air_removal_test',
            'Instrumente 134°C': 'production',
            'Textilien 134°C': 'production',
            'Gummi 134°C': 'production',
          },
          outcome: { 'i.O.': 'completed', Abbruch: 'aborted', fehlerhaft: 'failed' },
        },
        counts: counts(40, 1),
      },
      {
        file: 'Dichtheit',
        kind: 'leak_tests',
        decimal: ',',
        columns: {
          unit: { headers: ['Gerät'] },
          time: { headers: ['Prüfdatum', 'Uhrzeit'], dates: ['dd.MM.yyyy HH:mm'] },
          leak_rate_kpa_min: { headers: ['Leckrate (mbar/min)'], measure: 'mbar per min' },
          limit_kpa_min: { headers: ['Grenzwert (mbar/min)'], measure: 'mbar per min' },
        },
        counts: counts(20, 0, 0, 1),
      },
      {
        file: 'Dampfdurchdringung',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Gerät'] },
          time: { headers: ['Datum'], dates: ['dd.MM.yyyy HH:mm'] },
          result: { headers: ['Ergebnis Bowie-Dick'] },
          cycle_number: { headers: ['Chargennr.'] },
          note: { headers: ['Bemerkung'] },
          entered_at: { headers: ['Erfasst am'], dates: ['dd.MM.yyyy HH:mm'] },
        },
        words: { result: { bestanden: 'pass', 'nicht bestanden': 'fail', ungültig: 'invalid' } },
        counts: counts(24),
      },
    ],
    files: {
      'Chargenliste_2024-11.csv': windows1252(lines(cycles, ';')),
      'Dichtheit.csv': windows1252(lines(leaks, ';')),
      'Dampfdurchdringung.csv': windows1252(lines(tests, ';')),
    },
  };
}

/** A Swiss regional hospital: lists kept by hand in a spreadsheet and saved as text, decimal point, no sharp s. */
export async function swiss(): Promise<BlindStyle> {
  const cleanings: (string | number)[][] = [
    ['Nr.', 'Datum', 'Von', 'Bis', 'Sterilisator', 'Arbeit', 'Erledigt', 'Anlass', 'Visum', 'Bemerkungen'],
  ];
  const works = ['Sieb reinigen', 'Kammer reinigen', 'Sieb reinigen', 'Ablauf spülen'];
  for (let at = 0; at < 32; at++) {
    const time = wall('2025-01-06', at, 1005 + (at % 4) * 5);
    const missed = at % 11 === 6;
    cleanings.push([
      at + 1,
      write(time, 'd.M.yyyy'),
      write(time, 'HH:mm'),
      write(later(time, 15 + (at % 3) * 10), 'HH:mm'),
      ['Ost', 'West'][at % 2]!,
      works[Math.floor(at / 2) % 4]!,
      missed ? 'nein' : 'ja',
      at === 14 ? 'nach Störung' : 'gemäss Plan',
      ['hb', 'ru'][at % 2]!,
      at === 14 ? 'weisser Belag am Boden' : '',
    ]);
  }
  const services: (string | number)[][] = [
    [
      'Sterilisator',
      'Stillstand ab',
      'Wieder in Betrieb',
      'Art',
      'Grosse Reparatur',
      'Beschreibung',
      'Kosten CHF',
    ],
  ];
  const kinds = ['Wartung', 'Reparatur', 'Ausser Betrieb', 'Steuerung ersetzt', 'Wartung'];
  for (let at = 0; at < 16; at++)
    services.push([
      ['Ost', 'West'][at % 2]!,
      write(wall('2022-02-07', 64 * at, 480), 'd.M.yyyy HH:mm'),
      write(wall('2022-02-07', 64 * at + (at % 3), 960), 'd.M.yyyy HH:mm'),
      kinds[at % 5]!,
      at % 5 === 3 || at === 6 ? 'ja' : 'nein',
      ['Filter und Dichtung', 'Pumpe revidiert', 'Umbau', 'neue Steuerung', 'Jahreswartung'][at % 5]!,
      wave(at, 1450, 900, 2),
    ]);
  const looks: (string | number)[][] = [
    [
      'Kontrolldatum',
      'Sterilisator',
      'Aussehen Kammer (0-4)',
      'Rückstand nach Spülen',
      'Bemerkungen',
      'Kontrolliert von',
    ],
  ];
  for (let at = 0; at < 18; at++)
    looks.push([
      write(wall('2025-01-10', 7 * Math.floor(at / 2)), 'd.M.yyyy'),
      ['Ost', 'West'][at % 2]!,
      (at * 2) % 5,
      at % 6 === 4 ? 'ja' : 'nein',
      at === 10 ? 'braune Flecken' : '',
      ['hb', 'ru'][at % 2]!,
    ]);
  return {
    name: 'swiss',
    zone: 'Europe/Zurich',
    sources: [
      {
        file: 'Reinigung',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Sterilisator'] },
          task: { headers: ['Arbeit'] },
          start: { headers: ['Datum', 'Von'], dates: ['d.M.yyyy HH:mm'] },
          time: { headers: ['Datum', 'Bis'], dates: ['d.M.yyyy HH:mm'] },
          state: { headers: ['Erledigt'] },
          reason: { headers: ['Anlass'] },
          note: { headers: ['Bemerkungen'] },
        },
        words: {
          task: {
            'Sieb reinigen': 'drain_strainer',
            'Kammer reinigen': 'chamber',
            'Ablauf spülen': 'drain_flush',
          },
          state: { ja: 'done', nein: 'missed' },
          reason: { 'gemäss Plan': 'routine', 'nach Störung': 'reactive' },
        },
        counts: counts(32),
      },
      {
        file: 'Unterhalt',
        kind: 'service',
        columns: {
          unit: { headers: ['Sterilisator'] },
          from: { headers: ['Stillstand ab'], dates: ['d.M.yyyy HH:mm'] },
          to: { headers: ['Wieder in Betrieb'], dates: ['d.M.yyyy HH:mm'] },
          kind: { headers: ['Art'] },
          major: { headers: ['Grosse Reparatur'] },
          note: { headers: ['Beschreibung'] },
        },
        words: {
          kind: {
            Wartung: 'maintenance',
            Reparatur: 'repair',
            'Ausser Betrieb': 'out_of_service',
            'Steuerung ersetzt': 'controller_replaced',
          },
        },
        counts: counts(16),
      },
      {
        file: 'Sichtkontrolle',
        kind: 'inspections',
        columns: {
          unit: { headers: ['Sterilisator'] },
          time: { headers: ['Kontrolldatum'], dates: ['d.M.yyyy'] },
          appearance: { headers: ['Aussehen Kammer (0-4)'] },
          residue_after_rinsing: { headers: ['Rückstand nach Spülen'] },
          note: { headers: ['Bemerkungen'] },
        },
        counts: counts(18),
      },
    ],
    files: {
      'Reinigung 2025.csv': windows1252(lines(cleanings, ';')),
      'Unterhalt.csv': windows1252(lines(services, ';')),
      'Sichtkontrolle.csv': windows1252(lines(looks, ';')),
    },
  };
}
