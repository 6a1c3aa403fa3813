import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { comma, wall, wave, write } from '../blind-third/paper.ts';
import { sources } from './austrian-truth.ts';

/** Two workbooks of an Austrian dental clinic. The first has one autoclave and names it nowhere in its tables; dates in it are texts with the year in two digits. */
export async function austrian(): Promise<BlindStyle> {
  return {
    name: 'austrian',
    zone: 'Europe/Vienna',
    sources,
    files: {
      'Testbuch Ordination.xlsx': await workbook([
        { name: 'Dampfdurchdringung', rows: tests() },
        { name: 'Vakuumtest', rows: leaks() },
      ]),
      'Pflegeheft Prothetiklabor.xlsx': await workbook([
        { name: 'Pflege', rows: care() },
        { name: 'Kürzel', rows: legend() },
      ]),
    },
  };
}

/** 33 tests; one day in words is no date. */
function tests(): TestCell[][] {
  const rows: TestCell[][] = [
    ['Dampfdurchdringungstest (Bowie-Dick), täglich vor der ersten Charge'],
    ['Tag', 'Uhrzeit', 'Zyklus Nr.', 'bestanden?', 'Handzeichen', 'Anmerkung'],
  ];
  for (let at = 0; at < 33; at++) {
    const time = wall('2025-01-13', at, 438 + ((at * 5) % 17));
    rows.push([
      at === 15 ? 'Montag' : write(time, 'dd.MM.yy'),
      write(time, 'HH:mm'),
      811 + at * 6,
      at === 9 ? 'nein' : 'ja',
      ['E.', 'L.'][at % 2]!,
      at === 9 ? 'Indikator in der Mitte hell, Techniker verständigt' : null,
    ]);
  }
  return rows;
}

function leaks(): TestCell[][] {
  const rows: TestCell[][] = [
    ['Vakuumtest (Dichtheit), wöchentlich'],
    ['Tag', 'Uhrzeit', 'Zyklus Nr.', 'Druckanstieg mbar / 10 min', 'zulässig mbar / 10 min', 'Handzeichen'],
  ];
  for (let at = 0; at < 14; at++) {
    const time = wall('2025-01-13', 7 * at, 421 + (at % 6));
    rows.push([
      write(time, 'dd.MM.yy'),
      write(time, 'HH:mm'),
      810 + at * 30,
      comma(wave(at, 6.5, 2, 1)),
      '13,0',
      'E.',
    ]);
  }
  return rows;
}

/** 30 entries in letters that the second sheet explains. */
function care(): TestCell[][] {
  const rows: TestCell[][] = [
    ['Datum', 'Autoklav', 'Tätigkeit', 'Status', 'Dauer in Min.', 'Anlass', 'Anm.', 'Unterschrift'],
  ];
  for (let at = 0; at < 30; at++) {
    const missed = at % 7 === 4;
    rows.push([
      { value: wall('2025-03-03', at), format: 'dd.mm.yyyy' },
      at % 2 ? 'Klein' : 'Groß',
      ['S', 'K', 'A'][Math.floor(at / 2) % 3]!,
      missed ? 'N' : at === 13 ? 'E' : 'J',
      missed || at === 13 ? null : 10 + 5 * (at % 4),
      at === 8 ? 'nach Störung' : 'planmäßig',
      missed ? 'keine Zeit' : null,
      missed ? null : 'M.',
    ]);
  }
  return rows;
}

const legend = (): TestCell[][] => [
  ['Kürzel', 'Bedeutung'],
  ['S', 'Sieb im Ablauf gereinigt'],
  ['K', 'Kammer gereinigt'],
  ['A', 'Ablauf durchgespült'],
  ['J', 'ja, erledigt'],
  ['N', 'nein, nicht erledigt'],
  ['E', 'entfällt, Gerät nicht benützt'],
];
