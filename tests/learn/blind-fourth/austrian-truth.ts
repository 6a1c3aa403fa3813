import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, measured } from './truth.ts';

export const sources: BlindSource[] = [
  {
    file: 'Testbuch Ordination',
    sheet: 'Dampfdurchdringung',
    kind: 'air_removal_tests',
    columns: {
      unit: { from: 'always' },
      time: col('Tag', 'Uhrzeit'),
      result: col('bestanden?'),
      cycle_number: col('Zyklus Nr.'),
      note: col('Anmerkung'),
    },
    words: { result: { ja: 'pass', nein: 'fail' } },
    counts: counts(32, 0, 1),
  },
  {
    file: 'Testbuch Ordination',
    sheet: 'Vakuumtest',
    kind: 'leak_tests',
    decimal: ',',
    columns: {
      unit: { from: 'always' },
      time: col('Tag', 'Uhrzeit'),
      leak_rate_kpa_min: measured('Druckanstieg mbar / 10 min', 'mbar per 10 min'),
      limit_kpa_min: measured('zulässig mbar / 10 min', 'mbar per 10 min'),
      cycle_number: col('Zyklus Nr.'),
    },
    counts: counts(14),
  },
  {
    file: 'Pflegeheft',
    sheet: 'Pflege',
    kind: 'cleanings',
    columns: {
      unit: col('Autoklav'),
      task: col('Tätigkeit'),
      time: col('Datum'),
      state: col('Status'),
      minutes: col('Dauer in Min.'),
      reason: col('Anlass'),
      note: col('Anm.'),
    },
    words: {
      task: { S: 'drain_strainer', K: 'chamber', A: 'drain_flush' },
      state: { J: 'done', N: 'missed', E: 'not_due' },
      reason: { planmäßig: 'routine', 'nach Störung': 'reactive' },
    },
    counts: counts(30),
  },
];
