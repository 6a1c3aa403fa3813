import type { Clock } from '../../../findings/interval/clocks.ts';
import type { Note, Reason } from '../../../findings/interval/interval-schema.ts';
import type { IntervalArgumentWords } from '../en/interval.ts';
import { format } from './format.ts';

const { integer, count, fixed, list, twoFigures, pValue } = format;

const UNITS: Record<Clock, [string, string]> = {
  calendar_days: ['Tag', 'Tage'],
  days_of_use: ['Einsatztag', 'Einsatztage'],
  cycles: ['Charge', 'Chargen'],
};

/** Ein Intervall mit dem, was es zählt: „28 Tage“. */
const interval = (every: number, clock: Clock): string => count(every, ...UNITS[clock]);
/** Dasselbe im Dativ: „nach 28 Tagen“. */
const afterInterval = (every: number, clock: Clock): string => {
  const text = interval(every, clock);
  return text.endsWith('e') && every !== 1 ? `${text}n` : text;
};
const between = (low: string, high: string | null): string =>
  high === null ? `ab ${low}` : `${low} bis ${high}`;

/** Wörter der Begründung: was die Seite auf ihrem ersten Blatt sagt und der Befehl ausgibt. */
export const intervalArgument: IntervalArgumentWords = {
  interval,
  clockNames: {
    calendar_days: 'Kalendertage',
    days_of_use: 'Einsatztage',
    cycles: 'Chargen',
  },
  between,
  headings: {
    question: 'Die Frage',
    records: 'Die Aufzeichnungen',
    finding: 'Was sie zeigen',
    cost: 'Aufwand und Nutzen',
    mind: 'Was das Urteil ändern würde',
    limits: 'Grenzen der Methode',
    cautions: 'Zu beachten',
  },
  question: (units) =>
    `Wie oft ist eine Kammer zu reinigen? Niemand schreibt es vor: Im Rahmen der Gebrauchsanweisung entscheidet der Standort und muss es begründen. Hier aus den Aufzeichnungen von ${count(units, 'Gerät', 'Geräten')}.`,
  inForce: (every, clock, otherwise) => {
    if (every === null) return 'Die Standortdatei nennt kein Intervall für die Kammer.';
    const others = otherwise > 0 ? ` (${integer(otherwise)} der Geräte haben ein anderes)` : '';
    return `Festgelegt: alle ${interval(every, clock)}${others}.`;
  },
  kept: (every, median, clock) =>
    `Festgelegt: ${interval(every, clock)}; eingehalten: im Median ${interval(median, clock)} zwischen Reinigungen, die zählen. Das festgelegte Intervall einzuhalten kommt vor dem Verkürzen.`,
  instructions: (longest, clock) =>
    longest === null
      ? 'Die Grenze nach der Gebrauchsanweisung steht nicht in der Standortdatei: Nichts Längeres wird betrachtet.'
      : `Die Gebrauchsanweisung erlaubt höchstens ${interval(longest, clock)}: Nichts Längeres wird betrachtet.`,
  records: (n) =>
    [
      `${count(n.records, 'Kammerreinigung ist', 'Kammerreinigungen sind')} verzeichnet; ${integer(n.starts)} ${n.starts === 1 ? 'beginnt' : 'beginnen'} eine neue Zählung: regelmäßig, und das Chargenprotokoll widerspricht nicht.`,
      n.reactive > 0 &&
        `${integer(n.reactive)} ${n.reactive === 1 ? 'folgte' : 'folgten'} auf einen Fehler: Damit endet eine Beobachtung und beginnt keine, damit ein eben instand gesetztes Gerät nicht als eben gereinigt gilt.`,
      n.contradicted > 0 &&
        `${integer(n.contradicted)} ${n.contradicted === 1 ? 'steht' : 'stehen'} im Widerspruch zum Protokoll (Gerät lief oder war heiß).`,
      n.notJudged > 0 && `${integer(n.notJudged)} ${n.notJudged === 1 ? 'hat' : 'haben'} nur ein Datum.`,
    ]
      .filter(Boolean)
      .join(' '),
  observed: (n) =>
    `${n.span}, über ${count(n.spells, 'Strecke', 'Strecken')} zwischen Reinigungen: ${count(n.failures, 'nicht bestandener Test', 'nicht bestandene Tests')} (Episoden) an ${count(n.days, 'Prüftag', 'Prüftagen')} unter Risiko, ${count(n.aborts, 'Abbruch', 'Abbrüche')} mit möglichem Bezug zur Sauberkeit in ${count(n.cycles, 'Produktionscharge', 'Produktionschargen')}.`,
  answer: (code, own, of) => {
    const units = own.length <= 5 ? list(own) : `${integer(own.length)} von ${integer(of)} Geräten`;
    if (code === 'supported')
      return 'Das Risiko eines nicht bestandenen Tests steigt mit der Zeit seit der letzten Reinigung.';
    if (code === 'not_supported')
      return own.length === 0
        ? 'Es ist nicht gezeigt, dass das Risiko eines nicht bestandenen Tests mit der Zeit seit der letzten Reinigung steigt. Diese Aufzeichnungen stützen eine frühere Reinigung nicht.'
        : `Über alle Geräte ist nicht gezeigt, dass das Risiko eines nicht bestandenen Tests mit der Zeit seit der letzten Reinigung steigt; bei ${units} für sich allein ist es gezeigt.`;
    return own.length === 0
      ? 'Diese Aufzeichnungen können nicht sagen, ob das Risiko eines nicht bestandenen Tests mit der Zeit seit der letzten Reinigung steigt.'
      : `Über alle Geräte können diese Aufzeichnungen nicht sagen, ob das Risiko eines nicht bestandenen Tests mit der Zeit seit der letzten Reinigung steigt; bei ${units} für sich allein steigt es.`;
  },
  shape: (n) =>
    `Form ${fixed(n.shape, 2)} (${n.level}\u2011Intervall ${between(fixed(n.low, 2), n.high === null ? null : fixed(n.high, 2))}, p\u00a0${pValue(n.p)}); 1 hieße kein Zusammenhang mit der Zeit seit der Reinigung, mehr einen Anstieg.`,
  risk: (late, early, ratio, clock) =>
    `Nach ${afterInterval(late, clock)} ist es nach dieser Anpassung ${twoFigures(ratio)}-mal so hoch wie nach ${integer(early)}.`,
  because: (code) => REASONS[code],
  allRecords: (answer) =>
    ({
      supported:
        'Zählten die widersprochenen Einträge als erledigt, wäre ein Anstieg gestützt: Die Antwort hängt von ihnen ab.',
      not_supported:
        'Zählten die widersprochenen Einträge als erledigt, wäre kein Anstieg gezeigt: Die Antwort hängt von ihnen ab.',
      cannot_tell:
        'Zählten die widersprochenen Einträge als erledigt, könnten die Aufzeichnungen es nicht sagen: Die Antwort hängt von ihnen ab.',
    })[answer],
  aborts: (answer, shape, other) => {
    const says = {
      supported: 'ein Anstieg mit dieser Zeit',
      not_supported: 'ein Anstieg mit dieser Zeit ist nicht gezeigt',
      cannot_tell: 'zu wenige, um es zu sagen',
    }[answer];
    return `Abbrüche mit möglichem Bezug zur Sauberkeit, Form ${shape}: ${says}${other.length === 0 ? '' : `; aber gezählt in ${list(other)}`}.`;
  },
  shapeInShort: (n) =>
    `${fixed(n.shape, 2)} (${between(fixed(n.low, 2), n.high === null ? null : fixed(n.high, 2))}, p\u00a0${pValue(n.p)})`,
  onClock: (clock, p) => `${clock.endsWith('e') ? `${clock}n` : clock} p\u00a0${pValue(p)}`,
  ownShape: (unit, shape) =>
    `${unit} für sich allein: Form ${shape}, p angepasst an die Zahl der Geräte. Ein Anstieg bei einem Gerät spricht zuerst dafür, sein Intervall einzuhalten.`,
  units: (units, of) =>
    `Für sich allein, angepasst an die Zahl der Geräte: ein Anstieg bei ${integer(units)} von ${integer(of)} Geräten; siehe ihre Tabelle.`,
  noUnits: 'Kein Gerät zeigt für sich allein einen Anstieg, angepasst an die Zahl der Geräte.',
  appearance: {
    rises: (p) =>
      `Sichtprüfungen zeigen es schneller: Die Kammern sehen mit den Tagen seit der Reinigung schlechter aus (p\u00a0${pValue(p)}). Das spricht von Belägen, nicht von Fehlern.`,
    not_shown:
      'Die Sichtprüfungen zeigen keine Verschlechterung der Kammern mit den Tagen seit der Reinigung.',
  },
  year: (n) =>
    `Bei Reinigung alle ${n.every} kämen alle Geräte im Einsatz zusammen in einem Jahr auf ${integer(n.cleanings)} Reinigungen, ${n.failures} nicht bestandene Tests, ${n.aborts} Abbrüche und ${n.hours} Stunden außer Betrieb, bei ${integer(n.labour)} Arbeitsstunden.`,
  withInterval: (estimate, low, high) =>
    `${twoFigures(estimate)} (${twoFigures(low)} bis ${twoFigures(high)})`,
  money: (value, currency) => `${integer(value)}${currency === '' ? '' : ` ${currency}`}`,
  hours: (value) => count(Math.round(value), 'Stunde', 'Stunden'),
  best: (n) =>
    `Am wenigsten ${n.money ? 'kostet' : 'Zeit außer Betrieb braucht'} das Intervall ${n.best} (Bereich ${n.low} bis ${n.high}): ${n.value} im Jahr.`,
  advice: {
    earlier:
      'Das festgelegte Intervall liegt über diesem Bereich: Früher zu reinigen würde weniger kosten, als es spart.',
    keep: 'Das festgelegte Intervall liegt in diesem Bereich: Nichts spricht für eine Änderung.',
    longer_within_instructions:
      'Das festgelegte Intervall ist kürzer als dieser Bereich, der im Rahmen der Gebrauchsanweisung liegt. Ob es verlängert wird, ist Sache der örtlichen Regeln, nicht dieser Aufzeichnungen allein.',
    none_in_force: 'Der Standort nennt kein Intervall, mit dem zu vergleichen wäre.',
  },
  notBest:
    'Da der Anstieg nicht gestützt ist, wird kein Intervall als das beste genannt; die Tabelle zeigt, was jedes brauchen würde.',
  atLongest: 'Es ist das längste betrachtete; das wahre kann darüber liegen.',
  breakEven: (n) =>
    `Von ${n.from} auf ${n.to}: nach der Anpassung ${n.avoided} nicht bestandene Tests im Jahr weniger. Es lohnt sich, wenn ein nicht bestandener Test mehr als ${n.line} ${n.range} ${n.money ? 'kostet' : 'braucht'}.`,
  breakEvenHours: (value) => `${twoFigures(value)} Stunden`,
  breakEvenCost: (value, currency) => `${twoFigures(value)} ${currency === '' ? 'in Geld' : currency}`,
  breakEvenRange: (low, high) =>
    low === null && high === null
      ? '(ohne Grenzen)'
      : low === null
        ? `(bis ${twoFigures(high!)})`
        : high === null
          ? `(ab ${twoFigures(low)})`
          : `(${twoFigures(low)} bis ${twoFigures(high)})`,
  noBreakEven: (to) =>
    `Auf ${to} zu gehen würde nach der Anpassung keinen nicht bestandenen Test vermeiden und lohnt sich daher nie.`,
  notCounted: (names) => {
    if (names.length === 0) return null;
    return names.length <= 3
      ? `Nicht gezählt, da die Standortdatei keinen Wert nennt: ${list(names)}.`
      : `Nicht gezählt: ${integer(names.length)} Eingaben, zu denen die Standortdatei keinen Wert nennt; sie stehen in der Tabelle der Eingaben.`;
  },
  more: (factor) =>
    `Etwa ${twoFigures(factor)}-mal so viele Aufzeichnungen würden eine Form von 1,5 (ein Risiko, das mit der Wurzel dieser Zeit steigt) von 1 unterscheiden.`,
  detectable: (shape, power) =>
    `Mit einer Trennschärfe von ${power} hätten diese Aufzeichnungen eine Form ab ${twoFigures(shape)} zeigen können.`,
  sensitive: (n) =>
    `Die Eingabe, die das beste Intervall am meisten bewegt: ${n.input}. Von ${n.values[0]} bis ${n.values[1]} bewegt sie das beste von ${n.at[0]} auf ${n.at[1]}.`,
  notSensitive: 'Keine Eingabe allein, halbiert oder verdoppelt, bewegt das beste Intervall.',
  mind: {
    supported:
      'Längere Aufzeichnungen, in denen der Anstieg verschwindet, oder eine andere Ursache als Beläge, die mit dieser Zeit geht, etwa die Auslastung.',
    not_supported:
      'Aufzeichnungen, die lang genug sind, um einen vorhandenen Anstieg zu zeigen, oder Reinigungen in verschiedeneren Abständen: Die Zeit sagt wenig, wo alle Strecken gleich sind.',
    cannot_tell: 'Längere Aufzeichnungen, oder was fehlt und oben genannt ist.',
  },
  limits: [
    'Fehler zählen als Episoden und nur unter Risiko. Angepasst ist ein Potenzgesetz (Weibull) mit eigener Höhe für jedes Gerät zwischen Reparaturen; die Beobachtung endet mit einer anlassbezogenen Reinigung, einer Reparatur oder den Aufzeichnungen.',
    'Die Intervalle stammen aus dem Neuziehen ganzer Geräte zwischen Reparaturen (oder ihrer Strecken). Was sich im nächsten Jahr ändert, wissen sie nicht.',
    'Ein Anstieg mit der Zeit seit der Reinigung ist ein Zusammenhang, keine Ursache: Auslastung, Jahreszeit oder Menschen können mit ihr gehen. Ein Risiko, das an einem Tag springt, passt schlecht; siehe die Zeitklassen.',
  ],
  cautions: [
    'Dies beschreibt Aufzeichnungen; es gibt keine Charge frei, weist keine zurück und ruft keine zurück. Nach einem nicht bestandenen Test bleibt das Gerät außer Betrieb, bis es geprüft ist und besteht.',
    'Es gelten die Gebrauchsanweisungen von Sterilisator und Reinigungsmittel: Kein Intervall darf aufgrund dieser Belege über sie hinaus verlängert werden. Es entscheiden die örtlichen Regeln, die Krankenhaushygiene, die Medizintechnik und die Beauftragten.',
  ],
  note: (note) => NOTES[note],
};

const REASONS: Record<Reason, string> = {
  shape_above_1: 'Das Intervall der Form liegt über 1, auch zwischen Geräten und Abschnitten.',
  shape_at_or_below_1: 'Die Form liegt nicht über 1: Fehler werden mit der Zeit nicht häufiger.',
  shape_not_above_1_beyond_chance:
    'Das geht nicht über das hinaus, was der Zufall bei so wenigen Fehlern tut.',
  not_above_1_between_units:
    'Das Intervall der Form liegt über 1, aber nicht mehr, wenn schlechte Strecken und schlechte Geräte berücksichtigt sind.',
  all_records_differ:
    'Die Antwort ist anders, wenn Einträge als erledigt zählen, denen das Chargenprotokoll widerspricht.',
  too_few_to_show:
    'Es gibt zu wenige Fehler, um einen Anstieg mit der Wurzel dieser Zeit (Form 1,5) gezeigt zu haben. Das heißt nicht: kein Anstieg.',
  no_cleaning_recorded: 'Keine Kammerreinigung ist verzeichnet.',
  all_reactive:
    'Jede Kammerreinigung folgte auf einen Fehler. Solche Reinigungen sagen, wann Fehler kamen, nicht, was Reinigung bewirkt.',
  all_contradicted: 'Jeder regelmäßigen Kammerreinigung widerspricht das Chargenprotokoll.',
  no_cleaning_twice:
    'Kein Gerät wurde in den Aufzeichnungen zweimal gereinigt; keine Strecke zwischen Reinigungen ist vollständig.',
  same_clock:
    'Alle Prüftage liegen in derselben Zeit seit der Reinigung; nichts kann mit ihr steigen oder fallen.',
  too_few_failures: 'Weniger als fünf Fehler begannen nach einer gezählten Reinigung.',
  no_fit: 'Die Fehler stehen so, dass sie keine Form festlegen.',
};

const NOTES: Record<Note, string> = {
  costs_missing:
    'Preise für Reinigung und Fehler sind nicht beide angegeben: Gerechnet wird in Stunden und Fehlern.',
  limit_not_given:
    'Das längste Intervall nach der Gebrauchsanweisung ist nicht angegeben: Nichts Längeres als das festgelegte wird betrachtet.',
  no_interval_in_force: 'Die Standortdatei nennt kein Intervall für die Kammer.',
  units_with_other_intervals: 'Geräte mit einem anderen festgelegten Intervall zählen mit den übrigen.',
  limit_beyond_record:
    'Die Gebrauchsanweisung erlaubt mehr als jedes Intervall der Aufzeichnungen: Betrachtet wird nur Beobachtetes.',
  in_force_beyond_record:
    'Das festgelegte Intervall ist länger als jede Zeit zwischen Reinigungen in den Aufzeichnungen: Sein Jahr lässt sich nicht angeben.',
  in_force_beyond_instructions:
    'Das festgelegte Intervall ist länger, als die Gebrauchsanweisung nach der Standortdatei erlaubt. Das ist zuerst zu klären.',
  candidates_beyond_instructions: 'Intervalle über die Gebrauchsanweisung hinaus sind ausgelassen.',
  candidates_beyond_record:
    'Intervalle, die länger sind als jede Zeit zwischen Reinigungen in den Aufzeichnungen, sind ausgelassen.',
  candidates_without_limit:
    'Intervalle, die länger sind als das festgelegte, sind ausgelassen, da die Grenze nach der Gebrauchsanweisung nicht angegeben ist.',
  few_unit_eras:
    'Es gibt wenige Geräte zwischen Reparaturen: Neu gezogen werden die Strecken innerhalb der Geräte.',
  mostly_reactive: 'Die Hälfte oder mehr der Kammerreinigungen folgte auf einen Fehler.',
  no_units_in_use:
    'Kein Gerät war in den letzten 90 Tagen der Aufzeichnungen im Einsatz; ein Jahr lässt sich nicht erwarten.',
};
