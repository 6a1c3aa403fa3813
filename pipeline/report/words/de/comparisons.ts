import type { Comparison } from '../../../findings/review-schema.ts';
import type { ComparisonWords } from '../en/comparisons.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

const { integer, ratio, pValue, percent, fixed, sentence } = format;
const short = (value: number): string => (Number.isInteger(value) ? integer(value) : fixed(value, 2));
const preposition = (outcome: Comparison['outcome']): string => (outcome === 'failed_test' ? 'von' : 'in');

/** Klassen des Ausmaßes, wie die Auswertung sie nennt: „0“, „1 to 7 days“, „over 14 days“, „3 or more“. */
const dose = (text: string): string =>
  text
    .replace(/^(\d+) to (\d+)/, '$1 bis $2')
    .replace(/^over (\d+)/, 'mehr als $1')
    .replace(/^(\d+) or more/, '$1 oder mehr')
    .replace(/^not overdue$/, 'nicht überfällig')
    .replace(/ days?$/, ' Tage');

/** Wörter zu einem Vergleich. */
export const comparisons: ComparisonWords = {
  question: (c) => sentence(`${terms.exposure[c.exposure]}: ${terms.outcomes[c.outcome]}`),
  questionShort: (c) =>
    sentence(
      `${terms.exposure[c.exposure]}|${c.outcome === 'failed_test' ? 'nicht best. Tests' : 'Abbrüche'}`,
    ),
  questionLong: (c) =>
    c.outcome === 'failed_test'
      ? `Werden mehr Bowie-Dick-Tests nicht bestanden ${terms.exposureMeans[c.exposure]}?`
      : `Gibt es mehr Abbrüche mit möglichem Bezug zur Sauberkeit ${terms.exposureMeans[c.exposure]}?`,
  figureTitle: (c) =>
    `${sentence(terms.outcomes[c.outcome])}: ${terms.exposure[c.exposure]} gegen ${terms.otherwise[c.exposure]}`,
  ratioCell: ({ ratio: r, low, high, exposed, unexposed }) => {
    if (r === null && low === null && high === null)
      return exposed.events + unexposed.events === 0 ? 'keine Ereignisse' : 'kein Verhältnis';
    const from = low === null ? '0' : ratio(low);
    const bounds = high === null ? `ab ${from}` : `${from} bis ${ratio(high)}`;
    return r === null ? bounds : `${ratio(r)} (${bounds})`;
  },
  side: (side, outcome) => `${integer(side.events)} ${preposition(outcome)} ${integer(side.trials)}`,
  against: (side, outcome) => `gegen ${integer(side.events)} ${preposition(outcome)} ${integer(side.trials)}`,
  p: (value) => (value === null ? 'keiner' : pValue(value)),
  adjusted: (value) => (value === null ? '' : `angepasst ${pValue(value)}`),
  detectable: (value) => (value === null ? 'keines' : ratio(value)),
  evidence: (c, level) => {
    const noun = terms.trials[c.outcome];
    const of = preposition(c.outcome);
    const counts = `${integer(c.exposed.events)} ${of} ${integer(c.exposed.trials)} ${noun} (${terms.exposure[c.exposure]}), ${integer(c.unexposed.events)} ${of} ${integer(c.unexposed.trials)} (${terms.otherwise[c.exposure]})`;
    if (c.low === null && c.high === null) return counts;
    const estimate =
      c.ratio === null
        ? 'kein Verhältnis, da ohne Versäumnis keines auftrat'
        : `${terms.ratioKind[c.ratio_kind]} ${ratio(c.ratio)}`;
    const bounds =
      c.high === null
        ? `ab ${ratio(c.low ?? 0)}, nach oben offen`
        : `${ratio(c.low ?? 0)} bis ${ratio(c.high)}`;
    return `${counts}; ${estimate}, ${level}\u2011Intervall ${bounds}`;
  },
  verdictMeans: (s, level) => ({
    shown: `mehr Fehler bei Versäumnis: Das ${level}\u2011Intervall liegt über 1, p, angepasst an alle gestellten Fragen, ist höchstens ${short(s.alpha)}, und Abbrüche aus anderen Ursachen blieben gleich. Ein Zusammenhang in diesen Aufzeichnungen, kein Beweis einer Ursache.`,
    suggested: 'eines dieser Zeichen, nicht alle: einen zweiten Blick wert, noch kein Befund.',
    not_shown: `kein Zeichen für mehr Fehler, oder eines, das Abbrüche aus anderen Ursachen oder ein anderes Versäumnis teilen, in Aufzeichnungen, die ein Verhältnis von ${short(s.ratioOfInterest)} gezeigt hätten (Trennschärfe ${percent(s.power)}).`,
    cannot_tell: `kein Zeichen für mehr Fehler, oder eines, das Abbrüche aus anderen Ursachen oder ein anderes Versäumnis teilen, und zu wenige Tage oder Fehler, um ein Verhältnis von ${short(s.ratioOfInterest)} zu zeigen. Das ist nicht dasselbe wie „kein Effekt“.`,
    not_comparable: `die Tage lassen sich nicht nebeneinanderstellen: ${percent(s.reactiveShare)} oder mehr der Reinigungen folgten auf einen Fehler, oder auf einer Seite stehen weniger als ${short(s.leastDays)} Tage.`,
  }),
  because: (code, c, s) => {
    const needed =
      c.data_needed_factor === null
        ? ''
        : ` (etwa ${ratio(c.data_needed_factor)}-mal so viele Aufzeichnungen würden reichen)`;
    const texts: Record<string, string> = {
      interval_above_1: 'das Intervall liegt über 1',
      adjusted_p: `das angepasste p ist höchstens ${short(s.alpha)}`,
      unadjusted_p: `p vor der Anpassung ist höchstens ${short(s.alpha)}`,
      carried_by_other: 'neben einem anderen Versäumnis, das auch etwas zeigt, geht die Häufung mit jenem',
      not_told_apart: 'von einem anderen Versäumnis, das auch etwas zeigt, nicht zu trennen',
      control_moved: 'auch Abbrüche aus anderen Ursachen änderten sich, deshalb eine Stufe tiefer',
      points_down: 'die Schätzung weist auf weniger Fehler, nicht auf mehr',
      power: `ein Verhältnis von ${short(s.ratioOfInterest)} wäre zu sehen gewesen`,
      too_little_data: `zu wenige Daten, um ein Verhältnis von ${short(s.ratioOfInterest)} zu sehen${needed}`,
      mostly_reactive:
        'die meisten Reinigungen folgten auf einen Fehler, sodass überfällige Tage schon dadurch vor Fehlern liegen',
      hardly_varies: `weniger als ${short(s.leastDays)} Tage unter Risiko mit oder ohne Versäumnis`,
      no_exposure_known: 'von keinem Tag ist bekannt, ob ein Versäumnis vorlag',
    };
    return texts[code] ?? code;
  },
  why: (scope, verdict, reasons) => `${scope}, ${verdict}: ${reasons.join('; ')}.`,
  otherReading: (verdict) =>
    `Zählten Einträge als erledigt, denen das Chargenprotokoll widerspricht: ${terms.verdict[verdict]}.`,
  control: (c) => {
    const { control } = c;
    const counts = `${integer(control.exposed.events)} in ${integer(control.exposed.trials)} gegen ${integer(control.unexposed.events)} in ${integer(control.unexposed.trials)} Produktionschargen`;
    return control.p === null
      ? counts
      : `${counts}, p\u00a0${pValue(control.p)}${control.moved ? ' (verändert)' : ''}`;
  },
  leftOut: (c) => {
    const parts = [
      `${integer(c.days_left_out.not_at_risk)} nicht unter Risiko`,
      `${integer(c.days_left_out.exposure_unknown)} mit unbekanntem Stand`,
    ];
    if (c.scope === 'fleet')
      parts.push(`${integer(c.days_left_out.unit_not_comparable)} von nicht vergleichbaren Geräten`);
    return parts.join(', ');
  },
  heads: {
    scope: 'Gerät',
    question: 'Frage',
    counts: 'Mit Versäumnis, gegen ohne',
    ratio: (level) => `Verhältnis (${level}\u2011Intervall)`,
    p: 'p',
    detectable: 'Kleinstes erkennbares Verhältnis',
    control: 'Abbrüche aus anderen Ursachen',
    leftOut: 'Nicht mitgezählte Tage',
    verdict: 'Urteil und Grund',
    exposedShort: 'mit',
    unexposedShort: 'ohne',
    ratioShort: 'Verhältnis (Intervall)',
    verdictShort: 'Urteil',
  },
  rowExplained:
    'Jede Zeile vergleicht die Tage eines Geräts mit Versäumnis mit seinen übrigen Tagen: Ereignisse von Prüftagen oder Chargen auf beiden Seiten, das Verhältnis und ein Urteil.',
  intro: (n, family, span) =>
    `${integer(n)} Vergleiche über ${span}. ${integer(family)} davon ergaben einen p\u2011Wert; an diese ist p angepasst. Ein Verhältnis über 1 heißt mehr Fehler bei Versäumnis. Die Linie ist das Intervall; ein Pfeil am Ende heißt, dass es weitergeht.`,
  unitIntro: (family, span) =>
    `Tage dieses Geräts mit Versäumnis gegen seine übrigen Tage, ${span}. p ist an alle ${integer(family)} Vergleiche des Berichts angepasst, die einen p\u2011Wert ergaben. Ein Verhältnis über 1 heißt mehr Fehler bei Versäumnis; ein Pfeil heißt, dass das Intervall weitergeht.`,
  verdictsMean: 'Was die Urteile bedeuten',
  seeKey: 'Die erste Frage steht oben im Bericht.',
  speakingCaption:
    'Vergleiche mit Aussage: gezeigt, angedeutet oder nicht gezeigt; und alle Geräte zur ersten Frage',
  allNumbers:
    'Alle Vergleiche mit allen Zahlen: Anzahlen, Verhältnis, Intervall, p, angepasstes p, Trennschärfe, Kontrolle, nicht mitgezählte Tage, Urteil und Grund',
  leftOutNote:
    'In jedem Vergleich nicht mitgezählt: Tage ohne Tagesergebnis, in einer Fehlerepisode oder außer Betrieb; Tage, von denen nicht bekannt ist, ob ein Versäumnis vorlag; in der Zeile für alle Geräte solche, deren Reinigungen meist auf Fehler folgen. Die Zahlen stehen in den Tabellen.',
  secondLook: {
    heading: 'Zweite Blicke',
    intro:
      'Diese entscheiden kein Urteil. Sie zeigen, ob Fehler mit dem Ausmaß des Versäumnisses zunehmen und was von jedem bleibt, wenn alle in einem Modell stehen.',
    beside: (scope, c, beside) => {
      const other = terms.exposure[beside.exposure];
      const found = {
        holds: `hält an Tagen, die im anderen (${other}) gleich sind`,
        carried_by_other: `geht mit dem anderen (${other})`,
        not_told_apart: `lässt sich vom anderen (${other}) nicht trennen`,
      }[beside.finding];
      const ratioText =
        beside.ratio === null
          ? ''
          : `: Verhältnis ${ratio(beside.ratio)}${beside.low !== null && beside.high !== null ? ` (${ratio(beside.low)} bis ${ratio(beside.high)})` : ''}`;
      return `${scope}: Die Häufung bei „${terms.exposure[c.exposure]}“ ${found}${ratioText}.`;
    },
    homogeneity: (p) =>
      `Alle Geräte: ${p <= 0.05 ? 'Die Geräte unterscheiden sich in ihrem Verhältnis stärker, als der Zufall erklärt' : 'kein Zeichen, dass sich die Geräte in ihrem Verhältnis unterscheiden'} (p\u00a0${pValue(p)}).`,
    strata: 'Anzahlen nach Schicht, aus denen sich jedes Verhältnis von Hand nachrechnen lässt (CSV)',
    doseCaption: 'Nicht bestandene Prüftage nach Ausmaß des Versäumnisses, alle Geräte',
    doseHeads: {
      exposure: 'Versäumnis',
      dose: 'Ausmaß',
      failed: 'Nicht bestandene Prüftage',
      trend: 'Trend innerhalb der Schichten',
    },
    dose: (exposure, text) =>
      exposure === 'chamber_overdue'
        ? dose(text).replace(/Tage$/, 'Tage über die Frist')
        : `${dose(text)} versäumt${exposure === 'flush_missed' ? ' in Folge' : ''}`,
    trend: (statistic, p) =>
      statistic === null || p === null
        ? 'nicht berechenbar'
        : `${statistic > 0 ? 'steigend' : 'fallend'}, p\u00a0${pValue(p)}`,
    modelCaption: (outcome, days) => `Alle Versäumnisse in einem Modell: ${outcome}, ${integer(days)} Tage`,
    modelHeads: {
      exposure: 'Versäumnis, die übrigen festgehalten',
      ratio: (level) => `Verhältnis (${level}\u2011Intervall)`,
      p: 'p',
      robust: 'Intervall, robust gegen Geräte',
    },
    interval: (low, high) => `${ratio(low)} bis ${ratio(high)}`,
  },
  named: (scope, c) => `${scope} (${terms.outcomes[c.outcome]}, ${terms.exposure[c.exposure]})`,
};
