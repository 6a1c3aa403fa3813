import type { Probe } from '../../../findings/drift/probes.ts';
import type { AttentionCode, Exposure, OutcomeName } from '../../../findings/review-schema.ts';
import type { CleaningTask } from '../../../site/vocabulary.ts';
import { type Numbers, num, text } from '../attention-numbers.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

const { count, integer, ratio } = format;
const moves = (n: Numbers): string =>
  `${terms.probe[text(n, 'probe') as Probe]} ${text(n, 'direction') === 'down' ? 'falling' : 'rising'}`;

/** A reason in a few words, for a line that names several. */
export const attentionShort: Record<AttentionCode, (numbers: Numbers) => string> = {
  ran_after_failure: (n) => `${count(num(n, 'cycles'), 'cycle', 'cycles')} after a failed test`,
  ran_after_failure_perhaps: (n) =>
    `perhaps ${count(num(n, 'cycles'), 'cycle', 'cycles')} after a failed test`,
  episode_open: () => 'tests still fail',
  failed_test: (n) =>
    `${integer(num(n, 'failures'))} of ${count(num(n, 'day_results'), 'test day', 'test days')} failed`,
  test_missing: (n) => `no test on ${count(num(n, 'missing'), 'production day', 'production days')}`,
  test_late: (n) => `late test on ${count(num(n, 'late'), 'production day', 'production days')}`,
  return_incomplete: () => 'incomplete return after cleaning',
  requalification_incomplete: () => 'requalification incomplete',
  comparison_shown: (n) =>
    `shown: more ${terms.outcomes[text(n, 'outcome') as OutcomeName]} with ${terms.exposure[text(n, 'exposure') as Exposure]}${
      typeof n.ratio === 'number' ? ` (ratio ${ratio(n.ratio)})` : ''
    }`,
  chamber_overdue_now: (n) => `chamber ${count(num(n, 'days_past_due'), 'day', 'days')} past due`,
  task_outstanding: (n) =>
    `${terms.task[text(n, 'task') as CleaningTask].toLowerCase()} ${count(num(n, 'days_past_due'), 'day', 'days')} past due`,
  records_contradicted: (n) => `${count(num(n, 'in_month'), 'record', 'records')} contradicted`,
  leak_over_limit: () => 'leak over its limit',
  leak_near_limit: () => 'leak near its limit',
  drift_near_limit: (n) => `${moves(n)}, near its limit`,
  drift_moving: moves,
  drift_stepped: (n) => `step in ${terms.probe[text(n, 'probe') as Probe]}`,
  heat_up_out_of_range: (n) => `${count(num(n, 'passes'), 'pass', 'passes')} with heat-up out of range`,
  abort_rate_signal: () => 'abort rate outside its limits',
  early_stops: (n) => count(num(n, 'early_stops'), 'unexplained early stop', 'unexplained early stops'),
  strainers_missed: (n) => `${count(num(n, 'missed'), 'strainer cleaning', 'strainer cleanings')} missed`,
};
