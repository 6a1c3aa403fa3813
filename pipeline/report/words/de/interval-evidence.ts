import type { IntervalEvidenceWords } from '../en/interval-evidence.ts';
import { format } from './format.ts';
import { reasonText } from './reasons.ts';
import { SCENARIOS, scenarioName } from './settings.ts';

const { integer, figures, list, twoFigures, pValue } = format;

/** Wörter der Belege hinter der Begründung. */
export const intervalEvidence: IntervalEvidenceWords = {
  title: (month) => `Reinigungsintervall, ${month}`,
  heading: 'Was für ein Reinigungsintervall spricht',
  sections: {
    argument: 'Die Begründung',
    clock: 'Fehler und Abbrüche seit der Reinigung',
    shape: 'Steigt das Risiko mit der Zeit seit der Reinigung?',
    candidates: 'Was jedes Intervall brauchen würde',
    units: 'Geräte und Standorte',
    plan: 'Wann reinigen',
    surfaces: 'Sichtprüfungen und Wasser',
    inputs: 'Eingaben und Methode',
  },
  clockTitle: {
    calendar_days: 'Tage seit der letzten gezählten Reinigung',
    days_of_use: 'Einsatztage seit der letzten gezählten Reinigung',
    cycles: 'Chargen seit der letzten gezählten Reinigung',
  },
  outcome: {
    failed_test: 'Nicht bestandene Tests',
    cleanliness_abort: 'Abbrüche mit möglichem Bezug zur Sauberkeit',
  },
  clockFailures: 'Nicht bestandene Tests nach Zeit seit der Reinigung, alle Geräte',
  clockAborts: 'Abbrüche mit möglichem Bezug zur Sauberkeit nach Zeit seit der Reinigung, alle Geräte',
  clockReading:
    'Punkt: die Aufzeichnungen in dieser Zeitklasse, auf ihrem exakten Intervall. Kurzer Balken: was die Anpassung für dieselben Tage erwartet.',
  clockDescription: (rows, what) => `${what}. ${rows.join(' ')}`,
  clockPoint: (name, events, of, fitted) =>
    `${name}: ${integer(events)} von ${integer(of)}${fitted === null ? '' : `, Anpassung ${twoFigures(fitted)}`}.`,
  failuresAxis: 'Nicht bestandene Tests je 100 Prüftage unter Risiko',
  abortsAxis: 'Abbrüche je 100 Produktionschargen',
  className: (from, to) => (to === null ? `ab ${from}` : from === to ? `${from}` : `${from} bis ${to}`),
  of: (events, of) => `${integer(events)} von ${integer(of)}`,
  none: 'keine unter Risiko',
  p: (p) => `p ${p}`,
  scenario: (name, says) => SCENARIOS[name] ?? says,
  scenarioName,
  cumulativeTitle: 'Nicht bestandene Tests eines Geräts seit der Reinigung, aufsummiert',
  cumulativeAxis: 'Nicht bestandene Tests eines Geräts, Summe',
  cumulativeReading:
    'Stufen: die Aufzeichnungen ohne Modell (Nelson-Aalen), mit Intervall. Linie: die Anpassung. Eine gerade Linie heißt gleichbleibendes Risiko, eine nach oben gebogene ein steigendes.',
  cumulativeDescription: (at, observed, low, high, fitted) =>
    `Bis ${at}: ${observed} nicht bestandene Tests eines Geräts (${low} bis ${high})${fitted === null ? '' : `, nach der Anpassung ${fitted}`}.`,
  observedName: 'Daten',
  fittedName: 'Anpassung',
  fitCheck: (p, reason) =>
    p === null
      ? `Anpassung gegen Klassen: nicht geprüft. ${reason === null ? '' : reasonText(reason)}`.trim()
      : `Anpassung gegen die Zeitklassen: Chi-Quadrat p\u00a0${pValue(p)}${p < 0.05 ? '. Die Anpassung beschreibt die Klassen nicht gut; besser diese lesen als die Kurve.' : '.'}`,
  clockCaption: 'Fehler und Abbrüche nach Zeit seit der Reinigung, mit exakten Intervallen',
  clockHeads: {
    scope: 'Geräte',
    from: 'Zeit seit Reinigung',
    failures: 'Nicht bestandene Tests von Tagen unter Risiko',
    fitted: 'Nach Anpassung',
    aborts: 'Abbrüche von Produktionschargen',
    fittedAborts: 'Nach Anpassung',
  },
  fleet: 'Alle Geräte',
  sites: 'Nach Standort',
  perUnit: 'Jedes Gerät nach Zeit seit der Reinigung',
  shapesCaption: 'Form des Risikos in jeder Zählung der Zeit',
  shapesHeads: {
    outcome: 'Ereignis',
    clock: 'Gezählt in',
    reading: 'Widersprochene Einträge',
    events: 'Ereignisse',
    chances: 'Tage oder Chargen',
    shape: (level) => `Form (${level}\u2011Intervall)`,
    p: 'p der Form 1',
    detectable: 'Kleinste erkennbare Form',
    spread: 'Streuung der Geräte',
  },
  readings: { site: 'nach der Regel des Standorts', all_records: 'als erledigt gezählt' },
  shapesNote:
    'Form 1: Das Risiko hängt nicht von der Zeit seit der Reinigung ab. Über 1 steigt es. Profil-Likelihood-Intervalle und Likelihood-Quotienten-Test, jedes Gerät zwischen Reparaturen mit eigener Höhe (Gamma-Frailty).',
  robust: (low, high, drawn) =>
    `Bootstrap-Intervall der Form nicht bestandener Tests, ${drawn} neu gezogen: ${low} bis ${high}.`,
  drawn: { unit_eras: 'Geräte zwischen Reparaturen', spells: 'Strecken innerhalb jedes Geräts' },
  spellEnds: (parts) => `Strecken endeten durch: ${parts.join(', ')}.`,
  spellEnd: {
    routine_cleaning: 'regelmäßige Reinigung',
    reactive_cleaning: 'anlassbezogene Reinigung',
    era_end: 'Reparatur oder anderes, wonach neu verglichen wird',
    log_gap: 'Lücke im Reinigungsbuch',
    record_end: 'Ende der Aufzeichnungen',
  },
  medianLength: (length) => `Mittlere Zeit zwischen Reinigungen (Median): ${length}.`,
  afterFailure: {
    clock_goes_on: (followed, of) =>
      `Nach einem nicht bestandenen Test läuft die Zählung in dieser Rechnung weiter (auf ${integer(followed)} von ${integer(of)} Fehlern folgte eine anlassbezogene Reinigung).`,
    cleaned: (followed, of) =>
      `Ein nicht bestandener Test bringt in dieser Rechnung eine Reinigung, mit der die Zählung neu beginnt (auf ${integer(followed)} von ${integer(of)} Fehlern folgte eine anlassbezogene Reinigung).`,
  },
  curveTitle: {
    hours: 'Stunden außer Betrieb im Jahr, nach Intervall',
    cost: 'Kosten im Jahr, nach Intervall',
  },
  curveAxis: { hours: 'Stunden außer Betrieb im Jahr', cost: 'Kosten im Jahr' },
  curveReading: (best, low, high) =>
    `Linie mit Bootstrap-Intervall. Am niedrigsten bei: ${best}. Die graue Strecke von ${low} bis ${high} ist der Bereich: innerhalb von 5 % des niedrigsten, oder am niedrigsten in den mittleren 90 % der gezogenen Stichproben.`,
  curveDescription: (points) => `In einem Jahr zu erwarten: ${points.join('; ')}.`,
  inForceMark: 'festgelegt',
  candidatesCaption: 'In einem Jahr zu erwarten bei jedem Intervall, alle Geräte im Einsatz zusammen',
  candidateHeads: {
    interval: 'Intervall',
    cleanings: 'Reinigungen',
    failures: 'Nicht bestandene Tests',
    aborts: 'Abbrüche',
    hours: 'Stunden außer Betrieb',
    labour: 'Arbeit, Stunden',
    cleaner: 'Mittel, Liter',
    cleanerByDefault: 'Mittel, Liter (nach der Dosis der Vorgabe)',
    cost: 'Kosten',
    breakEven: 'Ein Fehler muss brauchen',
  },
  standing: {
    compared: '',
    beyond_record: 'länger, als die Aufzeichnungen zeigen',
    beyond_instructions: 'über die Gebrauchsanweisung hinaus',
    limit_not_given: 'Grenze nach der Gebrauchsanweisung nicht angegeben',
  },
  candidatesNote:
    'Schätzung und Bootstrap-Intervall. Stunden außer Betrieb enthalten Abkühlen, Arbeit, Aufheizen und Test, die Zeit nach nicht bestandenen Tests und die durch Abbrüche verlorene; auch nächtliches Abkühlen zählt. Ein Fehler muss brauchen: die Stunden (Kosten) eines nicht bestandenen Tests, ab denen sich das kürzere von diesem und dem festgelegten Intervall lohnt, mit Intervall.',
  leftOut: (intervals, why) => `Nicht verglichen: ${intervals} (${why}).`,
  measuredCaption: (made, version) =>
    `Wie oft die Rechnung an simulierten Gruppen von Geräten recht hatte (gemessen am ${made}, Version ${version})`,
  measuredHeads: {
    scenario: 'Simulierte Gruppen',
    says: 'Was in ihnen gilt',
    shape: 'Wahre Form',
    failures: 'Fehler in den Aufzeichnungen',
    supported: 'Anstieg „gestützt“ genannt',
    shapeHeld: 'Intervall enthält die Form',
    rangeHeld: 'Bereich enthält das beste Intervall',
  },
  notMeasured: 'Wie oft eine solche Rechnung recht hat, wurde mit dieser Version nicht gemessen.',
  noCandidates: 'Es lässt sich nichts vergleichen, aus dem in der Begründung genannten Grund.',
  sensitivityCaption: 'Bestes Intervall, wenn eine Eingabe allein geändert wird',
  sensitivityHeads: { input: 'Eingabe', values: 'Von und bis', best: 'Bestes Intervall' },
  sensitivityNote: 'Jede Eingabe halbiert und verdoppelt; die Form an den Enden ihres Intervalls.',
  levelsCaption: 'Geräte und Standorte, zum Mittel hin gezogen',
  levelHeads: {
    scope: 'Gerät oder Standort',
    failures: 'Nicht bestandene Tests von Tagen unter Risiko',
    factor: 'Höhe der nicht bestandenen Tests (Intervall)',
    aborts: 'Abbrüche von Produktionschargen',
    abortFactor: 'Höhe der Abbrüche (Intervall)',
    shape: 'Eigene Form (Intervall), angepasstes p',
    shrunk: 'Form, zum Mittel gezogen',
    best: 'Bestes Intervall',
  },
  levelsNote:
    'Höhe: Fehler geteilt durch die, die die Anpassung zu denselben Zeiten erwartet, zum Mittel aller gezogen, je weniger es sind (Gamma-Poisson); 1 ist das Mittel. Eigene Form: allein aus den Fehlern des Geräts, p angepasst an die Geräte nach Benjamini und Hochberg; zum Mittel gezogen auf der log. Skala (normal-normal). Das beste Intervall gilt für die eigene Höhe und die gezogene Form des Geräts.',
  appearanceTitle: 'Aussehen der Kammern nach Tagen seit der Reinigung',
  appearanceAxis: 'Sichtprüfungen',
  appearanceKey: 'Aussehen, 0 sauber bis 4',
  appearanceReading: (mean) => `Mittleres Aussehen nach Klasse: ${mean.join('; ')}.`,
  noInspections:
    'Keine Sichtprüfung ist verzeichnet. Das Aussehen nach Tagen seit der Reinigung zeigt es schneller als Fehler.',
  trend: (gamma, p, units) =>
    `Innerhalb der Geräte (${integer(units)}): Unter Paaren von Sichtprüfungen, die sich in beidem unterscheiden, ist der Anteil der zur späteren Zeit schlechteren weniger dem der besseren ${gamma}; Kendall-Test p ${p}.`,
  residueTrend: (p, reason) =>
    p === null
      ? `Rückstand nach dem Spülen nach Zeit seit der Reinigung: ${reason === null ? '' : reasonText(reason)}`
      : `Rückstand nach dem Spülen nach Zeit seit der Reinigung: Cochran-Armitage p\u00a0${pValue(p)}.`,
  waterCaption: 'Wasser und Kondensat des letzten Jahres neben den Grenzen',
  waterHeads: {
    point: 'Entnahmestelle',
    determinand: 'Messgröße',
    last: 'Letzter Wert',
    out: 'Außerhalb der Grenzen',
    limit: 'Grenze',
    edition: 'Aus',
  },
  determinand: (name) => name,
  edition: (name) =>
    name
      .replace('type values for feed water', 'Richtwerte für Speisewasser')
      .replace('type values for condensate', 'Richtwerte für Kondensat')
      .replace('type values', 'Richtwerte')
      .replace('as in circular', 'wie im Rundschreiben')
      .replace('as in the table of', 'wie in der Tabelle von')
      .replace(/, (\d{4}) edition \(older: 2 mg\/l\)/, ', Ausgabe $1 (älter: 2 mg/l)')
      .replace(/\((\d{4}) edition: /, '(Ausgabe $1: '),
  noWater: 'Keine Wasserprobe des letzten Jahres ist verzeichnet.',
  waterStatus: {
    site: 'Grenze des Standorts',
    verified: 'in einer öffentlichen Wiedergabe gesehen',
    unverified: 'Beispielgrenze, nicht an der Norm geprüft: mit der geltenden Ausgabe vergleichen',
  },
  notCompared: {
    no_limit: 'keine Grenze',
    other_measure: 'Grenze steht in einer anderen Einheit',
    example_limit: 'nur Beispiel',
  },
  limit: (low, high) =>
    low !== null && high !== null
      ? `${figures(low, 6)} bis ${figures(high, 6)}`
      : high !== null
        ? `höchstens ${figures(high, 6)}`
        : low === null
          ? ''
          : `mindestens ${figures(low, 6)}`,
  depositsHeading: 'Beläge, die Spülen nicht wegnimmt',
  deposit: (n) =>
    `Gerät ${n.unit}: Rückstand nach dem Spülen in ${integer(n.residue)} der letzten ${integer(n.of)} Sichtprüfungen, die dazu etwas sagen (zuletzt ${n.date}).`,
  depositAdvice: {
    water_and_professional: (out) =>
      `Das Wasser liegt außerhalb der Grenzen (${out}). Mehr von derselben Reinigung hilft nicht gegen das, was das Wasser bringt: Wasser untersuchen und die Kammer vom Fachbetrieb reinigen lassen.`,
    sample_water:
      'Keine Wasserprobe der Aufzeichnungen betrifft dieses Gerät: Wasser beproben lassen, bevor öfter gereinigt wird.',
    compare_water:
      'Sein Wasser wurde beprobt, aber neben den Werten steht keine geprüfte Grenze: mit der geltenden Ausgabe vergleichen, bevor öfter gereinigt wird.',
    look_again: (within, examples) =>
      `Das Wasser liegt in den Grenzen für ${list(within)}${examples.length === 0 ? '' : `; für ${list(examples)} gibt es nur Beispielgrenzen, aus denen nichts folgt`}. Spülen, Dosis und Einwirkzeit nach dem Etikett ansehen.`,
  },
  noDeposits:
    'Kein Gerät hat in zwei oder mehr seiner letzten vier Sichtprüfungen Rückstand nach dem Spülen.',
};
