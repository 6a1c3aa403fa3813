// Over 300 lines: the tables of one style and their truth side by side.
import { workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { at, komma, madeUpLog, table, withRows } from './made-up-log.ts';

const jour = (time: number): string => {
  const { y, m, d } = at(time);
  return `${d}/${m}/${y}`;
};

/** France: semicolons, UTF-8 with a byte order mark, relative bar, lengths in seconds without a unit; tests and cleaning kept in one folder. */
export function journal(): BlindStyle {
  const NAMES = ['STE1', 'STE2'];
  const runs = madeUpLog(61, 2, '2024-05-13', 6);
  const cycles = runs.filter(({ what }) => what !== 'leak');
  const PROGRAMS = { warm: 'Préchauf.', test: 'Test BD', leak: '', load: 'Prion 134', fluid: 'Liquides 121' };
  const ENDS = { ok: 'Conf.', stopped: 'Interrompu', bad: 'Non conf.' };
  const lines = cycles.map((run) => [
    jour(run.start),
    at(run.start).clock.slice(0, 5).replace(':', 'h'),
    at(run.end).clock.slice(0, 5).replace(':', 'h'),
    NAMES[run.unit]!,
    run.number,
    PROGRAMS[run.what],
    run.evacuation,
    run.heatUp,
    run.exposure,
    run.drying,
    komma(run.low, 1),
    komma(run.high, 1),
    komma(run.pressure / 100 - 1.013, 2),
    ENDS[run.ended],
    run.ended === 'bad' ? 'Délai vide dépassé' : '',
    `Ag. ${run.number % 4}`,
    run.what === 'load' ? `CH${run.number}` : '',
  ]);
  const header =
    'Date;H. déb.;H. fin;Stéril.;N° cyc.;Prog.;Vide;Chauffe;Plateau;Séch.;T° mini;T° maxi;P. plateau (bar rel.);Concl.;Défaut;Opér.;Réf. charge'.split(
      ';',
    );
  const rows = withRows<(string | number)[]>(lines, [
    [10, lines[9]!],
    [22, ['18/05/2024', '', '', 'STE1', '', 'Prion 134', '', '', '', '', '', '', '', 'Conf.', '', '', '']],
    [lines.length + 2, ['TOTAL', '', '', '', lines.length, ...Array<string>(12).fill('')]],
  ]);
  const tests = madeUpLog(62, 2, '2024-05-01', 15, 0).filter(({ what }) => what === 'test');
  const testLines = tests.map((run) => [
    NAMES[run.unit]!,
    jour(run.end),
    at(run.end).clock.slice(0, 5),
    run.number,
    run.ended === 'bad' ? 'Virage incomplet' : run.ended === 'stopped' ? 'Test non valide' : 'Virage complet',
    run.ended === 'bad' ? 'refait' : '',
  ]);
  const cleaned = Array.from({ length: 34 }, (_, place) => [
    jour(Date.parse('2024-05-01') + Math.floor(place / 2) * 86_400_000),
    NAMES[place % 2]!,
    place % 12 === 4 ? 'Nett. cuve' : place % 7 === 3 ? 'Rinçage évac.' : 'Nett. filtre',
    place % 9 === 2 ? 'non fait' : place % 15 === 8 ? 'sans objet' : 'fait',
    place % 9 === 2 ? '' : 6 + ((place * 5) % 15),
    place % 10 === 7 ? 'curatif' : 'préventif',
    `Ag. ${place % 4}`,
    place % 11 === 5 ? 'dépôt brun' : '',
  ]);
  return {
    name: 'journal',
    zone: 'Europe/Paris',
    files: {
      'suivi cycles mai.csv': `\ufeff${table(';', [header, ...rows])}`,
      'bowie mai.csv': `\ufeff${table(';', [['Stéril.', 'Date', 'Heure', 'Cyc.', 'Lecture', 'Obs.'], ...testLines])}`,
      'entretien mai.csv': `\ufeff${table(';', [['Le', 'App.', 'Opération', 'État', 'Durée (min)', 'Type', 'Agent', 'Obs.'], ...cleaned])}`,
    },
    sources: [
      {
        file: 'suivi cycles mai.csv',
        kind: 'cycles',
        decimal: ',',
        columns: {
          unit: { headers: ['Stéril.'] },
          start: { headers: ['Date', 'H. déb.'], dates: ["dd/MM/yyyy HH'h'mm"] },
          end: { headers: ['Date', 'H. fin'], dates: ["dd/MM/yyyy HH'h'mm"] },
          kind: { headers: ['Prog.'] },
          outcome: { headers: ['Concl.'] },
          cycle_number: { headers: ['N° cyc.'] },
          abort_text: { headers: ['Défaut'] },
          evacuation_s: { headers: ['Vide'], measure: 's' },
          heat_up_s: { headers: ['Chauffe'], measure: 's' },
          exposure_s: { headers: ['Plateau'], measure: 's' },
          drying_s: { headers: ['Séch.'], measure: 's' },
          exposure_temperature_min_c: { headers: ['T° mini'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['T° maxi'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['P. plateau (bar rel.)'], measure: 'bar gauge' },
        },
        words: {
          kind: {
            'Préchauf.': 'warm_up',
            'Test BD': 'air_removal_test',
            'Prion 134': 'production',
            'Liquides 121': 'liquids',
          },
          outcome: { 'Conf.': 'completed', Interrompu: 'aborted', 'Non conf.': 'failed' },
        },
        counts: { records: cycles.length + 1, duplicates: 1, rejected: 0, skipped: 1 },
      },
      {
        file: 'bowie mai.csv',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Stéril.'] },
          time: { headers: ['Date', 'Heure'], dates: ['dd/MM/yyyy HH:mm'] },
          result: { headers: ['Lecture'] },
          cycle_number: { headers: ['Cyc.'] },
          note: { headers: ['Obs.'] },
        },
        words: {
          result: { 'Virage complet': 'pass', 'Virage incomplet': 'fail', 'Test non valide': 'invalid' },
        },
        counts: { records: tests.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'entretien mai.csv',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['App.'] },
          task: { headers: ['Opération'] },
          time: { headers: ['Le'], dates: ['dd/MM/yyyy'] },
          state: { headers: ['État'] },
          minutes: { headers: ['Durée (min)'] },
          reason: { headers: ['Type'] },
          note: { headers: ['Obs.'] },
        },
        words: {
          task: { 'Nett. cuve': 'chamber', 'Rinçage évac.': 'drain_flush', 'Nett. filtre': 'drain_strainer' },
          state: { fait: 'done', 'non fait': 'missed', 'sans objet': 'not_due' },
          reason: { curatif: 'reactive', préventif: 'routine' },
        },
        counts: { records: 34, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** Canada, in French: a workbook with ISO dates as text and kPa, works and chamber checks; leak tests as text. */
export async function registre(): Promise<BlindStyle> {
  const NAMES = ['Autoclave A', 'Autoclave B', 'Autoclave C'];
  const runs = madeUpLog(71, 3, '2024-08-19', 5, 2).filter(({ what }) => what !== 'leak');
  const PROGRAMS = {
    warm: 'Réchauffement',
    test: 'Essai Bowie-Dick',
    leak: '',
    load: 'Prévide 132',
    fluid: 'Liquides',
  };
  const ENDS = { ok: 'Réussi', stopped: 'Annulé', bad: 'Échec' };
  const stamp = (time: number): string => `${at(time).date} ${at(time).clock.slice(0, 5)}`;
  const rows = runs.map((run) => [
    run.number,
    NAMES[run.unit]!,
    stamp(run.start),
    stamp(run.end),
    PROGRAMS[run.what],
    run.exposure,
    run.low,
    run.high,
    Math.round(run.pressure),
    run.vacuum,
    ENDS[run.ended],
    run.ended === 'bad' ? 'Température basse' : null,
    run.what === 'load' ? 'Bloc op.' : null,
  ]);
  const leaks = madeUpLog(72, 3, '2024-02-05', 56, 0).filter(({ what }) => what === 'leak');
  const leakLines = leaks.map((run) => [
    at(run.start).date,
    at(run.start).clock.slice(0, 5),
    NAMES[run.unit]!,
    run.number,
    run.leak.toFixed(3),
    '0.13',
    run.leak > 0.13 ? 'Refusé' : 'Accepté',
  ]);
  const WORKS = [
    'Entretien annuel',
    'Réparation',
    'Nettoyage par firme',
    'Mise hors service',
    'Remplacement automate',
  ];
  const works = Array.from({ length: 20 }, (_, place) => {
    const from = Date.parse('2023-03-01') + place * 26 * 86_400_000;
    return [
      NAMES[place % 3]!,
      at(from).date,
      at(from + (place % 3) * 86_400_000).date,
      WORKS[place % 5]!,
      place % 5 === 4 ? 'oui' : 'non',
      place % 5 === 1 ? 'joint de porte' : null,
      `BT-${300 + place}`,
    ];
  });
  const looks = Array.from({ length: 22 }, (_, place) => [
    at(Date.parse('2024-01-08') + place * 11 * 86_400_000).date,
    NAMES[place % 3]!,
    (place * 2) % 5,
    place % 4 === 1 ? 'oui' : 'non',
    place % 6 === 2 ? 'taches près du drain' : null,
  ]);
  return {
    name: 'registre',
    zone: 'America/Toronto',
    files: {
      'registre URDM.xlsx': await workbook([
        {
          name: 'Cycles',
          rows: [
            ['Registre des cycles', null, null],
            [
              'No',
              'Appareil',
              'Début',
              'Fin',
              'Cycle',
              'Expo (s)',
              'T min',
              'T max',
              'Pression (kPa abs)',
              'Vide séch. (kPa abs)',
              'Résultat',
              'Alarme',
              'Client',
            ],
            ...rows,
          ],
        },
        {
          name: 'Interventions',
          rows: [
            ['Appareil', 'Arrêt', 'Remise en service', 'Nature', 'Requalif.', 'Détails', 'Bon'],
            ...works,
          ],
        },
        {
          name: 'Inspection cuve',
          rows: [['Date insp.', 'Appareil', 'Cote (0 à 4)', 'Résidus après rinçage', 'Détails'], ...looks],
        },
      ]),
      "test d'étanchéité.csv": table(
        ',',
        [['date', 'heure', 'appareil', 'cycle', 'taux (kPa/min)', 'max (kPa/min)', 'verdict'], ...leakLines],
        '\n',
      ),
    },
    sources: [
      {
        file: 'registre URDM.xlsx',
        sheet: 'Cycles',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Appareil'] },
          start: { headers: ['Début'], dates: ['yyyy-MM-dd HH:mm'] },
          end: { headers: ['Fin'], dates: ['yyyy-MM-dd HH:mm'] },
          kind: { headers: ['Cycle'] },
          outcome: { headers: ['Résultat'] },
          cycle_number: { headers: ['No'] },
          abort_text: { headers: ['Alarme'] },
          exposure_s: { headers: ['Expo (s)'], measure: 's' },
          exposure_temperature_min_c: { headers: ['T min'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['T max'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Pression (kPa abs)'], measure: 'kPa absolute' },
          dry_vacuum_kpa: { headers: ['Vide séch. (kPa abs)'], measure: 'kPa absolute' },
        },
        words: {
          kind: {
            Réchauffement: 'warm_up',
            'Essai Bowie-Dick': 'air_removal_test',
            'Prévide 132': 'production',
            Liquides: 'liquids',
          },
          outcome: { Réussi: 'completed', Annulé: 'aborted', Échec: 'failed' },
        },
        counts: { records: runs.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'registre URDM.xlsx',
        sheet: 'Interventions',
        kind: 'service',
        columns: {
          unit: { headers: ['Appareil'] },
          from: { headers: ['Arrêt'], dates: ['yyyy-MM-dd'] },
          to: { headers: ['Remise en service'], dates: ['yyyy-MM-dd'] },
          kind: { headers: ['Nature'] },
          major: { headers: ['Requalif.'] },
          note: { headers: ['Détails'] },
        },
        words: {
          kind: {
            'Entretien annuel': 'maintenance',
            Réparation: 'repair',
            'Nettoyage par firme': 'professional_cleaning',
            'Mise hors service': 'out_of_service',
            'Remplacement automate': 'controller_replaced',
          },
        },
        counts: { records: 20, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'registre URDM.xlsx',
        sheet: 'Inspection cuve',
        kind: 'inspections',
        columns: {
          unit: { headers: ['Appareil'] },
          time: { headers: ['Date insp.'], dates: ['yyyy-MM-dd'] },
          appearance: { headers: ['Cote (0 à 4)'] },
          residue_after_rinsing: { headers: ['Résidus après rinçage'] },
          note: { headers: ['Détails'] },
        },
        counts: { records: 22, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: "test d'étanchéité.csv",
        kind: 'leak_tests',
        columns: {
          unit: { headers: ['appareil'] },
          time: { headers: ['date', 'heure'], dates: ['yyyy-MM-dd HH:mm'] },
          leak_rate_kpa_min: { headers: ['taux (kPa/min)'], measure: 'kPa per min' },
          limit_kpa_min: { headers: ['max (kPa/min)'], measure: 'kPa per min' },
          cycle_number: { headers: ['cycle'] },
        },
        counts: { records: leaks.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
