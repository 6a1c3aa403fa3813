import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, measured } from './truth.ts';

const BOOK = { file: 'Decontamination log book' };
export const sources: BlindSource[] = [
  {
    ...BOOK,
    sheet: 'Steam penetration',
    kind: 'air_removal_tests',
    columns: {
      unit: col('Autoclave'),
      time: col('Date', 'Time'),
      result: col('Uniform colour change ✓ / ✗'),
      cycle_number: col('Cycle counter'),
      note: col('Action taken'),
    },
    words: { result: { '✓': 'pass', '✗': 'fail' } },
    counts: counts(36, 0, 4),
  },
  {
    ...BOOK,
    sheet: 'Weekly vacuum leak',
    kind: 'leak_tests',
    columns: {
      unit: col('Autoclave'),
      time: col('Date of test'),
      leak_rate_kpa_min: measured('Leak mbar/min', 'mbar per min'),
      limit_kpa_min: measured('Limit mbar/min', 'mbar per min'),
      cycle_number: col('Cycle counter'),
    },
    counts: counts(16),
  },
  {
    ...BOOK,
    sheet: 'Housekeeping',
    kind: 'cleanings',
    columns: {
      unit: col('Autoclave'),
      task: col('Job'),
      time: col('When'),
      state: col('Completed'),
      minutes: col('Mins'),
      reason: col('Planned / unplanned'),
      note: col('Comments'),
    },
    words: {
      task: {
        'Strainer cleaned': 'drain_strainer',
        'Door seal wiped': null,
        'Chamber cleaned': 'chamber',
        'Drain flushed through': 'drain_flush',
      },
      state: { '✓': 'done', '✗': 'missed', 'n/a': 'not_due' },
      reason: { Planned: 'routine', 'Unplanned (failed test)': 'reactive' },
    },
  },
  {
    ...BOOK,
    sheet: 'Engineer',
    kind: 'service',
    columns: {
      unit: col('Autoclave'),
      from: col('Off from'),
      to: col('Back on'),
      kind: col('Visit type'),
      note: col('Notes'),
    },
    words: {
      kind: {
        'Quarterly service': 'maintenance',
        'Breakdown repair': 'repair',
        'Taken out of use': 'out_of_service',
      },
    },
    counts: counts(6),
  },
  {
    ...BOOK,
    sheet: 'Action log',
    kind: 'actions',
    columns: {
      time: col('Raised'),
      unit: col('Autoclave'),
      action: col('Action'),
      role: col('Owner'),
      due: col('Target date'),
      done_on: col('Closed on'),
      state: col('Status'),
    },
    words: { state: { Closed: 'done', Open: 'open', Withdrawn: 'dropped' } },
    counts: counts(4),
  },
];
