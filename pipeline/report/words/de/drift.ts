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
    rate: `Änderung je Woche (${format.level(0.9)}-Intervall)`,
    days: `Tage bis zur Grenze (${format.level(0.9)}-Intervall)`,
    site: 'Standort',
    change: 'Änderung',
  },
  up: 'aufwärts',
  down: 'abwärts',
  probe: (probe) => terms.probe[probe],
  value: (value, measure) => `${figures(value)} ${measure}`,
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
    `Mehrere Messgrößen zusammen passen am besten zu: ${causes.map((cause) => terms.cause[cause]).join(' oder ')}. Ein Hinweis, keine Diagnose.`,
  note: {
    whole_minutes: 'nur ganze Minuten',
    stuck: 'eine Strecke mit stehendem Wert ist ausgelassen',
    measure_changed: 'Einheit wechselte; umgerechnet',
    missing_values: 'viele Werte fehlen',
    no_recent_values: 'keine neuen Werte',
    after_cleaning: 'Vakuumtests kurz nach einer Reinigung ausgelassen: eine nasse Kammer wirkt wie ein Leck',
    controller_replaced: 'Steuerung getauscht: neue Ausgangslage',
    common_movement_not_removed: 'zu wenige Geräte, um die gemeinsame Bewegung herauszunehmen',
    undecided: 'neben der üblichen Lage, noch nicht klar wie',
  },
  figureTitle: (probe, measure, unit) =>
    `${terms.probe[probe]} (${measure}) der leeren Tageschargen, Gerät ${unit}`,
  reading:
    'Punkte: der Wert jedes Tages. Band: zwei Standardabweichungen eines üblichen Tages um die eigene Lage des Geräts. Linie: die Bewegung. Dreiecke: Reinigungen, Rauten: nicht bestandene Tests, senkrechte Linien: Reparaturen und anderes, wonach neu verglichen wird.',
  describe: (probe, state, values) => `${probe}: ${state}, ${count(values, 'Wert', 'Werte')}.`,
  passesCaption:
    'Bestandene Tests mit einer Aufheizzeit außerhalb der eigenen Grenzen des Geräts, in diesem Monat',
  passesNote: 'Langsamer Dampfeinlass kann einen Test bestehen lassen, der nicht hätte bestehen dürfen.',
  passHeads: { unit: 'Gerät', date: 'Tag', value: 'Aufheizzeit, s', limits: 'Eigene Grenzen, s' },
  unitNone: 'Keine Messgröße dieses Geräts hat einen Wert.',
};
