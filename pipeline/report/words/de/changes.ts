import type { ChangesWords } from '../en/changes.ts';
import { format } from './format.ts';

const { count, integer } = format;

/** Wörter dazu, was sich seit dem vorigen Bericht geändert hat, und zum Rahmen der Seite für die Besprechung. */
export const changes: ChangesWords = {
  page: 'Für die Besprechung',
  title: (month) => `Für die Besprechung, ${month}`,
  heading: 'Was sich seit dem letzten Bericht geändert hat',
  intro: (before, now) =>
    `Neben den Bericht für ${before} gestellt. Hier wird nichts getestet: Beide Berichte stützen sich auf fast dieselben Aufzeichnungen, und Zahlen zweier Monate (${before} und ${now}) unterscheiden sich auch durch Zufall.`,
  state: {
    read: (previous) => `Gelesen: ${previous.file}.`,
    none: (previous) =>
      previous.file === null
        ? 'Kein früherer Bericht liegt vor; über Änderungen lässt sich nichts sagen.'
        : `Kein früherer Bericht liegt vor (gesucht: ${previous.file}); über Änderungen lässt sich nichts sagen.`,
    damaged: (previous) =>
      `Der frühere Bericht ${previous.file} ist nicht lesbar: gefunden ${previous.found}. Über Änderungen wird nichts gesagt; das Übrige hängt nicht davon ab. Den Bericht des früheren Monats neu erstellen oder mit --previous eine andere Datei nennen.`,
    other_format: (previous) =>
      `Der frühere Bericht ${previous.file} hat ein anderes Format („${previous.found}“), von einer anderen Version des Programms. Über Änderungen wird nichts gesagt; das Übrige hängt nicht davon ab. Den Bericht des früheren Monats mit dieser Version neu erstellen.`,
    not_earlier: (previous) =>
      `Der Bericht ${previous.file} gilt für ${previous.found} und liegt nicht vor diesem Monat. Über Änderungen wird nichts gesagt.`,
  },
  file: (previous) =>
    `Neben den Exporten gelesen: der vorige Bericht, ${previous.file}, ${format.bytes(previous.bytes ?? 0)}, SHA-256 ${previous.sha256}, Fingerabdruck seiner Dateien ${previous.fingerprint}, Version ${previous.version}.`,
  unread: (previous) =>
    `Der vorige Bericht, ${previous.file}, ${format.bytes(previous.bytes ?? 0)}, SHA-256 ${previous.sha256}, wurde nicht verwendet.`,
  nothing: 'Kein Urteil, kein Stand, kein Anlass und keine Einstellung ist anders als im letzten Bericht.',
  verdictsHeading: 'Geänderte Urteile',
  verdictsSame: (n) => (n === 0 ? '' : `${count(n, 'anderes Urteil ist', 'andere Urteile sind')} wie zuvor.`),
  verdictsCaption: 'Vergleiche mit einem anderen Urteil',
  noVerdicts: 'Kein Urteil hat sich geändert.',
  verdictHeads: {
    unit: 'Gerät',
    question: 'Frage',
    before: 'Zuvor',
    now: 'Jetzt',
    ratio: 'Verhältnis zuvor, jetzt',
  },
  ratios: (before, now) => `${before}, ${now}`,
  noRatio: 'keines',
  notMade: 'nicht gemacht',
  driftHeading: 'Geänderte Stände der Drift',
  driftSame: (n) =>
    n === 0 ? '' : `${count(n, 'andere Messgröße ist', 'andere Messgrößen sind')} wie zuvor.`,
  driftCaption: 'Messgrößen mit anderem Stand, jede im geltenden Abschnitt',
  noDrift: 'Keine Messgröße hat einen anderen Stand.',
  driftHeads: { unit: 'Gerät', probe: 'Messgröße', before: 'Zuvor', now: 'Jetzt', note: 'Bemerkung' },
  newEra: 'zwischen den Berichten beginnt ein neuer Abschnitt',
  notWatched: 'nicht beobachtet',
  attentionHeading: 'Anlässe zur Aufmerksamkeit',
  attentionCounts: (fresh, gone, stays) =>
    `${count(fresh, 'Anlass ist', 'Anlässe sind')} neu, ${integer(gone)} entfallen, ${integer(stays)} ${stays === 1 ? 'bleibt' : 'bleiben'}.`,
  attentionCaption: 'Anlässe, die dazukamen, entfielen oder ihre Dringlichkeit änderten',
  noAttention: 'Kein Anlass kam dazu oder entfiel.',
  attentionHeads: { unit: 'Gerät', reason: 'Anlass', change: 'Änderung' },
  change: {
    new: (level) => `neu: „${level}“`,
    gone: (level) => `entfallen (war: „${level}“)`,
    stays: (before, now) => `von „${before}“ zu „${now}“`,
  },
  cleaningHeading: 'Erledigte und versäumte Reinigung',
  cleaningCaption: (before, now) => `Erledigte und versäumte von fälligen Aufgaben, ${before} und ${now}`,
  cleaningMovedCaption: 'Geräte und Aufgaben, von denen ein anderer Anteil versäumt wurde',
  cleaningHeads: {
    task: 'Aufgabe',
    unit: 'Gerät',
    doneBefore: 'Erledigt zuvor',
    doneNow: 'Erledigt jetzt',
    missedBefore: 'Versäumt zuvor',
    missedNow: 'Versäumt jetzt',
    moved: 'Versäumter Anteil',
  },
  noCleaning: 'In keinem der beiden Monate wurde etwas fällig.',
  moved: { fewer_missed: 'kleiner', more_missed: 'größer', same: 'wie zuvor' },
  settingsHeading: 'Geänderte Einstellungen',
  settingsNote: 'Was sich geändert hat, kann sich durch sie geändert haben.',
  settingsCaption: 'Zwischen den Berichten geänderte Einstellungen',
  settingHeads: { name: 'Einstellung', before: 'Zuvor', now: 'Jetzt' },
  noSetting: 'keine',
  unitsNew: (units) => `Neu in den Aufzeichnungen: ${units}.`,
  unitsGone: (units) => `Nicht mehr in den Aufzeichnungen: ${units}.`,
  short: (verdicts, drift, fresh, gone) =>
    `Seit dem letzten Bericht: ${count(verdicts, 'geändertes Urteil', 'geänderte Urteile')}, ${count(drift, 'geänderter Stand der Drift', 'geänderte Stände der Drift')}; ${count(fresh, 'Anlass', 'Anlässe')} dazugekommen, ${integer(gone)} entfallen.`,
  reason: {
    ran_after_failure: 'Chargen nach nicht bestandenem Test, vor einem bestandenen',
    ran_after_failure_perhaps: 'Chargen vielleicht nach nicht bestandenem Test, vor einem bestandenen',
    episode_open: 'nicht bestandene Tests, seither kein bestandener',
    failed_test: 'nicht bestandener Bowie-Dick-Test',
    test_missing: 'Produktion ohne Test',
    test_late: 'Test nach Beginn der Produktion',
    return_incomplete: 'nach Reinigung Produktion vor Aufheizcharge und bestandenem Test',
    requalification_incomplete: 'Requalifizierung unvollständig',
    comparison_shown: 'mehr Fehler nach versäumter Reinigung: gezeigt',
    comparison_suggested: 'mehr Fehler nach versäumter Reinigung: angedeutet',
    chamber_overdue_now: 'Kammerreinigung überfällig',
    task_outstanding: 'eine Aufgabe ausstehend',
    records_contradicted: 'Einträge, denen das Chargenprotokoll widerspricht',
    leak_over_limit: 'Leckrate über der Grenze',
    leak_near_limit: 'Leckrate nahe der Grenze',
    drift_near_limit: 'Drift nahe der Grenze',
    drift_moving: 'Drift',
    drift_stepped: 'Sprung einer Messgröße',
    heat_up_out_of_range: 'Aufheizzeit außerhalb des Üblichen',
    abort_rate_signal: 'Abbruchrate außerhalb der Grenzen',
    early_stops: 'ungeklärte frühe Stopps',
    strainers_missed: 'versäumte Siebreinigungen',
  },
};
