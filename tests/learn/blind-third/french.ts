import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { comma, counts, later, lines, wall, wave, withMark, write } from './paper.ts';

/** A French hospital: semicolons, decimal comma, UTF-8 with its mark; pressures in bar. */
export async function french(): Promise<BlindStyle> {
  const cycles: (string | number)[][] = [
    [
      'Autoclave',
      'N° cycle',
      'Date',
      'Heure début',
      'Heure fin',
      'Type de cycle',
      'Temps de montée (s)',
      'Durée plateau (s)',
      'Durée séchage (min)',
      'T° mini plateau (°C)',
      'T° maxi plateau (°C)',
      'Pression plateau (bar abs)',
      'Résultat',
      'Défaut',
      'Conducteur',
    ],
  ];
  const kinds = ['Préchauffage', 'Bowie-Dick', 'Prion 134', 'Prion 134', 'Caoutchouc 134', 'Test de fuite'];
  for (let at = 0; at < 36; at++) {
    const start = wall('2025-06-02', Math.floor(at / 3), 370 + 80 * (at % 3) + (at % 4));
    const bad = at === 10 || at === 29;
    cycles.push([
      `Autoclave ${1 + (at % 3)}`,
      `${5200 + at}`,
      write(start, 'dd/MM/yyyy'),
      write(start, 'HH:mm'),
      write(later(start, 52 + (at % 6)), 'HH:mm'),
      kinds[(at * 5 + Math.floor(at / 6)) % 6]!,
      wave(at, 190, 15, 0),
      bad ? '' : 1080 + (at % 4),
      bad ? '' : 15 + (at % 3) * 5,
      bad ? '' : comma(wave(at, 134.5, 0.2, 1)),
      bad ? '' : comma(wave(at, 135.6, 0.3, 1, 3)),
      bad ? '' : comma(wave(at, 3.14, 0.03, 2)),
      bad ? 'Interrompu' : at === 20 ? 'Non conforme' : 'Conforme',
      bad ? 'Vide non atteint' : '',
      ['Agent 2', 'Agent 5'][at % 2]!,
    ]);
  }
  const tests: (string | number)[][] = [
    ['Essai de pénétration de vapeur'],
    ['Date et heure', 'Autoclave', 'N° cycle', 'Lot du paquet', 'Lecture', 'Observations'],
  ];
  for (let at = 0; at < 27; at++)
    tests.push([
      write(wall('2025-06-02', Math.floor(at / 3), 425 + 9 * (at % 3)), 'dd/MM/yyyy HH:mm'),
      `Autoclave ${1 + (at % 3)}`,
      5201 + at,
      'L-118',
      at === 8 ? 'Non conforme' : at === 19 ? 'Non valide' : 'Conforme',
      at === 8 ? 'zone claire au centre' : '',
    ]);
  return {
    name: 'french',
    zone: 'Europe/Paris',
    sources: [
      {
        file: 'cycles_juin',
        kind: 'cycles',
        decimal: ',',
        columns: {
          unit: { headers: ['Autoclave'] },
          start: { headers: ['Date', 'Heure début'], dates: ['dd/MM/yyyy HH:mm'] },
          end: { headers: ['Date', 'Heure fin'], dates: ['dd/MM/yyyy HH:mm'] },
          kind: { headers: ['Type de cycle'] },
          outcome: { headers: ['Résultat'] },
          cycle_number: { headers: ['N° cycle'] },
          abort_text: { headers: ['Défaut'] },
          heat_up_s: { headers: ['Temps de montée (s)'], measure: 's' },
          exposure_s: { headers: ['Durée plateau (s)'], measure: 's' },
          drying_s: { headers: ['Durée séchage (min)'], measure: 'min' },
          exposure_temperature_min_c: { headers: ['T° mini plateau (°C)'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['T° maxi plateau (°C)'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Pression plateau (bar abs)'], measure: 'bar absolute' },
        },
        words: {
          kind: {
            Préchauffage: 'warm_up',
            'Bowie-Dick': 'air_removal_test',
            'Prion 134': 'production',
            'Caoutchouc 134': 'production',
            'Test de fuite': 'leak_test',
          },
          outcome: { Conforme: 'completed', 'Non conforme': 'failed', Interrompu: 'aborted' },
        },
        counts: counts(36),
      },
      {
        file: 'essais',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Autoclave'] },
          time: { headers: ['Date et heure'], dates: ['dd/MM/yyyy HH:mm'] },
          result: { headers: ['Lecture'] },
          cycle_number: { headers: ['N° cycle'] },
          note: { headers: ['Observations'] },
        },
        words: { result: { Conforme: 'pass', 'Non conforme': 'fail', 'Non valide': 'invalid' } },
        counts: counts(27),
      },
    ],
    files: { 'cycles_juin.csv': withMark(lines(cycles, ';')), 'essais.csv': withMark(lines(tests, ';')) },
  };
}

/** A Canadian hospital: a workbook of leak tests and service with dates as cells, and a text file of cleanings with ISO dates. */
export async function canadian(): Promise<BlindStyle> {
  const leaks: TestCell[][] = [
    ['Suivi des tests de fuite 2025'],
    [
      'Date',
      'Stérilisateur',
      'No de cycle',
      'Taux de fuite (kPa/min)',
      'Limite (kPa/min)',
      'Accepté',
      'Commentaires',
    ],
  ];
  for (let at = 0; at < 20; at++)
    leaks.push([
      { value: wall('2025-01-06', 7 * Math.floor(at / 2)), format: 'yyyy-mm-dd' },
      `Stéri ${'AB'[at % 2]}`,
      880 + at,
      Number(wave(at, 0.06, 0.04, 3)),
      0.13,
      'Oui',
      at === 7 ? 'joint de porte remplacé' : null,
    ]);
  const service: TestCell[][] = [
    ['Stérilisateur', 'Début', 'Fin', 'Type d’intervention', 'Description', 'Bon de travail'],
  ];
  const kinds = [
    'Entretien préventif',
    'Réparation',
    'Nettoyage professionnel',
    'Réparation',
    'Hors service',
  ];
  for (let at = 0; at < 15; at++)
    service.push([
      `Stéri ${'AB'[at % 2]}`,
      { value: wall('2023-01-16', 53 * at, 510), format: 'yyyy-mm-dd hh:mm' },
      { value: wall('2023-01-16', 53 * at + (at % 2), 930), format: 'yyyy-mm-dd hh:mm' },
      kinds[at % 5]!,
      ['filtre changé', 'pompe à vide', 'chambre détartrée', 'serrure de porte', 'attente de pièces'][
        at % 5
      ]!,
      60_210 + 17 * at,
    ]);
  const cleanings: (string | number)[][] = [
    ['Date prévue', 'Date faite', 'Stérilisateur', 'Tâche', 'Statut', 'Durée (min)', 'Raison', 'Remarque'],
  ];
  const tasks = ['Crépine du drain', 'Chambre', 'Crépine du drain', 'Rinçage du drain'];
  for (let at = 0; at < 30; at++) {
    const missed = at % 9 === 4;
    const due = write(wall('2025-03-03', at), 'yyyy-MM-dd');
    cleanings.push([
      due,
      missed
        ? due
        : write(wall('2025-03-03', at), 'yyyy-MM-dd HH:mm').replace('00:00', `16:${10 + (at % 40)}`),
      `Stéri ${'AB'[at % 2]}`,
      tasks[Math.floor(at / 2) % 4]!,
      missed ? 'Non fait' : at === 16 ? 'Sans objet' : 'Fait',
      missed || at === 16 ? '' : 12 + (at % 5),
      at === 11 ? 'Suite à un échec' : 'Routine',
      at === 11 ? 'dépôt blanc' : '',
    ]);
  }
  return {
    name: 'canadian',
    zone: 'America/Toronto',
    sources: [
      {
        file: 'Suivi',
        sheet: 'Fuites',
        kind: 'leak_tests',
        columns: {
          unit: { headers: ['Stérilisateur'] },
          time: { headers: ['Date'] },
          leak_rate_kpa_min: { headers: ['Taux de fuite (kPa/min)'], measure: 'kPa per min' },
          limit_kpa_min: { headers: ['Limite (kPa/min)'], measure: 'kPa per min' },
          cycle_number: { headers: ['No de cycle'] },
        },
        counts: counts(20),
      },
      {
        file: 'Suivi',
        sheet: 'Interventions',
        kind: 'service',
        columns: {
          unit: { headers: ['Stérilisateur'] },
          from: { headers: ['Début'] },
          to: { headers: ['Fin'] },
          kind: { headers: ['Type d’intervention'] },
          note: { headers: ['Description'] },
        },
        words: {
          kind: {
            'Entretien préventif': 'maintenance',
            Réparation: 'repair',
            'Nettoyage professionnel': 'professional_cleaning',
            'Hors service': 'out_of_service',
          },
        },
        counts: counts(15),
      },
      {
        file: 'nettoyages',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Stérilisateur'] },
          task: { headers: ['Tâche'] },
          time: { headers: ['Date faite'], dates: ['yyyy-MM-dd HH:mm'] },
          state: { headers: ['Statut'] },
          minutes: { headers: ['Durée (min)'] },
          reason: { headers: ['Raison'] },
          note: { headers: ['Remarque'] },
        },
        words: {
          task: {
            'Crépine du drain': 'drain_strainer',
            Chambre: 'chamber',
            'Rinçage du drain': 'drain_flush',
          },
          state: { Fait: 'done', 'Non fait': 'missed', 'Sans objet': 'not_due' },
          reason: { Routine: 'routine', 'Suite à un échec': 'reactive' },
        },
        counts: counts(30),
      },
    ],
    files: {
      'Suivi 2025.xlsx': await workbook([
        { name: 'Fuites', rows: leaks },
        { name: 'Interventions', rows: service },
      ]),
      'nettoyages.csv': lines(cleanings, ',', '\n'),
    },
  };
}
