import type { Cause } from '../../../findings/drift/cause-pattern.ts';
import type { Probe } from '../../../findings/drift/probes.ts';
import type { Exposure, OutcomeName } from '../../../findings/review-schema.ts';
import type { CleaningTask } from '../../../site/vocabulary.ts';
import { type Numbers, num, text } from '../attention-numbers.ts';
import { causesIn } from '../causes.ts';
import type { AttentionWords } from '../en/attention.ts';
import { attentionShort } from './attention-short.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

const { count, integer, ratio, pValue, date, time } = format;

const LEAD = 'Leitung der AEMP';
const LEAD_AND_ENGINEERING = 'Leitung der AEMP mit Medizintechnik';
const COMMITTEE = 'das Gremium mit Medizintechnik, nach Gebrauchsanweisung';

const association = (numbers: Numbers, verdict: string, level: string): string => {
  const exposure = terms.exposure[text(numbers, 'exposure') as Exposure];
  const outcome = terms.outcomes[text(numbers, 'outcome') as OutcomeName];
  const bounds =
    numbers.high === null || numbers.high === undefined
      ? `${level}\u2011Intervall ab ${ratio(num(numbers, 'low'))}, nach oben offen`
      : `${level}\u2011Intervall ${ratio(num(numbers, 'low'))} bis ${ratio(num(numbers, 'high'))}`;
  const estimate =
    numbers.ratio === null || numbers.ratio === undefined
      ? 'ohne Versäumnis kein Ereignis'
      : `Verhältnis ${ratio(num(numbers, 'ratio'))}`;
  const adjusted =
    typeof numbers.adjusted_p === 'number' ? `, angepasstes p\u00a0${pValue(numbers.adjusted_p)}` : '';
  return `Mehr ${outcome} bei: ${exposure}. ${format.sentence(verdict)} (${estimate}, ${bounds}${adjusted}).`;
};

const interval = (numbers: Numbers): string => {
  const [every, unit] = text(numbers, 'interval').split(' ');
  return every && unit ? `${integer(Number(every))} ${terms.countedIn[unit] ?? unit}` : 'festgelegt';
};

const probeOf = (numbers: Numbers): Probe => text(numbers, 'probe') as Probe;
const probeName = (numbers: Numbers): string => terms.probe[probeOf(numbers)];
const amount = (numbers: Numbers, key: string): string =>
  `${format.figures(num(numbers, key))}\u00a0${text(numbers, 'measure')}`;
const causes = (numbers: Numbers): string =>
  causesIn(text(numbers, 'cause'))
    .map((cause) => terms.cause[cause])
    .join(' oder ');

/** „Evakuierzeit der leeren Tageschargen steigt seit dem 13. August 2026, um 17 s je Woche (16 bis 18).“ und was daraus folgt. */
const movement = (numbers: Numbers): string => {
  const rate =
    typeof numbers.rate === 'number'
      ? `, um ${amount(numbers, 'rate')} je Woche (${format.level(0.9)}\u2011Intervall ${amount(numbers, 'rate_low')} bis ${amount(numbers, 'rate_high')})`
      : '';
  const days =
    typeof numbers.days === 'number'
      ? ` Bei diesem Tempo ist die Grenze in ${count(num(numbers, 'days'), 'Tag', 'Tagen')} erreicht (${
          typeof numbers.days_high === 'number'
            ? `${integer(num(numbers, 'days_low'))} bis ${integer(num(numbers, 'days_high'))}`
            : `ab ${integer(num(numbers, 'days_low'))}`
        }).`
      : '';
  const cause =
    numbers.cause === null
      ? ''
      : ` Am besten passt das Muster zu: ${causes(numbers)} (ein Hinweis, keine Diagnose).`;
  const going = text(numbers, 'direction') === 'down' ? 'fällt' : 'steigt';
  return `Die ${probeName(numbers)} der ${terms.cyclesOfProbe(probeOf(numbers))} ${going} seit dem ${date(text(numbers, 'since'))}${rate}.${days}${company(numbers)}${cause}${done(numbers)}`;
};

/** Die Messwerte, die eine Ursache mit dem ersten bewegt. */
const company = (numbers: Numbers): string => {
  if (typeof numbers.with !== 'string') return '';
  const names = numbers.with.split(' ').map((probe) => terms.probe[probe as Probe]);
  const moves = names.length === 1 ? 'Mit ihr bewegt sich' : 'Mit ihr bewegen sich';
  return ` ${moves}: ${format.list(names)}${numbers.with_since === numbers.since ? '' : ` (der erste Wert seit dem ${date(text(numbers, 'with_since'))})`}.`;
};

/** Was die Maßnahmenliste seit Beginn einer Bewegung als erledigt führt. */
const done = (numbers: Numbers): string => {
  if (typeof numbers.done_action !== 'string') return '';
  const more = num(numbers, 'done_more');
  return ` Seither erledigt: „${numbers.done_action}“ am ${date(text(numbers, 'done_on'))}${more > 0 ? ` und ${count(more, 'weitere Maßnahme', 'weitere Maßnahmen')}` : ''}; die Bewegung hält an.`;
};

/** Was anzusehen ist, wo eine Ursache passt, sonst nach dem Messwert: übliche Praxis, ohne Quelle. */
const STEP_OF_CAUSE: Record<Cause, string> = {
  'clogged strainer or drain':
    'Sieb und Ablauf reinigen lassen und das Gerät prüfen lassen, wenn die Bewegung anhält.',
  'door gasket or valve leak':
    'Türdichtung, Ventile und Verschraubungen ansehen lassen und den Vakuumtest wiederholen.',
  'pump or ejector wear, or warm or weak water':
    'Pumpe oder Ejektor ansehen lassen, auch Wärme und Druck des Betriebswassers.',
  'chamber or jacket scale': 'Kammer und Mantel auf Belag ansehen lassen, dazu die Wasserwerte.',
  'poor steam (wet or with gases)': 'Den Dampf ansehen lassen: Trockenheit, Gase und Druck.',
};
const STEP_OF_PROBE: Record<Probe, string> = {
  evacuation_time: 'Sieb und Ablauf ansehen, dann Pumpe, Betriebswasser und Türdichtung ansehen lassen.',
  heat_up_time: 'Dampfversorgung und Dampfeinlass ansehen lassen.',
  exhaust_time: 'Sieb und Ablauf ansehen, dann die Abdampfleitung ansehen lassen.',
  leak_rate: 'Türdichtung, Ventile und Verschraubungen ansehen lassen und den Vakuumtest wiederholen.',
  exposure_spread: 'Dampfversorgung und Temperaturfühler ansehen lassen.',
  saturation_residual: 'Gase im Dampf und die Fühler ansehen lassen.',
};
const step = (numbers: Numbers): string => {
  const [cause] = causesIn(text(numbers, 'cause'));
  return cause === undefined ? STEP_OF_PROBE[probeOf(numbers)] : STEP_OF_CAUSE[cause];
};

const ran = (numbers: Numbers): string =>
  count(num(numbers, 'cycles'), 'Produktionscharge', 'Produktionschargen');
const THOSE_RESPONSIBLE = 'über sie entscheiden die Verantwortlichen';
const spells = (numbers: Numbers): string =>
  num(numbers, 'failures') > 1 && num(numbers, 'episodes') > 0
    ? `, in ${count(num(numbers, 'episodes'), 'Episode, die', 'Episoden, die')} in diesem Monat ${num(numbers, 'episodes') === 1 ? 'begann' : 'begannen'}`
    : '';
const between = (numbers: Numbers): string => {
  const [first, last] = [text(numbers, 'first'), text(numbers, 'last')];
  if (first === last) return time(first);
  const sameDay = first.slice(0, 10) === last.slice(0, 10);
  return `${time(first)} bis ${sameDay ? last.slice(11) : time(last)}`;
};
const unsure = (numbers: Numbers): string =>
  num(numbers, 'certain') < num(numbers, 'cycles')
    ? `; ${integer(num(numbers, 'cycles') - num(numbers, 'certain'))} davon unsicher: von einem Test nur das Datum`
    : '';
const cyclesThen = (numbers: Numbers): string =>
  num(numbers, 'cycles') > 0 ? ` (${count(num(numbers, 'cycles'), 'Charge', 'Chargen')})` : '';

const leak = (n: Numbers, stands: string): string =>
  `Der letzte Vakuumtest (${time(text(n, 'at'))}) ergab eine Leckrate von ${amount(n, 'last')}, ${stands} der Grenze von ${amount(n, 'limit')}.`;

export const attentionWords: AttentionWords = {
  level: {
    act: 'Vor der nächsten Charge',
    decide: 'Entscheiden',
    look: 'Bald',
  },
  levelLetter: { act: '1', decide: '2', look: '3' },
  next: 'Als Nächstes',
  decides: 'Es entscheidet',
  evidence: 'Belege',
  none: 'Für kein Gerät ist ein Anlass verzeichnet, der in diesem Monat Aufmerksamkeit verlangt. Kein Hinweis heißt nicht: kein Fehler.',
  short: attentionShort,
  orderShort:
    'Reihenfolge: Einsatz nach nicht bestandenem Test, nicht bestandene, fehlende und späte Tests, Kammer überfällig, Häufung, Drift, Rest.',
  orderName: 'Reihenfolge der Dringlichkeit',
  order:
    'Geräte stehen nach ihrem dringendsten Anlass. Zuerst Chargen nach einem nicht bestandenen Test und vor einem bestandenen, Tests, die weiter nicht bestehen, Lecks über der Grenze und unvollständige Wiederinbetriebnahmen; dann mehrere nicht bestandene Prüftage nach ihrem Anteil, ein nicht bestandener Prüftag, Produktion ohne oder vor dem Test, überfällige Kammer, eine gezeigte Häufung, Drift, widersprochene Einträge; dann, was bald ansteht. Bei Gleichstand entscheidet der nächste Anlass, dann die Reihenfolge der Geräte.',
  more: (n) =>
    n === 1
      ? 'Ein weiteres Gerät mit Anlass'
      : `${integer(n)} weitere Geräte mit Anlass, in ihrer Reihenfolge`,
  reason: {
    ran_after_failure: (n) => ({
      evidence: `${ran(n)} nach einem nicht bestandenen Bowie-Dick-Test und vor einem bestandenen (${between(n)}${unsure(n)}).`,
      next: `Die Liste dieser Chargen durchgehen: ${THOSE_RESPONSIBLE}.${n.ended === null ? ' Seither bestand keiner: sicherstellen, dass das Gerät bis dahin außer Betrieb bleibt.' : ''}`,
      decides: 'Leitung der AEMP mit Krankenhaushygiene und Medizintechnik',
    }),
    ran_after_failure_perhaps: (n) => ({
      evidence: `Möglicherweise ${ran(n)} nach einem nicht bestandenen Bowie-Dick-Test und vor einem bestandenen (${between(n)}): Von einem Test ist nur das Datum bekannt.`,
      next: `Die Uhrzeiten dieser Tests suchen; liefen Chargen dazwischen: ${THOSE_RESPONSIBLE}.`,
      decides: 'Leitung der AEMP mit Krankenhaushygiene',
    }),
    episode_open: (n) => ({
      evidence: `Nicht bestandene Bowie-Dick-Tests seit dem ${date(text(n, 'since'))} und seither kein Tag, der mit einem bestandenen begann (${count(num(n, 'failed_days'), 'nicht bestandener Prüftag', 'nicht bestandene Prüftage')}).`,
      next: 'Sicherstellen, dass das Gerät außer Betrieb bleibt, bis es geprüft ist und den Test besteht; die Rückschauliste durchgehen.',
      decides: LEAD_AND_ENGINEERING,
    }),
    failed_test: (n) => ({
      evidence: `${integer(num(n, 'failures'))} von ${count(num(n, 'day_results'), 'Prüftag', 'Prüftagen')} nicht bestanden${spells(n)}.`,
      next: 'Rückschauliste durchgehen, Entscheidung ablegen.',
      decides: 'Leitung der AEMP mit Krankenhaushygiene',
    }),
    test_missing: (n) => ({
      evidence: `Produktion an ${integer(num(n, 'missing'))} von ${count(num(n, 'production_days'), 'Produktionstag', 'Produktionstagen')} ohne verzeichneten Bowie-Dick-Test${cyclesThen(n)}.`,
      next: 'Den Nachweis des Tests suchen, oder ablegen, dass es keinen gab und was für die Chargen der Liste daraus folgt.',
      decides: LEAD,
    }),
    test_late: (n) => ({
      evidence: `An ${integer(num(n, 'late'))} von ${count(num(n, 'production_days'), 'Produktionstag', 'Produktionstagen')} endete der Bowie-Dick-Test erst nach Beginn der Produktion${cyclesThen(n)}.`,
      next: 'Die Chargen durchgehen, die davor begannen, und den Arbeitsablauf zu Beginn dieser Tage ansehen.',
      decides: LEAD,
    }),
    return_incomplete: (n) => ({
      evidence: `Nach ${count(num(n, 'cleanings'), 'Kammerreinigung', 'Kammerreinigungen')} (die letzte am ${time(text(n, 'last'))}) kam Produktion vor einer Aufheizcharge und einem bestandenen Bowie-Dick-Test.`,
      next: 'Die Nachweise dieser Tage prüfen, und dass nach der nächsten Reinigung Aufheizcharge und bestandener Test zuerst kommen.',
      decides: LEAD,
    }),
    requalification_incomplete: (n) => ({
      evidence: `Nach einer größeren Instandhaltung, beendet am ${time(text(n, 'ended'))}, ${num(n, 'passes') === 1 ? 'kam' : 'kamen'} ${integer(num(n, 'passes'))} von ${count(num(n, 'wanted'), 'bestandenen Bowie-Dick-Test', 'bestandenen Bowie-Dick-Tests')} in Folge vor der Produktion.`,
      next: 'Die Unterlagen der Requalifizierung prüfen; ergänzen, was fehlt.',
      decides: `${LEAD_AND_ENGINEERING} oder die beauftragte Person`,
    }),
    comparison_shown: (n, level) => ({
      evidence: association(n, terms.verdict.shown, level),
      next: 'Entscheiden, ob diese Aufgabe an diesem Gerät durchgesetzt oder öfter erledigt wird. Zuerst sind andere Ursachen auszuschließen.',
      decides: COMMITTEE,
    }),
    chamber_overdue_now: (n) => ({
      evidence: `Die Kammerreinigung ist am Monatsende ${count(num(n, 'days_past_due'), 'Tag', 'Tage')} über die Frist${
        typeof n.clock_days === 'number'
          ? ` (${count(n.clock_days, 'Tag', 'Tage')} seit der letzten gezählten; Intervall ${interval(n)})`
          : ''
      }.`,
      next: 'Die Reinigung planen oder den Eintrag dazu suchen.',
      decides: LEAD,
    }),
    task_outstanding: (n) => ({
      evidence: `${terms.task[text(n, 'task') as CleaningTask]}: fällig am ${date(text(n, 'due'))} und nicht als erledigt verzeichnet (am Monatsende ${count(num(n, 'days_past_due'), 'Tag', 'Tage')} über die Frist; ${
        typeof n.last_done === 'string' ? `zuletzt am ${date(n.last_done)}` : 'davor keine verzeichnet'
      }).`,
      next: 'Einplanen oder den Eintrag dazu suchen.',
      decides: LEAD,
    }),
    records_contradicted: (n) => ({
      evidence: `Das Chargenprotokoll widerspricht ${count(num(n, 'in_month'), 'Eintrag', 'Einträgen')} zur Kammerreinigung in diesem Monat; ${integer(num(n, 'running') + num(n, 'hot'))} von ${integer(num(n, 'records'))} über alle Aufzeichnungen.`,
      next: 'Eintrag und Chargenprotokoll vergleichen; zuerst Uhren und Gerätenamen, dann die Art des Aufschreibens.',
      decides: LEAD,
    }),
    leak_over_limit: (n) => ({
      evidence: leak(n, 'über'),
      next: 'Sicherstellen, dass das Gerät außer Betrieb bleibt, bis das Leck gefunden ist und der Test besteht.',
      decides: LEAD_AND_ENGINEERING,
    }),
    leak_near_limit: (n) => ({
      evidence: leak(n, 'nahe'),
      next: 'Türdichtung und Verschraubungen ansehen lassen, bevor die Grenze erreicht ist.',
      decides: 'Medizintechnik',
    }),
    drift_near_limit: (n) => ({
      evidence: `${movement(n)} Der Wert ist nahe der Grenze.`,
      next: `${step(n)} Bevor die Grenze erreicht ist; im Zweifel das Gerät außer Betrieb nehmen.`,
      decides: LEAD_AND_ENGINEERING,
    }),
    drift_moving: (n) => ({
      evidence: movement(n),
      next:
        n.falls_back_at === null
          ? step(n)
          : 'Der Wert fällt bei jeder Reinigung zurück: reinigen und das Intervall ansehen.',
      decides: LEAD_AND_ENGINEERING,
    }),
    drift_stepped: (n) => ({
      evidence: `${probeName(n)}: Sprung nach ${text(n, 'direction') === 'down' ? 'unten' : 'oben'} am ${date(text(n, 'since'))}${
        typeof n.before === 'number' && typeof n.after === 'number'
          ? `, von ${amount(n, 'before')} auf ${amount(n, 'after')}`
          : ''
      }.`,
      next: 'Fragen, was an diesem Tag geändert wurde: eine Reparatur, ein Teil, eine Einstellung.',
      decides: LEAD_AND_ENGINEERING,
    }),
    heat_up_out_of_range: (n) => ({
      evidence: `${count(num(n, 'passes'), 'bestandener Test', 'bestandene Tests')} mit einer Aufheizzeit außerhalb der eigenen Grenzen des Geräts; langsamer Dampfeinlass kann eingeschlossene Luft verdecken.`,
      next: 'Dampfeinlass und Testchargen ansehen lassen.',
      decides: 'Medizintechnik',
    }),
    abort_rate_signal: (n) => ({
      evidence: `Die Abbruchrate dieses Monats liegt außerhalb ihrer Grenzen${
        typeof n.events === 'number'
          ? ` (${count(n.events, 'Abbruch', 'Abbrüche')} in ${count(num(n, 'of'), 'Produktionscharge', 'Produktionschargen')})`
          : ''
      }.`,
      next: 'Die Abbruchtexte des Monats auf eine gemeinsame Ursache durchsehen.',
      decides: LEAD_AND_ENGINEERING,
    }),
    early_stops: (n) => ({
      evidence: `${count(num(n, 'early_stops'), 'ungeklärter früher Stopp', 'ungeklärte frühe Stopps')}: kurze, von Hand gestoppte Chargen ohne Reinigungseintrag in der Nähe.`,
      next: 'Fragen, ob dies Reinigungen waren, die niemand eingetragen hat.',
      decides: LEAD,
    }),
    strainers_missed: (n) => ({
      evidence: `${integer(num(n, 'missed'))} von ${count(num(n, 'due'), 'fälligen Siebreinigung', 'fälligen Siebreinigungen')} versäumt.`,
      next: 'Ansehen, wer das Sieb wann reinigt, vor der ersten Charge.',
      decides: LEAD,
    }),
  },
};
