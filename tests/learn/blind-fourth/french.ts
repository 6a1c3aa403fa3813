import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { later, lines, wall, wave, windows1252, write } from '../blind-third/paper.ts';
import { sources } from './french-truth.ts';

const UNITS = ['Autoclave 1', 'Autoclave 2'];
const day = (time: Date): TestCell => ({ value: time, format: 'dd/mm/yyyy' });

/** Register of a French hospital: a workbook whose cycles have a header of two rows, and two files in Windows-1252. */
export async function french(): Promise<BlindStyle> {
  const sheets = [
    { name: 'Cycles', rows: cycles() },
    { name: 'Bowie-Dick', rows: tests() },
    { name: 'Étanchéité', rows: leaks() },
  ];
  return {
    name: 'french',
    zone: 'Europe/Paris',
    sources,
    files: {
      'Registre stérilisation 2025.xlsx': await workbook(sheets),
      'Nettoyage autoclaves.csv': cleaning(),
      'Interventions.csv': jobs(),
    },
  };
}

/** 40 cycles, a blank row after each day; one has no program. */
function cycles(): TestCell[][] {
  const programs = [
    'Mise en chauffe',
    'Bowie-Dick',
    'Instruments 134 °C',
    'ATNC 134 °C 18 min',
    'Caoutchouc 121 °C',
  ];
  const rows: TestCell[][] = [
    'Identification||||Horaires||Plateau||||Conclusion||'.split('|').map((text) => text || null),
    "Date|Appareil|N° de cycle|Programme|Début|Fin|Durée (min)|T° mini (°C)|T° maxi (°C)|Pression abs. (mbar)|Résultat|Cause d'arrêt|Visa".split(
      '|',
    ),
  ];
  for (let at = 0; at < 40; at++) {
    const start = wall('2025-03-17', Math.floor(at / 5), 380 + 85 * (at % 5));
    const cold = at % 5 === 4;
    const bad = at === 17 || at === 28;
    rows.push([
      day(wall('2025-03-17', Math.floor(at / 5))),
      UNITS[Math.floor(at / 5) % 2]!,
      6020 + at,
      at === 22 ? null : programs[at % 5]!,
      write(start, 'HH:mm'),
      write(later(start, bad ? 14 : 58 + (at % 6)), 'HH:mm'),
      bad ? null : cold ? 20 : at % 5 === 3 ? 18 : at % 5 === 1 ? 3.5 : 4,
      bad ? null : Number(wave(at, cold ? 121.4 : 134.6, 0.2, 1)),
      bad ? null : Number(wave(at, cold ? 122.3 : 135.8, 0.2, 1, 3)),
      bad ? null : Number(wave(at, cold ? 2095 : 3150, 18, 0, 5)),
      bad ? 'Cycle interrompu' : at === 33 ? 'Non conforme' : 'Conforme',
      at === 17
        ? 'Défaut de vidange'
        : at === 28
          ? 'Arrêt opérateur'
          : at === 33
            ? 'Température hors tolérance'
            : null,
      ['AD', 'CP'][at % 2]!,
    ]);
    if (at % 5 === 4) rows.push([]);
  }
  return rows;
}

/** 28 tests with the time of day as a cell of its own; of one that is to be read again nobody can say how it came out. */
function tests(): TestCell[][] {
  const rows: TestCell[][] = [
    ['Date', 'Heure', 'Appareil', 'N° de cycle', 'Virage du test', 'Lu par', 'Observations'],
  ];
  for (let at = 0; at < 28; at++)
    rows.push([
      day(wall('2025-03-17', Math.floor(at / 2))),
      { value: wall('1899-12-30', 0, 470 + 7 * (at % 2) + (at % 3)), format: 'hh:mm' },
      UNITS[at % 2]!,
      6021 + at * 5,
      at === 8 ? 'Non homogène' : at === 17 ? 'À relire' : 'Homogène',
      ['AD', 'CP'][at % 2]!,
      at === 8 ? 'tache claire au centre' : null,
    ]);
  return rows;
}

function leaks(): TestCell[][] {
  const rows: TestCell[][] = [
    ["Test d'étanchéité hebdomadaire"],
    [],
    ['Date', 'Appareil', 'N° de cycle', 'Remontée de pression (mbar/min)', 'Limite (mbar/min)', 'Visa'],
  ];
  for (let at = 0; at < 16; at++)
    rows.push([
      day(wall('2025-02-03', 7 * Math.floor(at / 2))),
      UNITS[at % 2]!,
      5800 + at * 14,
      Number(wave(at, 0.6, 0.3, 2)),
      1.3,
      'AD',
    ]);
  return rows;
}

function cleaning(): Uint8Array {
  const jobs = ['Crépine', 'Chambre', "Rinçage de l'évacuation"];
  const rows: (string | number)[][] = [
    [
      'Date',
      'Heure',
      'Appareil',
      'Opération',
      'Réalisé (O/N/SO)',
      'Durée (min)',
      'Motif',
      'Observations',
      'Visa',
    ],
  ];
  for (let at = 0; at < 27; at++) {
    const time = wall('2025-03-17', Math.floor(at / 2), 365 + 9 * (at % 2) + (at % 4));
    const state = at % 9 === 5 ? 'N' : at === 16 ? 'SO' : 'O';
    rows.push([
      write(time, 'dd/MM/yyyy'),
      write(time, 'HH:mm'),
      UNITS[at % 2]!,
      jobs[Math.floor(at / 2) % 3]!,
      state,
      state === 'O' ? 8 + (at % 5) * 3 : '',
      at === 10 ? 'Suite à un test non conforme' : 'Entretien programmé',
      state === 'N' ? "manque d'effectif" : '',
      'AD',
    ]);
  }
  return windows1252(lines(rows, ';'));
}

const jobs = (): Uint8Array =>
  windows1252(
    [
      'N° BI;Équipement;Du;Au;Nature;Réparation majeure;Détail',
      'BI-201;Autoclave 1;14/01/2025 08:30;14/01/2025 12:00;Maintenance préventive;non;Visite semestrielle',
      'BI-202;Autoclave 2;15/01/2025 08:30;15/01/2025 12:15;Maintenance préventive;non;Visite semestrielle',
      'BI-217;Autoclave 2;20/02/2025 14:00;24/02/2025 17:00;Dépannage;oui;Pompe à vide remplacée',
      'BI-221;Autoclave 1;13/03/2025 07:00;13/03/2025 16:00;Nettoyage par prestataire;non;',
      "BI-230;Autoclave 1;22/04/2025 08:00;23/04/2025 18:00;Remplacement de l'automate;oui;Requalifié ensuite",
      'BI-234;Autoclave 2;28/04/2025 00:00;05/05/2025 06:00;Mise hors service;non;Travaux vapeur',
      '',
    ].join('\r\n'),
  );
