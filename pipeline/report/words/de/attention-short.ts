import type { Probe } from '../../../findings/drift/probes.ts';
import type { Exposure, OutcomeName } from '../../../findings/review-schema.ts';
import type { CleaningTask } from '../../../site/vocabulary.ts';
import { type Numbers, num, text } from '../attention-numbers.ts';
import type { attentionShort as en } from '../en/attention-short.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

const { count, integer, ratio } = format;
const moves = (n: Numbers): string =>
  `${terms.probe[text(n, 'probe') as Probe]} ${text(n, 'direction') === 'down' ? 'fällt' : 'steigt'}`;

/** Ein Anlass in wenigen Worten, für eine Zeile mit mehreren. */
export const attentionShort: typeof en = {
  ran_after_failure: (n) => `${count(num(n, 'cycles'), 'Charge', 'Chargen')} nach nicht bestandenem Test`,
  ran_after_failure_perhaps: (n) =>
    `vielleicht ${count(num(n, 'cycles'), 'Charge', 'Chargen')} nach nicht bestandenem Test`,
  episode_open: () => 'Tests bestehen weiter nicht',
  failed_test: (n) =>
    `${integer(num(n, 'failures'))} von ${count(num(n, 'day_results'), 'Prüftag', 'Prüftagen')} nicht bestanden`,
  test_missing: (n) => `kein Test an ${count(num(n, 'missing'), 'Produktionstag', 'Produktionstagen')}`,
  test_late: (n) => `später Test an ${count(num(n, 'late'), 'Produktionstag', 'Produktionstagen')}`,
  return_incomplete: () => 'unvollständige Wiederinbetriebnahme nach Reinigung',
  requalification_incomplete: () => 'Requalifizierung unvollständig',
  comparison_shown: (n) =>
    `${terms.verdict.shown}: mehr ${terms.outcomes[text(n, 'outcome') as OutcomeName]} bei „${terms.exposure[text(n, 'exposure') as Exposure]}“${
      typeof n.ratio === 'number' ? ` (Verhältnis ${ratio(n.ratio)})` : ''
    }`,
  chamber_overdue_now: (n) => `Kammer ${count(num(n, 'days_past_due'), 'Tag', 'Tage')} über der Frist`,
  task_outstanding: (n) =>
    `${terms.task[text(n, 'task') as CleaningTask]} ${count(num(n, 'days_past_due'), 'Tag', 'Tage')} über der Frist`,
  records_contradicted: (n) => `${count(num(n, 'in_month'), 'Eintrag', 'Einträge')} widersprochen`,
  leak_over_limit: () => 'Leckrate über der Grenze',
  leak_near_limit: () => 'Leckrate nahe der Grenze',
  drift_near_limit: (n) => `${moves(n)}, nahe der Grenze`,
  drift_moving: moves,
  drift_stepped: (n) => `Sprung: ${terms.probe[text(n, 'probe') as Probe]}`,
  heat_up_out_of_range: (n) =>
    `${count(num(n, 'passes'), 'bestandener Test', 'bestandene Tests')} mit auffälliger Aufheizzeit`,
  abort_rate_signal: () => 'Abbruchrate außerhalb ihrer Grenzen',
  early_stops: (n) => count(num(n, 'early_stops'), 'ungeklärter früher Stopp', 'ungeklärte frühe Stopps'),
  strainers_missed: (n) => `${count(num(n, 'missed'), 'Siebreinigung', 'Siebreinigungen')} versäumt`,
};
