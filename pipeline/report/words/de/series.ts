import type { SeriesWords } from '../en/series.ts';
import { format } from './format.ts';

const { integer, count, list } = format;

/** Wörter zu Fehlern und Abbrüchen im Zeitverlauf und nach Tagen seit der Reinigung. */
export const series: SeriesWords = {
  testsHeading: 'Nicht bestandene Bowie-Dick-Tests im Zeitverlauf',
  abortsHeading: 'Abbrüche im Zeitverlauf',
  clockHeading: 'Fehler nach Tagen seit der Reinigung',
  testsIntro:
    'Der erste gültige Test eines Betriebstags ist sein Ergebnis. Punkte: nicht bestandene je 100 Prüftage unter Risiko (mit Ergebnis, nicht innerhalb einer Fehlerepisode, nicht außer Betrieb), sodass eine Episode einmal zählt. Das Band fasst die Grenzen, in denen sich Monate allein durch Zufall unterscheiden (drei Sigma, p-Karte), festgehalten an den ersten Monaten der Aufzeichnungen.',
  abortsIntro:
    'Abbrüche einer Klasse, zu der ein verschmutztes Sieb, ein verschmutzter Ablauf oder eine verschmutzte Kammer beitragen kann, je 100 Produktionschargen. Das Band fasst die Grenzen einer u-Karte, festgehalten an den ersten Monaten der Aufzeichnungen.',
  clockIntro:
    'Tage unter Risiko nach Kalendertagen seit der letzten gezählten Kammerreinigung, jede Klasse mit ihrem exakten Intervall. Klassen mit wenigen Tagen haben weite Intervalle.',
  testsLeftOut: (n) =>
    `Nicht mitgezählt, ${n.span}: ${count(n.retests, 'Wiederholungstest', 'Wiederholungstests')}, ${count(n.afterRepair, 'Test nach Reparatur', 'Tests nach Reparatur')}, ${count(n.qualification, 'Qualifizierungstest', 'Qualifizierungstests')}, ${count(n.invalid, 'ungültiger Test', 'ungültige Tests')}; im Bild auch ${count(n.notAtRisk, 'Prüftag', 'Prüftage')} in einer Fehlerepisode oder außer Betrieb.`,
  abortsLeftOut: (n) =>
    `Nicht mitgezählt, ${n.span}: ${count(n.purges, 'Entleerungscharge', 'Entleerungschargen')} (kurz nach einer Reinigung von Hand gestoppt, um Spülwasser abzulassen), ${count(n.earlyStops, 'ungeklärter früher Stopp', 'ungeklärte frühe Stopps')}, ${count(n.open, 'Charge', 'Chargen')} ohne gesehenes Ende, ${count(n.testAborts, 'Abbruch', 'Abbrüche')} von Test- und Aufheizchargen; im Bild auch ${count(n.unrelated, 'Abbruch', 'Abbrüche')} aus anderen Ursachen und ${integer(n.unclassified)} nicht zugeordnete.`,
  clockLeftOut: (n) =>
    `Nicht mitgezählt, ${n.span}: ${count(n.before, 'Prüftag', 'Prüftage')} vor der ersten gezählten Reinigung, ${integer(n.notAtRisk)} in einer Episode oder außer Betrieb.`,
  failedTitle: (scope) => `Nicht bestandene je 100 Prüftage, ${scope}, nach Monat`,
  abortsTitle: (scope) =>
    `Abbrüche mit möglichem Bezug zur Sauberkeit je 100 Produktionschargen, ${scope}, nach Monat`,
  byUnit: 'jedes Gerät auf derselben Skala',
  clockFailedTitle: (scope) => `Nicht bestandene Prüftage nach Tagen seit der Kammerreinigung, ${scope}`,
  clockAbortsTitle: (scope) =>
    `Abbrüche mit möglichem Bezug zur Sauberkeit nach Tagen seit der Kammerreinigung, ${scope}`,
  allUnits: 'alle Geräte',
  unit: (unit) => `Gerät ${unit}`,
  describe: (scope, what, points, limits) => `${scope}: ${what}. ${points.join('; ')}. ${limits}`,
  point: (month, events, of, noun) => `${month} ${integer(events)} von ${integer(of)} ${noun}`,
  noEvents: (what, span) =>
    `Keine Ereignisse in der Zeit ${span}: ${what}. Es gibt nichts zu zeichnen; die Zahlen stehen in der Tabelle.`,
  noPoints: 'Kein Monat der Aufzeichnungen hat einen Tag unter Risiko.',
  noClock: 'Eine gezählte Kammerreinigung ist nicht verzeichnet, also gibt es keine Tage seit einer.',
  limits: (from, to) => `Die Grenzen stammen aus ${from} bis ${to} (blasses Band) und gelten danach weiter.`,
  noLimits:
    'Zu wenige Ereignisse für Grenzen: weniger als drei je Monat zu erwarten; die Punkte stehen allein.',
  noLimitsUnits: (units) =>
    `Ohne Band: ${list(units)}, mit weniger als drei zu erwartenden Ereignissen im Monat.`,
  newestMonths: (months) =>
    `Gezeigt sind die letzten ${months} Monate; die Tabelle hat jeden Monat der Aufzeichnung.`,
  signals: (texts) => `Signale: ${list(texts)}.`,
  noSignals: 'Kein Monat liegt außerhalb der Grenzen, und nirgends liegen acht in Folge auf einer Seite.',
  signal: (scope, month, rule, side) => `${scope}, ${month} (${rule}${side === '' ? '' : `, ${side}`})`,
  firstOfEpisode: (month, counted, failed) =>
    `Gezählt ist der erste nicht bestandene Tag jeder Episode: im ${month} ${integer(counted)} von insgesamt ${count(failed, 'nicht bestandenen Prüftag', 'nicht bestandenen Prüftagen')}.`,
  readingMonth: 'Großer dunkler Punkt: der Berichtsmonat.',
  readingInterval: (level) =>
    `Balken hinter den Punkten: exaktes ${level}-Intervall jedes Monats, am Rand des Bildes abgeschnitten.`,
  readingSignal: 'Ring: ein Monat mit Signal.',
  countTitle: (what, scope) => `${format.sentence(what)}, ${scope}, nach Monat`,
  countReading: (level) =>
    `Anzahlen, weil es für eine Rate mit Grenzen zu wenige Ereignisse im Monat gibt (weniger als drei zu erwarten). Dunkler Balken: der Berichtsmonat. Linie auf jedem Balken: exaktes ${level}-Intervall des Monats, als Anzahl.`,
  countNumbers: 'Zahlen darüber: die Ereignisse jedes Monats.',
  testsCaption: (month, span) => `Bowie-Dick-Tests, ${month} und ${span}`,
  cyclesCaption: (month, span) => `Produktionschargen und Abbrüche, ${month} und ${span}`,
  clockCaption: 'Fehler und Abbrüche nach Tagen seit der Kammerreinigung, alle Geräte',
  ranking: {
    title: (span) => `Nicht bestandene Prüftage nach Gerät, höchste zuerst, ${span}`,
    reading:
      'Ring: wie gezählt. Punkt und Linie: zu allen Geräten hin gezogen, je weniger Tage das Gerät hat, mit Intervall. Bänder: 95 % (dunkler) und 99,8 % (blasser) der Geräte, die wie alle anderen sind, liegen darin.',
    describe: (unit, counts, shrunken) =>
      `${unit}: ${counts} Prüftagen, zu allen Geräten hin gezogen ${format.twoFigures(shrunken)} je 100.`,
  },
  heads: {
    unit: 'Gerät',
    failedMonth: 'Nicht bestandene Prüftage, Monat',
    failedRecord: 'Nicht bestandene Prüftage, gesamt',
    interval: (level) => `${level}\u2011Intervall`,
    episodes: 'Begonnene Episoden, Monat',
    retests: 'Wiederholungstests, Monat',
    missing: 'Tage ohne Test, Monat',
    late: 'Tage mit spätem Test, Monat',
    abortsMonth: 'Abbrüche, Monat',
    abortsRecord: 'Abbrüche, gesamt',
    classes: 'Abbrüche nach Klasse, Monat',
    purges: 'Entleerungs\u00adchargen, Monat',
    earlyStops: 'Frühe Stopps, Monat',
    days: 'Tage seit Reinigung',
    failed: 'Nicht bestandene Prüftage',
    aborts: 'Abbrüche, Sauberkeit',
  },
  noneAtRisk: 'kein Prüftag',
};
