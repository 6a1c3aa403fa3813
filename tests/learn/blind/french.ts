import { workbook } from '../../ingest/workbook.ts';
import { comma, madeUpDays, minutesSeconds, parts, rows } from './made-up-days.ts';

type Files = Record<string, string | Uint8Array>;

/** A central department: tab, decimal commas, bar gauge, minutes and seconds; a unit's list of cleaning with a state. */
export async function centrale(): Promise<Files> {
  const cycles = madeUpDays(31, 2, '2025-06-02', 28);
  const names = ['Autoclave A', 'Autoclave B'];
  const day = (at: number) => `${parts(at).dd}/${parts(at).MM}/${parts(at).yyyy}`;
  const programs = {
    warm_up: 'Préchauffage',
    air_removal_test: 'Bowie-Dick',
    leak_test: "Test d'étanchéité",
    production: 'Instruments 134',
    liquids: 'Liquides 121',
  };
  const ends = { completed: 'Conforme', aborted: 'Interrompu', failed: 'Non conforme' };
  const faults = ['Vide insuffisant', 'Arrêt opérateur', 'Manque vapeur', 'Défaut porte'];
  return {
    'cycles_juin.txt': rows('\t', [
      [
        'Stérilisateur',
        'N° cycle',
        'Date',
        'Heure déb.',
        'Heure fin',
        'Programme',
        'Validation',
        'Défaut',
        'Durée prétrait.',
        'Durée montée',
        'Durée palier',
        'Durée séch.',
        'T° mini palier',
        'T° maxi palier',
        'P palier (bar rel.)',
        'Opérateur',
      ],
      ...cycles.map((one) => [
        names[one.unit]!,
        String(one.number),
        day(one.start),
        `${parts(one.start).HH}:${parts(one.start).mm}`,
        `${parts(one.end).HH}:${parts(one.end).mm}`,
        programs[one.kind],
        ends[one.outcome],
        one.outcome === 'completed' ? '' : faults[one.abort]!,
        minutesSeconds(one.evacuation),
        minutesSeconds(one.heatUp),
        minutesSeconds(one.exposure),
        minutesSeconds(one.drying),
        comma(one.low, 1),
        comma(one.high, 1),
        comma((one.pressure - 101.3) / 100, 2),
        'CL',
      ]),
    ]),
    'tests_bd.csv': rows(';', [
      ['Date du test', 'Stérilisateur', 'N° cycle', 'Résultat BD', 'Lu par', 'Observations'],
      ...cycles
        .filter(({ kind }) => kind === 'air_removal_test')
        .map((one) => [
          `${day(one.end)} ${parts(one.end).HH}:${parts(one.end).mm}`,
          names[one.unit]!,
          String(one.number),
          one.passed ? 'C' : 'NC',
          'CL',
          '',
        ]),
    ]),
    'fuites.csv': rows(';', [
      ['Date', 'Stérilisateur', 'Taux de fuite (mbar/min)', 'Seuil (mbar/min)'],
      ...cycles
        .filter(({ kind }) => kind === 'leak_test')
        .map((one) => [
          `${day(one.end)} ${parts(one.end).HH}:${parts(one.end).mm}`,
          names[one.unit]!,
          comma(one.leak * 10, 2),
          '1,30',
        ]),
    ]),
    'entretien.csv': rows(';', [
      ['Date', 'Stérilisateur', 'Opération', 'Fait', 'Motif', 'Saisi le', 'Agent'],
      ...cycles
        .filter(({ kind }) => kind === 'warm_up')
        .map((one, at) => [
          `${day(one.start)} 07:${parts(one.start).mm}`,
          names[one.unit]!,
          at % 14 === 6 ? 'Nettoyage chambre' : at % 14 === 13 ? 'Purge vidange' : 'Nettoyage crépine',
          at % 9 === 8 ? 'non' : 'oui',
          at % 28 === 6 ? 'suite à panne' : 'programmé',
          `${day(one.start)} 14:05`,
          'CL',
        ]),
    ]),
  };
}

/** A clinic with a file a unit: the months are words, the unit stands in the file's name; cleaning as a wide workbook with a sheet a month. */
export async function clinique(): Promise<Files> {
  const cycles = madeUpDays(32, 2, '2025-02-03', 40);
  const months = ['janv.', 'févr.', 'mars', 'avr.', 'mai', 'juin'];
  const stamp = (at: number) =>
    `${parts(at).d} ${months[parts(at).month]} ${parts(at).yyyy} ${parts(at).H}h${parts(at).mm}`;
  const types = {
    warm_up: 'Chauffe',
    air_removal_test: 'Test BD',
    leak_test: 'Test de vide',
    production: 'Prion 134°C',
    liquids: 'Solutés 121°C',
  };
  const ends = { completed: 'Réussi', aborted: 'Annulé', failed: 'Échec' };
  const file = (unit: number) =>
    rows(';', [
      [
        'Cycle n°',
        'Type de cycle',
        'Début de cycle',
        'Fin de cycle',
        'Résultat',
        "Motif d'arrêt",
        'Mise sous vide (s)',
        'Montée en température (s)',
        'Plateau (s)',
        'Retour pression atm. (s)',
        'Temp. min (°C)',
        'Temp. max (°C)',
        'Pression (kPa abs)',
      ],
      ...cycles
        .filter((one) => one.unit === unit)
        .map((one) => [
          String(one.number),
          types[one.kind],
          stamp(one.start),
          stamp(one.end),
          ends[one.outcome],
          one.outcome === 'completed' ? '' : 'Vide non atteint',
          String(one.evacuation),
          String(one.heatUp),
          String(one.exposure),
          String(one.exhaust),
          comma(one.low, 1),
          comma(one.high, 1),
          comma(one.pressure, 1),
        ]),
    ]);
  const marks = ['fait', 'fait', 'NF', null, 'fait'];
  const sheet = (title: string, days: number) => [
    [`Suivi du nettoyage de la crépine - ${title}`],
    ['Appareil', ...Array.from({ length: days }, (_, at) => at + 1)],
    ...['A1', 'A2'].map((name, unit) => [
      name,
      ...Array.from({ length: days }, (_, at) => marks[(at + unit) % 5]!),
    ]),
  ];
  return {
    'autoclave_A1_cycles.csv': file(0),
    'autoclave_A2_cycles.csv': file(1),
    'nettoyage.xlsx': await workbook([
      { name: 'Février', rows: sheet('février 2025', 28) },
      { name: 'Mars', rows: sheet('mars 2025', 31) },
    ]),
    'bowie dick.csv': rows(';', [
      ['Appareil', 'Jour', 'Virage', 'Commentaire'],
      ...cycles
        .filter(({ kind }) => kind === 'air_removal_test')
        .map((one) => [
          `A${one.unit + 1}`,
          `${parts(one.start).yyyy}-${parts(one.start).MM}-${parts(one.start).dd}`,
          one.passed ? 'complet' : 'incomplet',
          '',
        ]),
    ]),
  };
}
