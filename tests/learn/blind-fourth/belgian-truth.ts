import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const STAMP = 'yyyy-MM-dd HH:mm:ss';

const UNIT = col('code_sterilisateur');
export const sources: BlindSource[] = [
  {
    file: 't_cycles_',
    kind: 'cycles',
    columns: {
      unit: UNIT,
      start: dated(STAMP, 'dh_debut'),
      end: dated(STAMP, 'dh_fin'),
      kind: col('type_prog'),
      outcome: col('etat'),
      cycle_number: col('num_cycle'),
      abort_text: col('msg_alarme'),
      evacuation_s: measured('duree_vide_s', 's'),
      heat_up_s: measured('duree_montee_s', 's'),
      exposure_s: measured('duree_palier_s', 's'),
      exhaust_s: measured('duree_echappement_s', 's'),
      drying_s: measured('duree_sechage_s', 's'),
      exposure_temperature_min_c: measured('temp_palier_min_c', 'C'),
      exposure_temperature_max_c: measured('temp_palier_max_c', 'C'),
      exposure_pressure_kpa: measured('press_palier_kpa_abs', 'kPa absolute'),
      dry_vacuum_kpa: measured('vide_sechage_kpa_abs', 'kPa absolute'),
    },
    words: {
      kind: {
        PRECHAUFFAGE: 'warm_up',
        BOWIE_DICK: 'air_removal_test',
        LIQUIDES_121: 'liquids',
        SOLIDES_134: 'production',
        TEST_FUITE: 'leak_test',
        VALIDATION: 'qualification',
      },
      outcome: { TERMINE: 'completed', INTERROMPU: 'aborted', NON_CONFORME: 'failed', EN_COURS: 'running' },
    },
    counts: counts(53, 0, 1, 3),
  },
  {
    file: 't_tests_bd',
    kind: 'air_removal_tests',
    columns: {
      unit: UNIT,
      time: dated(STAMP, 'dh_test'),
      result: col('resultat_ok'),
      cycle_number: col('num_cycle'),
      note: col('remarque'),
      entered_at: dated(STAMP, 'dh_saisie'),
    },
    words: { result: { 1: 'pass', 0: 'fail' } },
    counts: counts(27),
  },
  {
    file: 't_tests_fuite',
    kind: 'leak_tests',
    columns: {
      unit: UNIT,
      time: dated(STAMP, 'dh_test'),
      leak_rate_kpa_min: measured('taux_fuite_mbar_min', 'mbar per min'),
      limit_kpa_min: measured('limite_mbar_min', 'mbar per min'),
      cycle_number: col('num_cycle'),
    },
    counts: counts(17, 0, 1),
  },
  {
    file: 't_nettoyages',
    kind: 'cleanings',
    columns: {
      unit: UNIT,
      task: col('type_nettoyage'),
      start: dated(STAMP, 'dh_debut'),
      time: dated(STAMP, 'dh_fin'),
      minutes: col('duree_min'),
      state: col('statut'),
      reason: col('origine'),
      note: col('commentaire'),
    },
    words: {
      task: {
        CREPINE: 'drain_strainer',
        CHAMBRE: 'chamber',
        RINCAGE_VIDANGE: 'drain_flush',
        PRESTATAIRE_ANNUEL: 'professional',
      },
      state: { FAIT: 'done', NON_FAIT: 'missed', SANS_OBJET: 'not_due' },
      reason: { PLANIFIE: 'routine', SUITE_ECHEC_TEST: 'reactive' },
    },
    counts: counts(30),
  },
];
