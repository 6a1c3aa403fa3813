import type { CleaningWords } from '../en/cleaning.ts';
import { format } from './format.ts';

const { integer, count, list } = format;

/** Wörter zu erledigten und fälligen Reinigungen. */
export const cleaning: CleaningWords = {
  heading: 'Reinigung: erledigt und fällig',
  intro: (month) =>
    `Jede Aufgabe, die im ${month} fällig wurde, nach Gerät und Betriebstag. Eine Lücke im Reinigungsbuch heißt weder erledigt noch versäumt, solange keine Regel des Standorts es sagt.`,
  leftOut:
    'Nicht mitgezählt: Tage ohne Einsatz, an denen nichts fällig wird, und Arbeit über das Fällige hinaus. Noch offene Aufgaben zählen als fällig und weder als erledigt noch als versäumt. Gezählt ist alles, was fällig wurde, keine Stichprobe; deshalb steht kein Intervall dabei.',
  barsTitle: 'Fällige Aufgaben, alle Geräte, nach Stand',
  barsDescription: (lines) =>
    `Ein Balken je Aufgabe, von null bis zu allem, was fällig wurde. ${lines.join(' ')}`,
  calendarTitle: (task) => `${task} nach Gerät und Tag`,
  calendarDescription: (task, month, states) =>
    `Eine Zeile je Gerät und eine Zelle je Betriebstag im ${month}. ${task}: ${states}. Leere Zellen sind Tage ohne Einsatz.`,
  dueCount: (due) => `${integer(due)} fällig`,
  doneCount: (done, due) => `${integer(done)} von ${integer(due)} rechtzeitig erledigt`,
  key: 'So sind die Stände gezeichnet',
  none: (month) => `Von keiner Aufgabe ist bekannt, dass sie im ${month} fällig wurde.`,
  tableCaption: (month) => `Reinigungsaufgaben, fällig und erledigt, ${month}`,
  recordCaption: (span) => `Reinigungsaufgaben, fällig und erledigt, ${span}`,
  heads: {
    unit: 'Gerät',
    task: 'Aufgabe',
    due: 'Fällig',
    done: 'Rechtzeitig erledigt',
    done_late: 'Spät erledigt',
    missed: 'Versäumt',
    not_recorded: 'Nicht eingetragen',
    contradicted: 'Widersprochen',
    open: 'Offen',
  },
  chamberCaption: (span) => `Einträge zur Kammerreinigung neben dem Chargenprotokoll, ${span}`,
  chamberHeads: {
    unit: 'Gerät',
    interval: 'Festgelegtes Intervall',
    clock: 'Tage seit der letzten gezählten',
    pastDue: 'Tage über die Frist',
    records: 'Einträge',
    supported: 'Gestützt',
    running: 'Gerät lief',
    hot: 'Gerät war heiß',
    noReturn: 'Ohne Rückkehr',
    notJudged: 'Nur Datum',
    reactive: 'Anlassbezogen',
  },
  chamberNote:
    'Gestützt: Das Gerät stand vor der Arbeit für die Abkühlzeit still, und vor der Produktion kamen eine Aufheizcharge und ein bestandener Bowie-Dick-Test. Lief oder war heiß: Das Protokoll widerspricht dem Eintrag. Ein Eintrag kann zugleich heiß und ohne Rückkehr sein, die Spalten können also mehr ergeben als die Einträge. Nur Datum: Vom Eintrag oder vom bestandenen Test danach ist die Uhrzeit nicht bekannt, die Reihenfolge lässt sich also nicht beurteilen. Tage über die Frist: am Tag nach dem Monat; nicht bekannt, wo die Regel des Standorts nicht sagt, was eine Lücke bedeutet, oder kein Protokoll geführt wurde. Anlassbezogen: innerhalb von zwei Tagen nach einem Fehler, oder so eingetragen.',
  noInterval: 'keines festgelegt',
  never: 'kein Eintrag',
  notKnown: 'nicht bekannt',
  unitLine: (parts) => format.sentence(list(parts)),
  taskSummary: (task, done, due) =>
    `${task}: ${integer(done)} von ${count(due, 'fälligen Aufgabe', 'fälligen Aufgaben')} erledigt.`,
};
