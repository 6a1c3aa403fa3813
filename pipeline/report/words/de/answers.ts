import type { AnswersWords, CleaningAnswer, FailuresAnswer } from '../en/answers.ts';
import { format } from './format.ts';

const { integer, count, list } = format;

const names = (items: string[], most = 6): string =>
  items.length <= most ? list(items) : list([...items.slice(0, most), `${items.length - most} weitere`]);

/** Was am Ende des Monats aussteht. */
const outstanding = ({ outstanding: tasks, fromBefore }: CleaningAnswer): string => {
  if (tasks.length === 0) return '';
  const sum = tasks.reduce((total, of) => total + of.count, 0);
  const named = list(tasks.map((of) => `${of.task} ${integer(of.count)}`));
  return ` An seinem Ende ausstehend: ${integer(sum)}${fromBefore > 0 ? `, davon ${integer(fromBefore)} aus früheren Monaten` : ''} (${named}).`;
};

const range = ([low, high]: [number, number]): string =>
  low === high ? format.percent(low) : `${format.percent(low)} bis ${format.percent(high)}`;

/** Wie wenig „angedeutet“ allein besagt. */
const caution = ({ suggested, measured }: FailuresAnswer): string =>
  suggested.length === 0 || measured === null
    ? ''
    : ` Wo nichts zu finden war, war in ${range(measured.either)} der simulierten Berichte etwas angedeutet oder gezeigt, in ${range(measured.shown)} gezeigt.`;

const adjusted = ({ suggestedP: p }: FailuresAnswer): string => {
  if (p === null) return '';
  return ` (angepasstes p ${p.low === p.high ? format.pValue(p.low) : `${format.pValue(p.low)} bis ${format.pValue(p.high)}`})`;
};

/** Der Monat in einem Satz zu jeder Frage. */
export const answers: AnswersWords = {
  heading: 'Der Monat in drei Antworten',
  story: {
    parts: {
      story: 'In zwei Minuten',
      evidence: 'Belege',
      records: 'Aufzeichnungen',
      methods: 'Methoden',
    },
    decisionsHeading: 'Für diese Besprechung',
    decisionsCaption: 'Geräte nach Dringlichkeit, jedes mit seinen dringendsten Anlässen',
    heads: {
      unit: 'Gerät',
      found: 'Was die Aufzeichnungen sagen',
      next: 'Nächster Schritt',
      decides: 'Wer entscheidet',
    },
    also: (reasons) => `Außerdem: ${reasons.join('; ')}.`,
    others: (n) => (n === 0 ? '' : count(n, 'weiterer Anlass', 'weitere Anlässe')),
    rest: (n) => `${count(n, 'weiteres Gerät', 'weitere Geräte')} und alle Anlässe`,
    none: 'Nichts Verzeichnetes verlangt in diesem Monat eine Entscheidung. Kein Hinweis heißt nicht: kein Fehler.',
    plain: (what, scope, exposure, otherwise, a, b) =>
      `${format.sentence(what)}, ${scope}: ${a} an Tagen mit „${exposure}“, ${b} an Tagen mit „${otherwise}“.`,
    verdict: (verdict, ratio, level) =>
      `${format.sentence(verdict)}: Verhältnis ${ratio}, ${level}\u2011Intervall in Klammern. Ein Zusammenhang in den Aufzeichnungen, kein Beweis einer Ursache.`,
    figure: (outcome, exposure) => `${format.sentence(outcome)}, mit und ohne: ${exposure}`,
    reading: (level) =>
      `Punkt: was gezählt wurde, je 100. Balken: sein exaktes ${level}\u2011Intervall; ein Pfeil heißt, dass es weitergeht.`,
    ratio: (text, verdict) => `Verhältnis ${text}: ${verdict}`,
    allUnits: 'Alle Vergleiche als Bild',
    numbers: 'Ihre Zahlen',
    means: 'Was die Urteile bedeuten',
  },
  questions: {
    cleaning: 'Wurde gereinigt?',
    failures: 'Häufen sich Fehler nach versäumter Reinigung?',
    units: 'Welches Gerät braucht Aufmerksamkeit?',
    reading: 'Was konnte nicht gelesen werden?',
  },
  more: {
    cleaning: 'Reinigung: erledigt und fällig',
    failures: 'Alle Vergleiche',
    units: 'Geräte, die Aufmerksamkeit brauchen',
    reading: 'Gelesene und abgewiesene Daten',
  },
  cleaning: (a) => {
    if (a.due === 0)
      return {
        lead: 'Von keiner Aufgabe ist bekannt, dass sie fällig war.',
        detail:
          'Im Monat wurde keine Aufgabe fällig: Es gab keinen Einsatztag, oder die Standortdatei nennt kein Intervall für die Aufgaben.',
      };
    const parts = [
      a.missed > 0 ? `${integer(a.missed)} versäumt` : '',
      a.notRecorded > 0 ? `${integer(a.notRecorded)} nicht eingetragen` : '',
      a.contradicted > 0 ? `${integer(a.contradicted)} im Widerspruch zum Chargenprotokoll` : '',
      a.open > 0 ? `${integer(a.open)} noch offen` : '',
    ].filter((part) => part !== '');
    const late = a.late > 0 ? `, davon ${integer(a.late)} spät` : '';
    const all = a.done + a.late === a.due;
    return {
      lead: all
        ? a.due === 1
          ? `Ja: Die eine fällige Aufgabe wurde erledigt${a.late > 0 ? ', aber spät' : ''}.`
          : `Ja: Alle ${integer(a.due)} fälligen Aufgaben wurden erledigt${late}.`
        : `${integer(a.done + a.late)} von ${count(a.due, 'fälligen Aufgabe', 'fälligen Aufgaben')} ${a.done + a.late === 1 ? 'wurde' : 'wurden'} erledigt${late}.`,
      detail: `${
        parts.length > 0
          ? `Der Rest: ${list(parts)}.`
          : 'Zu jeder fälligen Aufgabe gibt es einen Eintrag als erledigt.'
      }${outstanding(a)}`,
    };
  },
  failures: (a) => {
    if (a.total === 0)
      return {
        lead: 'Die Frage lässt sich an diese Aufzeichnungen nicht stellen.',
        detail: 'Von keinem Gerät ist bekannt, an welchen Tagen eine Reinigungsaufgabe überfällig war.',
      };
    const rest = [
      a.notShown > 0 ? `in ${integer(a.notShown)} nicht gezeigt` : '',
      a.cannotTell > 0 ? `in ${integer(a.cannotTell)} reichen die Aufzeichnungen für keine Aussage` : '',
      a.notComparable > 0 ? `${integer(a.notComparable)} nicht vergleichbar` : '',
    ].filter((part) => part !== '');
    const of = `Von ${count(a.total, 'Vergleich', 'Vergleichen')}: ${list([
      ...(a.shown.length > 0 ? [`in ${integer(a.shown.length)} gezeigt`] : []),
      ...(a.suggested.length > 0 ? [`in ${integer(a.suggested.length)} angedeutet${adjusted(a)}`] : []),
      ...rest,
    ])}.`;
    if (a.shown.length > 0)
      return {
        lead: `Gezeigt für ${names(a.shown)}.`,
        detail: `${of}${caution(a)}`,
      };
    if (a.suggested.length > 0)
      return {
        lead: `Für keines gezeigt; angedeutet für ${names(a.suggested)}.`,
        detail: `${of}${caution(a)}`,
      };
    if (a.notShown === 0)
      return {
        lead: 'Die Aufzeichnungen lassen keine Aussage zu.',
        detail: `${of} Das ist nicht dasselbe wie „kein Effekt“.`,
      };
    return { lead: 'Eine Häufung wurde nicht gezeigt.', detail: of };
  },
  units: (a) => {
    if (a.units === 0)
      return {
        lead: 'Von keinem Gerät gibt es Aufzeichnungen.',
        detail: 'Keine Charge und kein Test wurde gelesen.',
      };
    const parts = [
      a.act.length > 0 ? `vor der nächsten Charge: ${names(a.act)}` : '',
      a.decide.length > 0 ? `zu entscheiden: ${names(a.decide)}` : '',
      a.look.length > 0 ? `bald: ${names(a.look)}` : '',
    ].filter((part) => part !== '');
    const n = a.act.length + a.decide.length + a.look.length;
    if (n === 0)
      return {
        lead:
          a.units === 1
            ? 'Für das eine Gerät ist kein Anlass verzeichnet.'
            : `Für keines der ${integer(a.units)} Geräte ist ein Anlass verzeichnet.`,
        detail: 'Kein Hinweis heißt nicht: kein Fehler.',
      };
    const first = a.act[0] ?? a.decide[0] ?? a.look[0]!;
    const counts = [
      a.act.length > 0 ? `${integer(a.act.length)} vor der nächsten Charge` : '',
      a.decide.length > 0 ? `${integer(a.decide.length)} zu entscheiden` : '',
      a.look.length > 0 ? `${integer(a.look.length)} bald` : '',
      a.units > n ? `${integer(a.units - n)} ohne Anlass` : '',
    ].filter((part) => part !== '');
    return {
      lead: n === 1 && a.units === 1 ? `${first}.` : `${first} zuerst; ${counts.join(', ')}.`,
      detail: `${format.sentence(parts.join('; '))}.`,
    };
  },
  reading: (a) => {
    if (a.files === 0)
      return {
        lead: 'Es wurde nichts gelesen.',
        detail:
          'Von keiner Quelle wurde eine Datei gefunden; die Liste der Probleme nennt, wonach gesucht wurde.',
      };
    const lost = [
      a.filesFailed > 0
        ? count(
            a.filesFailed,
            'Quelle oder Datei war nicht zu verwenden',
            'Quellen oder Dateien waren nicht zu verwenden',
          )
        : '',
      a.cellsLost > 0 ? count(a.cellsLost, 'freiwillige Zelle entfiel', 'freiwillige Zellen entfielen') : '',
      a.lone > 0
        ? count(
            a.lone,
            'Datensatz liegt Monate von allen anderen entfernt und gilt als Fehler',
            'Datensätze liegen Monate von allen anderen entfernt und gelten als Fehler',
          )
        : '',
      a.unclassifiedTexts > 0
        ? count(
            a.unclassifiedTexts,
            'Abbruchtext gehört zu keiner Klasse',
            'Abbruchtexte gehören zu keiner Klasse',
          )
        : '',
    ].filter((part) => part !== '');
    return {
      lead:
        a.rejected === 0
          ? a.rows === 1
            ? 'Die eine Zeile konnte gelesen werden.'
            : `Alle ${integer(a.rows)} Zeilen konnten gelesen werden.`
          : `${integer(a.rejected)} von ${count(a.rows, 'Zeile', 'Zeilen')} ${a.rejected === 1 ? 'wurde' : 'wurden'} abgewiesen.`,
      detail: `${count(a.files, 'Datei', 'Dateien')}: ${count(a.records, 'Datensatz', 'Datensätze')}, ${count(a.duplicates, 'Dublette', 'Dubletten')}, ${integer(a.rejected)} abgewiesen, ${integer(a.skipped)} übersprungen${lost.length > 0 ? `; ${list(lost)}` : ''}.`,
    };
  },
};
