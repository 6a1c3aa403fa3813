import type { MeetingWords } from '../en/meeting.ts';
import { format } from './format.ts';

const { count, integer, date } = format;

/** Wörter der Seite für die Besprechung: Maßnahmen des Monats, was zu entscheiden ist, was der nächste Monat bringt. */
export const meeting: MeetingWords = {
  shortHeading: 'Seit dem letzten Bericht, und als Nächstes',
  whole: 'Änderungen, Maßnahmen, und was der nächste Monat bringt',
  actionsHeading: 'Maßnahmen: erledigt, offen, verspätet',
  actionsIntro:
    'Aus der Liste der Maßnahmen, die der Standort führt, wie sie am Monatsende stand. Verspätet: Der Tag war vorbei, und als erledigt war die Maßnahme nicht verzeichnet.',
  notKept:
    'Es wurde keine Liste von Maßnahmen gelesen. Eine Tabelle mit den Spalten time, unit, action, role, due, done_on und state genügt, und der nächste Bericht zeigt, was erledigt wurde; next-steps.csv kann ihr Anfang sein.',
  noActions: (month) => `Im ${month} war keine Maßnahme offen, beschlossen oder erledigt.`,
  settledBefore: (n) =>
    `${count(n, 'Maßnahme wurde', 'Maßnahmen wurden')} vor dem Monat erledigt oder fallen gelassen und ${n === 1 ? 'steht' : 'stehen'} nicht hier.`,
  actionCounts: (counts) =>
    `${count(counts.done + counts.done_late, 'Maßnahme', 'Maßnahmen')} erledigt${
      counts.done_late > 0 ? ` (${integer(counts.done_late)} nach ihrem Tag)` : ''
    }, ${integer(counts.open)} offen, ${integer(counts.late)} verspätet${counts.dropped > 0 ? `, ${integer(counts.dropped)} fallen gelassen` : ''}.`,
  actionsCaption: (month) => `Maßnahmen im ${month}`,
  actionHeads: {
    action: 'Maßnahme',
    unit: 'Gerät',
    role: 'Wer entscheidet',
    decided: 'Beschlossen',
    due: 'Fällig',
    done: 'Erledigt',
    standing: 'Stand',
  },
  standing: {
    late: 'verspätet',
    open: 'offen',
    done_late: 'spät erledigt',
    done: 'erledigt',
    dropped: 'fallen gelassen',
  },
  daysLate: (days) => count(days, 'Tag', 'Tage'),
  afterMonth: (on) => `${date(on)}, nach dem Monat`,
  noDay: 'kein Tag genannt',
  anyUnit: 'kein einzelnes Gerät',
  noRole: 'nicht genannt',
  stepsHeading: 'Was jetzt zu entscheiden ist',
  stepsIntro:
    'Jeder Anlass mit dem nächsten Schritt, der gewöhnlich daraus folgt, und der Rolle, die entscheidet. Vorgeschlagen wird, eingetragen wird nichts: Es entscheidet die Besprechung; es gelten Gebrauchsanweisung und örtliche Regeln.',
  stepsNone: 'Für kein Gerät ist ein Anlass verzeichnet; deshalb wird nichts vorgeschlagen.',
  stepsCaption: 'Nächste Schritte, die dringendsten zuerst',
  stepHeads: {
    unit: 'Gerät',
    when: 'Stufe',
    why: 'Warum',
    step: 'Nächster Schritt',
    decides: 'Wer entscheidet',
  },
  stepsFile: 'Dasselbe als Anfang einer Liste von Maßnahmen, der Tag ist einzutragen:',
  nextHeading: (month) => `Was der ${month} bringt, wenn sich nichts ändert`,
  nextIntro: (weeks) =>
    `Nach der Reinigungsregel des Standorts und der jeweils letzten Erledigung, jede Aufgabe als an ihrem Tag erledigt genommen. Einsatztage sind nach Gewohnheit erwartet: Wochentage, an denen ein Gerät in mindestens der Hälfte der letzten ${integer(weeks)} Wochen im Einsatz war; Feiertage sind nicht bekannt.`,
  tasksNone: (month) => `Von keiner Aufgabe mit Intervall ist bekannt, dass sie im ${month} fällig wird.`,
  calendarTitle: (month) => `Aufgaben, die im ${month} fällig werden, nach Gerät und Tag`,
  calendarDescription: (month, parts) =>
    `Eine Zeile je Gerät und eine Zelle je Tag im ${month}. ${parts}. Blasse Zellen sind Tage mit erwartetem Einsatz, leere solche ohne.`,
  calendarCount: (task, due, outstanding) =>
    `${task}: ${integer(due)} werden fällig, ${integer(outstanding)} ausstehend`,
  dayTitle: (month) => `Betriebstag im ${month}`,
  letter: { drain_strainer: 'S', drain_flush: 'A', chamber: 'K', professional: 'F' },
  outstandingMark: '!',
  key: 'So sind die Aufgaben gezeichnet',
  keyOutstanding: 'vor dem Monat fällig geworden und nicht als erledigt verzeichnet: am ersten Einsatztag',
  keyExpected: 'Einsatz erwartet, nichts mit Intervall fällig',
  keyIdle: 'leer: kein Einsatz erwartet',
  daily: (task, days, units) =>
    `${task}: vor der ersten Charge jedes Einsatztags, ${integer(days)}-mal an ${count(units, 'Gerät', 'Geräten')}.`,
  tasksCaption: (month) => `Aufgaben mit Intervall im ${month}`,
  taskHeads: { day: 'Tag', unit: 'Gerät', task: 'Aufgabe', state: 'Stand', last: 'Zuletzt erledigt' },
  taskState: { due: 'fällig', outstanding: 'ausstehend', each_day_of_use: 'jeden Einsatztag' },
  taskSince: (due) => `seit ${date(due)}`,
  taskOn: (due) => `am ${date(due)}, einem Tag ohne erwarteten Einsatz`,
  afterChamber: 'nach der Kammerreinigung',
  never: 'keine verzeichnet',
  watchHeading: 'Geräte unter Beobachtung',
  watchIntro: 'Anlässe, die nicht mit dem Monat enden.',
  watchNone: 'Kein Gerät steht unter Beobachtung. Kein Hinweis heißt nicht: kein Fehler.',
  watchCaption: 'Geräte unter Beobachtung',
  watchHeads: { unit: 'Gerät', why: 'Warum' },
  missingHeading: 'Daten, die fehlen werden',
  missingIntro:
    'Was den Aufzeichnungen des Monats schon fehlt. Ändert sich nichts, kann der nächste Bericht nicht sagen, was davon abhängt.',
  missingNone:
    'Es ist nicht bekannt, dass etwas fehlt: Alle Quellen laufen weiter, und was sie enthalten sollen, ist da.',
  missingCaption: 'Daten, die fehlen werden, wenn sich nichts ändert',
  missingHeads: {
    what: 'Was',
    where: 'Wo',
    since: 'Zuletzt',
    effect: 'Was sich ohne das nicht sagen lässt',
  },
  missing: {
    source_stopped: 'Quelle schweigt länger als je zuvor',
    source_without_records: 'Quelle ohne jeden Eintrag',
    cleaning_log_silent: 'Seit über zehn Tagen kein Eintrag im Reinigungsbuch',
    no_leak_tests: 'Kein Vakuumtest im Monat',
    no_durations: 'Test- und Aufheizchargen ohne Zeitdauern',
    tests_without_time: 'Tests, von denen nur das Datum bekannt ist',
    cycles_without_end: 'Chargen ohne Ende',
    no_use_expected: 'Kein regelmäßiger Einsatztag in den letzten Wochen',
  },
  missingEffect: {
    source_stopped: 'alles, was sich auf sie stützt',
    source_without_records: 'alles, was sich auf sie stützt',
    cleaning_log_silent: 'ob gereinigt wurde: Lücken heißen dann weder erledigt noch versäumt',
    no_leak_tests: 'ob das Gerät sein Vakuum hält',
    no_durations: 'ob das Gerät driftet, bevor es versagt',
    tests_without_time: 'ob Tests vor der Produktion kamen',
    cycles_without_end: 'ob ein Reinigungseintrag zum Chargenprotokoll passt',
    no_use_expected: 'wann Aufgaben fällig werden',
  },
  missingCount: (of) =>
    of.count === null || of.of === null ? '' : `${integer(of.count)} von ${integer(of.of)}`,
  missingWhere: (of) =>
    [of.source, of.unit === null ? null : `Gerät ${of.unit}`, of.unit === null ? of.site : null]
      .filter((part) => part !== null)
      .join(', '),
  shortActions: (counts) =>
    `Maßnahmen: ${integer(counts.done + counts.done_late)} erledigt, ${integer(counts.open)} offen, ${integer(counts.late)} verspätet.`,
  shortNext: (month, due, outstanding) =>
    `Im ${month} ${due === 1 ? 'wird' : 'werden'} ${count(due, 'Aufgabe', 'Aufgaben')} mit Intervall fällig, und ${integer(outstanding)} ${outstanding === 1 ? 'steht' : 'stehen'} noch aus.`,
  shortMissing: (n) =>
    n === 0
      ? ''
      : `${n === 1 ? 'Eines wird' : `${integer(n)} Dinge werden`} in den Daten fehlen, wenn sich nichts ändert.`,
};
