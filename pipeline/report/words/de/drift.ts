import type { DriftWords } from '../en/drift.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

const { count, date, figures, integer } = format;

/** Wörter zur Beobachtung der leeren Tageschargen. */
export const drift: DriftWords = {
  heading: 'Geräte, die driften, bevor sie versagen',
  intro:
    'Aufheizcharge, Bowie-Dick-Test und Vakuumtest eines Tages laufen leer und jeden Tag gleich; so lässt sich ein Gerät mit sich selbst vergleichen. Was an einem Tag alle Geräte eines Standorts bewegt (Dampf, Wasser, Jahreszeit), ist vorher herausgenommen. Kein Hinweis heißt nicht: kein Fehler; plötzliche Fehler kündigen sich nicht durch Drift an.',
  state: {
    steady: 'stabil',
    moving: 'in Bewegung',
    near_limit: 'nahe der Grenze',
    stepped: 'Sprung',
    not_enough_data: 'zu wenige Daten',
  },
  none: 'Nichts bewegt sich: Keine Messgröße eines Geräts ist in diesem Monat in Bewegung, nahe ihrer Grenze oder gesprungen.',
  tableCaption: (to) => `Messgrößen in Bewegung, nahe der Grenze oder mit Sprung, bis ${date(to)}`,
  unitCaption: (to) => `Stand jeder Messgröße, bis ${date(to)}`,
  noteOf: (unit, probe, notes) => `${unit}, ${probe}: ${notes}`,
  siteCaption: 'Was alle Geräte eines Standorts bewegt hat, in den letzten vier Wochen',
  siteNote:
    'Bewegen sich mehrere Geräte gemeinsam, weist das auf die Versorgung mit Dampf, Wasser oder Luft, nicht auf ein Sieb.',
  heads: {
    unit: 'Gerät',
    probe: 'Messgröße',
    state: 'Stand',
    since: 'Seit',
    now: 'Jetzt',
    rate: `Änderung je Woche (${format.level(0.9)}\u2011Intervall)`,
    days: `Tage bis zur Grenze (${format.level(0.9)}\u2011Intervall)`,
    site: 'Standort',
    change: 'Änderung',
  },
  up: 'aufwärts',
  down: 'abwärts',
  probe: (probe) => terms.probe[probe],
  value: (value, measure) => `${figures(value)}\u00a0${measure}`,
  change: (value, measure) =>
    measure === 'percent' ? `${format.change(value, 2)}\u00a0%` : `${format.change(value, 2)} ${measure}`,
  usual: (low, high) => `üblich ${figures(low)} bis ${figures(high)}`,
  span: (low, high) => `${figures(low)} bis ${figures(high)}`,
  days: (days) => (days === null ? 'über zwei Jahre' : integer(days)),
  daysSpan: (low, high) => (high === null ? `ab ${integer(low)}` : `${integer(low)} bis ${integer(high)}`),
  daysUnknown: (hasLimit) => (hasLimit ? 'nicht zu sagen' : 'keine Grenze bekannt'),
  limit: {
    configured: 'Grenze',
    alarm_time: 'eigene Alarmzeit des Geräts',
    failed_before: 'Wert, bei dem es früher versagte',
  },
  sawTooth: (task, cleanings) =>
    `Sägezahn: fällt zurück nach ${terms.task[task]} (${count(cleanings, 'Mal', 'Male')}), was für Reinigen spricht und nicht für eine Reparatur.`,
  cause: (causes) =>
    `passen zusammen am besten zu: ${causes.map((cause) => terms.cause[cause]).join(' oder ')}. Ein Hinweis, keine Diagnose.`,
  note: {
    whole_minutes: 'nur ganze Minuten',
    stuck: 'eine Strecke mit stehendem Wert ist ausgelassen',
    measure_changed: 'Einheit wechselte; von da an beurteilt',
    missing_values: 'viele Werte fehlen',
    no_recent_values: 'keine neuen Werte',
    after_cleaning: 'Vakuumtests kurz nach einer Reinigung ausgelassen: eine nasse Kammer wirkt wie ein Leck',
    controller_replaced: 'Steuerung getauscht: neue Ausgangslage',
    common_movement_not_removed: 'zu wenige Geräte, um die gemeinsame Bewegung herauszunehmen',
    undecided: 'neben der üblichen Lage, noch nicht klar wie',
  },
  figureTitle: (probe, measure, unit) =>
    `${terms.probe[probe]} (${measure}) der ${terms.cyclesOfProbe(probe)}, Gerät ${unit}`,
  reading:
    'Punkte: der Wert jedes Tages. Band: zwei Standardabweichungen eines üblichen Tages um die eigene Lage des Geräts. Linie: die Bewegung. Dreiecke: Reinigungen, Rauten: nicht bestandene Tests, senkrechte Linien: Reparaturen und anderes, wonach neu verglichen wird.',
  readingWeeks:
    'In dieser langen Aufzeichnung vor den letzten zwei Jahren: der Median jeder Woche, mit einer Linie von ihrem kleinsten zu ihrem größten Wert; die Tabelle hat jeden Tag.',
  weekMedian: (value, values) =>
    `${value}, Median aus ${count(values, 'Wert', 'Werten')} von diesem Tag bis zum Ende der Woche`,
  describe: (probe, state, values) => `${probe}: ${state}, ${count(values, 'Wert', 'Werte')}.`,
  passesCaption:
    'Bestandene Tests mit einer Aufheizzeit außerhalb der eigenen Grenzen des Geräts, in diesem Monat',
  passesNote: 'Langsamer Dampfeinlass kann einen Test bestehen lassen, der nicht hätte bestehen dürfen.',
  passHeads: { unit: 'Gerät', date: 'Tag', value: 'Aufheizzeit, s', limits: 'Eigene Grenzen, s' },
  measured: {
    heading: 'Wie gut die Beobachtung der Drift ist',
    intro: (version, stride) =>
      `Die Beobachtung lief ${stride === 1 ? 'jeden Tag' : `alle ${format.integer(stride)} Tage`} zwei Jahre lang an simulierten Standorten (Version ${version}), bei denen bekannt ist, was driftet. Größen in Standardabweichungen des Wertes einer einzelnen Charge. Falsch gemeldet heißt: eine Bewegung, wo keine war, in irgendeiner Messgröße eines Geräts. Vorlauf ist die Zeit von der ersten Meldung bis zum Versagen, 0 bei übersehener Drift; in der Hälfte der Fälle war er länger.`,
    caption: `Die Beobachtung an simulierten Standorten, mit ${format.level(0.95)}\u2011Intervallen`,
    scenario: (scenario, says) => SCENARIOS[scenario] ?? says,
    notAsked: 'nicht gefragt',
    heads: {
      scenario: 'Was an den Standorten galt',
      falseCalls: 'Falsche Meldungen je Gerät und Jahr',
      found: 'Vor dem Versagen gefundene Drift',
      lead: 'Mittlerer Vorlauf (Median)',
      steps: 'Sprünge, die Bewegung genannt wurden',
      intervals: `${format.level(0.9)}\u2011Intervalle der Tage bis zur Grenze, die hielten`,
      teeth: 'Erkannte Sägezähne',
    },
    days: (days) => count(Math.round(days), 'Tag', 'Tage'),
    share: (share) => `${share} der Drift`,
    span: (low, high) => `${figures(low)} bis ${figures(high)}`,
    runLengths: (normal, heavy) =>
      `Die Karten, die die Frage stellen, sind auf ein falsches Signal in 500 Werten eingestellt. Simuliert mit Autokorrelation von 0 bis 0,6: ${integer(normal.low)} bis ${integer(normal.high)} Werte bei normalem Rauschen, ${integer(heavy.low)} bis ${integer(heavy.high)} bei Rauschen mit schweren Rändern.`,
    calls: (rate, low, high) =>
      `${figures(rate, 2)}-mal (${figures(low, 2)} bis ${figures(high, 2)}) je Gerät und Jahr${rate > 0 ? `, bei zehn Geräten etwa ${10 * rate < 1 ? `einmal in ${count(Math.round(12 / (10 * rate)), 'Monat', 'Monaten')}` : `${format.twoFigures(10 * rate)}-mal im Jahr`}` : ''}`,
    note: ({ calls, found, lead }) =>
      `An simulierten Standorten ohne Drift wird eine Bewegung fälschlich gemeldet: ${calls}. Drift, die im Versagen endet, wurde zu ${found} vorher gemeldet; die Hälfte aller Fälle ${lead} oder mehr vorher.`,
    more: 'Wie das gemessen wurde',
  },
  unitNone: 'Keine Messgröße dieses Geräts hat einen Wert.',
};

/** Was an den simulierten Standorten galt. Größen in Standardabweichungen eines einzelnen Wertes. */
const SCENARIOS: Readonly<Record<string, string>> = {
  'no drift':
    'Sechs Geräte, zwei Jahre, keine Drift; Jahreszeit, autokorreliertes Rauschen mit schweren Rändern, einzelne Ausreißer, nicht vermerkte Sprünge von 2 bis 6 und Reparaturen.',
  'slow noise':
    'Ohne Drift, mit Rauschen, das anhält: drei Zehntel seiner Varianz behalten 0,6 von Tag zu Tag.',
  'two units': 'Ohne Drift, an einem Standort mit zwei Geräten, jedes mit dem anderen verglichen.',
  'one unit':
    'Ohne Drift, an einem Standort mit einem Gerät, wo Jahreszeit und Versorgung nicht herauszunehmen sind.',
  'saw-tooth':
    'Ohne Drift; bei drei von sechs Geräten steigt die Druckentlastungszeit zwischen den Spülungen des Ablaufs.',
  steps: 'Nur nicht vermerkte Sprünge, zwei je Gerät und Jahr, von 2 bis 6.',
  'small steps': 'Dasselbe mit Sprüngen von 1 bis 2, die wie der Beginn einer Drift aussehen.',
  'whole minutes': 'Ohne Drift; die Steuerung gibt ganze Minuten an.',
  drift:
    'Jedes Gerät hat eine Drift nach einem der üblichen Muster: Die führende Messgröße bewegt sich in 20 bis 90 Tagen um 4, dann versagt das Gerät und wird repariert.',
  'drift of one probe': 'Dasselbe mit einer täglichen Messgröße, die allein driftet.',
  'drift, slow noise': 'Mit Drift, und mit Rauschen, das anhält.',
  'drift, two units': 'Mit Drift, an einem Standort mit zwei Geräten.',
  'drift, one unit': 'Mit Drift, an einem Standort mit einem Gerät.',
  'leak, daily tests':
    'Die Leckrate driftet in 20 bis 90 Tagen um 4, die Evakuierungszeit um 2; jeden Tag getestet.',
  'leak, weekly tests': 'Die Leckrate driftet in 100 bis 250 Tagen um 6; jede Woche getestet.',
};
