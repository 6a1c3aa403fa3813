import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const BOOK = { file: 'Registre stérilisation' };
export const sources: BlindSource[] = [
  {
    ...BOOK,
    sheet: 'Cycles',
    kind: 'cycles',
    columns: {
      unit: col('Identification Appareil'),
      start: col('Identification Date', 'Horaires Début'),
      end: col('Identification Date', 'Horaires Fin'),
      kind: col('Identification Programme'),
      outcome: col('Conclusion Résultat'),
      cycle_number: col('Identification N° de cycle'),
      abort_text: col("Conclusion Cause d'arrêt"),
      exposure_s: measured('Plateau Durée (min)', 'min'),
      exposure_temperature_min_c: measured('Plateau T° mini (°C)', 'C'),
      exposure_temperature_max_c: measured('Plateau T° maxi (°C)', 'C'),
      exposure_pressure_kpa: measured('Plateau Pression abs. (mbar)', 'mbar absolute'),
    },
    words: {
      kind: {
        'Mise en chauffe': 'warm_up',
        'Bowie-Dick': 'air_removal_test',
        'Instruments 134 °C': 'production',
        'ATNC 134 °C 18 min': 'production',
        'Caoutchouc 121 °C': 'production',
      },
      outcome: { Conforme: 'completed', 'Non conforme': 'failed', 'Cycle interrompu': 'aborted' },
    },
    counts: counts(39, 0, 1),
  },
  {
    ...BOOK,
    sheet: 'Bowie-Dick',
    kind: 'air_removal_tests',
    columns: {
      unit: col('Appareil'),
      time: col('Date', 'Heure'),
      result: col('Virage du test'),
      cycle_number: col('N° de cycle'),
      note: col('Observations'),
    },
    words: { result: { Homogène: 'pass', 'Non homogène': 'fail', 'À relire': null } },
    counts: counts(28),
  },
  {
    ...BOOK,
    sheet: 'Étanchéité',
    kind: 'leak_tests',
    columns: {
      unit: col('Appareil'),
      time: col('Date'),
      leak_rate_kpa_min: measured('Remontée de pression (mbar/min)', 'mbar per min'),
      limit_kpa_min: measured('Limite (mbar/min)', 'mbar per min'),
      cycle_number: col('N° de cycle'),
    },
    counts: counts(16),
  },
  {
    file: 'Nettoyage autoclaves',
    kind: 'cleanings',
    columns: {
      unit: col('Appareil'),
      task: col('Opération'),
      time: dated('dd/MM/yyyy HH:mm', 'Date', 'Heure'),
      state: col('Réalisé (O/N/SO)'),
      minutes: col('Durée (min)'),
      reason: col('Motif'),
      note: col('Observations'),
    },
    words: {
      task: { Crépine: 'drain_strainer', Chambre: 'chamber', "Rinçage de l'évacuation": 'drain_flush' },
      state: { O: 'done', N: 'missed', SO: 'not_due' },
      reason: { 'Entretien programmé': 'routine', 'Suite à un test non conforme': 'reactive' },
    },
    counts: counts(27),
  },
  {
    file: 'Interventions',
    kind: 'service',
    columns: {
      unit: col('Équipement'),
      from: dated('dd/MM/yyyy HH:mm', 'Du'),
      to: dated('dd/MM/yyyy HH:mm', 'Au'),
      kind: col('Nature'),
      major: col('Réparation majeure'),
      note: col('Détail'),
    },
    words: {
      kind: {
        'Maintenance préventive': 'maintenance',
        Dépannage: 'repair',
        'Nettoyage par prestataire': 'professional_cleaning',
        "Remplacement de l'automate": 'controller_replaced',
        'Mise hors service': 'out_of_service',
      },
    },
    counts: counts(6),
  },
];
