/** Was die Einstellungen bedeuten, nach ihrem Namen in der Standortdatei. */
export const SETTINGS: Record<string, string> = {
  'cleaning.drain_strainer':
    'Wann die Aufgabe fällig wird, und wie eine fällige Aufgabe ohne Eintrag zu lesen ist',
  'cleaning.drain_flush':
    'Wann die Aufgabe fällig wird, und wie eine fällige Aufgabe ohne Eintrag zu lesen ist',
  'cleaning.chamber': 'Wann die Aufgabe fällig wird, und wie eine fällige Aufgabe ohne Eintrag zu lesen ist',
  'cleaning.professional':
    'Wann die Aufgabe fällig wird, und wie eine fällige Aufgabe ohne Eintrag zu lesen ist',
  'rules.purge.under_minutes': 'Eine Entleerungscharge ist kürzer als dies, Minuten',
  'rules.purge.within_hours_after_cleaning':
    'Eine Entleerungscharge beginnt innerhalb dieser Zeit nach einem Reinigungseintrag ihres Geräts, Stunden',
  'rules.purge.until_next_warm_up':
    'Auch zwischen einem Reinigungseintrag und der nächsten Aufheizcharge (jeder Charge, die zu Ende lief) an diesem Betriebstag',
  'rules.purge.before_exposure': 'Eine Entleerungscharge endet vor der Haltezeit',
  'rules.purge.stopped_by_operator':
    'Eine Entleerungscharge wird von Hand gestoppt (Abbruchtext der Klasse Bedienung)',
  'rules.purge.blank_text_is_operator':
    'Ein Abbruch ohne Text wird als von Hand und ohne Alarm gestoppt gelesen',
  'rules.comparison.stratum_days':
    'Länge einer Schicht, Tage: Jeder Abschnitt wird in gleiche Teile geschnitten, die ihr am nächsten kommen',
  'rules.comparison.strainer_window_days': 'Einsatztage, über die versäumte Siebreinigungen gezählt werden',
  'rules.comparison.level': 'Niveau der Intervalle',
  'rules.comparison.alpha': 'Schwelle für p und angepasstes p',
  'rules.comparison.power': 'Trennschärfe, bei der ein Verhältnis als erkennbar gilt',
  'rules.comparison.ratio_of_interest': 'Verhältnis, das die Aufzeichnungen hätten zeigen können sollen',
  'rules.comparison.shifts': 'Gezogene kreisförmige Verschiebungen, wo nicht alle genommen werden',
  'rules.comparison.seed': 'Startwert der gezogenen Verschiebungen',
  'rules.comparison.least_days_each_side':
    'Wenigste Tage unter Risiko mit und ohne Versäumnis; bei weniger wechselt es kaum',
  'rules.comparison.reactive_share':
    'Anteil anlassbezogener Kammerreinigungen, ab dem ein Gerät nicht vergleichbar ist',
  'rules.drift.least_values':
    'Tage mit Wert, bevor eine Messgröße in einem Abschnitt beurteilt wird; halb so viele, wo Werte einmal die Woche kommen. Weniger geben keine brauchbare Ausgangslage',
  'rules.drift.least_units':
    'Geräte eines Standorts mit Wert an einem Tag, bevor ihre gemeinsame Bewegung herausgenommen wird; bei zweien wird jedes mit dem anderen verglichen',
  'rules.drift.memory_days':
    'Tage, bis zu denen zurück eine Messgröße beurteilt wird: etwas mehr als ein Jahr, damit eine Jahreszeit ganz zu sehen ist',
  'rules.drift.show_step_days':
    'So lange wird ein Sprung als Stand der Messgröße gezeigt, Tage; danach ist die neue Lage die Ausgangslage',
  'rules.drift.near_limit_share':
    'Ab diesem Anteil des Wegs von der Ausgangslage zur Grenze ist eine Messgröße nahe ihrer Grenze (eigene Wahl)',
  'rules.drift.wet_hours':
    'Ein Vakuumtest so bald nach einer Kammerreinigung oder Ablaufspülung wird gezeigt und nicht beurteilt, Stunden: Spülwasser wirkt wie ein Leck',
  'rules.drift.heat_up_deviations':
    'Eigene Grenzen der Aufheizzeit eines bestandenen Tests, robuste Standardabweichungen nach beiden Seiten: etwa eine falsche Marke in 50 Gerätejahren',
  'rules.cool_down_hours':
    'Stillstand, den eine Kammer vor der Reinigung braucht, Stunden; es gilt die Gebrauchsanweisung',
  'rules.contradicted_counts_as_done':
    'Ob eine Kammerreinigung, der das Chargenprotokoll widerspricht, als erledigt zählt',
  'rules.reactive_within_days': 'Eine Reinigung innerhalb so vieler Tage nach einem Fehler ist anlassbezogen',
  'rules.leak_limit_kpa_min':
    'Grenze der Leckrate für Tests, deren Eintrag keine nennt, kPa/min (EN 285; Ausgaben unterscheiden sich, die eigene prüfen)',
  'rules.heat_up_limits':
    'Ob ein bestandener Test mit einer Aufheizzeit außerhalb der eigenen Grenzen des Geräts markiert wird',
  'rules.requalification_tests':
    'Bestandene Bowie-Dick-Tests in Folge vor der Produktion nach einer größeren Reparatur',
  'interval.counted_in':
    'Was das Intervall zählt; nicht gesetzt: wie in der Kammerregel der meisten Geräte, sonst Kalendertage',
  'interval.longest_by_instructions':
    'Längstes Intervall, das die Gebrauchsanweisung erlaubt, in dem, was das Intervall zählt; kein Kandidat liegt darüber',
  'interval.candidates':
    'Zu vergleichende Intervalle, in dem, was das Intervall zählt; nicht gesetzt: Wochen',
  'interval.after_failure':
    'Was ein nicht bestandener Test mit der Zählung macht: nichts, oder eine Reinigung beginnt sie neu; from_record: nach den Aufzeichnungen',
  'interval.cleaning.cool_down_hours':
    'Abkühlen vor einer Kammerreinigung, Stunden; es gilt die Gebrauchsanweisung',
  'interval.cleaning.work_minutes':
    'Arbeit an der Kammer, Minuten; nicht gesetzt: Median der Einträge, sonst 45',
  'interval.cleaning.warm_up_minutes':
    'Aufheizen vor dem Test, Minuten; nicht gesetzt: Median des Chargenprotokolls, sonst 20',
  'interval.cleaning.test_minutes':
    'Bowie-Dick-Test vor der Rückkehr, Minuten; nicht gesetzt: Median des Chargenprotokolls, sonst 25',
  'interval.cleaning.people': 'Personen bei einer Kammerreinigung',
  'interval.cleaning.sprayer_litres': 'Verdünntes Mittel in einer Füllung des Sprühgeräts, Liter',
  'interval.cleaning.fillings': 'Füllungen des Sprühgeräts je Kammerreinigung',
  'interval.cleaning.cleaner_ml_per_litre':
    'Dosis des Mittels, ml je Liter Wasser; es gilt das Etikett des Mittels',
  'interval.failure.hours_out_of_use':
    'Zeit außer Betrieb nach einem nicht bestandenen Test, Stunden; nicht gesetzt: Mittel der Aufzeichnungen',
  'interval.failure.retests':
    'Weitere Tests nach einem nicht bestandenen; nicht gesetzt: Mittel der Aufzeichnungen',
  'interval.failure.delayed_loads':
    'Chargen, die ein nicht bestandener Test verzögert; nicht gesetzt: nicht gezählt',
  'interval.failure.hours_per_abort':
    'Zeit, die ein Abbruch kostet, Stunden; nicht gesetzt: mittlere Länge solcher Chargen',
  'interval.costs.currency': 'Währung neben den Kosten',
  'interval.costs.labour_hour': 'Preis einer Arbeitsstunde',
  'interval.costs.hour_out_of_use': 'Preis einer Stunde außer Betrieb',
  'interval.costs.cleaner_litre': 'Preis eines Liters Mittel, unverdünnt',
  'interval.costs.other_per_cleaning': 'Weiteres Material einer Kammerreinigung',
  'interval.costs.retest': 'Preis eines weiteren Bowie-Dick-Tests',
  'interval.costs.repair_per_failure': 'Reparatur, die ein nicht bestandener Test im Mittel nach sich zieht',
  'interval.costs.delayed_load': 'Preis einer verzögerten Charge',
  'interval.costs.abort': 'Preis eines Abbruchs, neben den verlorenen Stunden',
  'interval.planning.units_in_use':
    'Geräte eines Standorts, die verfügbar bleiben müssen, eine Zahl oder 24 nach Stunde; nicht gesetzt: so viele, wie in der mittleren Woche zugleich liefen',
  'interval.planning.work_from':
    'Uhrzeit, ab der gearbeitet werden darf; nicht gesetzt: Stunden, in denen der Standort in mindestens der Hälfte der Wochen Chargen beginnt, und die Stunde davor',
  'interval.planning.work_to': 'Uhrzeit, zu der die Arbeit fertig sein muss; braucht work_from',
  'interval.planning.weeks': 'Letzte Wochen des Chargenprotokolls, aus denen das Wochenmuster stammt',
  'interval.water.condensate_points':
    'Wörter im Namen einer Entnahmestelle, die sie als Kondensat kennzeichnen; andere sind Speisewasser',
  'interval.water.limits':
    'Grenzen des Standorts, vor den Vorgaben, die der EN 285 folgen und teils nicht geprüft sind',
  'interval.draws': 'Gezogene Stichproben (Bootstrap) hinter den Intervallen',
  'interval.seed': 'Startwert der gezogenen Stichproben',
};

/** Wert, wie ihn die Standortdatei hat. */
export const settingValue = (value: string): string => (value === 'left out' ? 'nicht gesetzt' : value);

const COUNTED: Record<string, string> = {
  calendar_days: 'Kalendertage',
  days_of_use: 'Einsatztage',
  cycles: 'Chargen',
};
const BLANK: Record<string, string> = {
  not_recorded: 'nicht eingetragen',
  missed: 'versäumt',
  done: 'erledigt',
};

/** „alle 28 Kalendertage, Nachfrist 2 Tage, kein Eintrag heißt versäumt“, nach Geräten, wo es abweicht. */
export const policyText = (value: string): string =>
  value
    .replaceAll('no interval', 'kein Intervall')
    .replaceAll(
      /every (\d+) (\w+), grace (\d+) days, no record means (\w+)/g,
      (_, every: string, counted: string, grace: string, blank: string) =>
        `alle ${every} ${COUNTED[counted] ?? counted}, Nachfrist ${grace} ${grace === '1' ? 'Tag' : 'Tage'}, kein Eintrag heißt ${BLANK[blank] ?? blank}`,
    );

/** Was in den simulierten Gruppen galt, nach Szenario der Messung. */
export const SCENARIOS: Record<string, string> = {
  'no effect': 'Nichts an der Reinigung bewegt die Fehler; Versäumnisse kommen zufällig.',
  spells: 'Kein Effekt; Fehler kommen in schlechten Wochen, Versäumnisse in langen Strecken.',
  'reactive only': 'Kein Effekt; Kammern werden nur nach Fehlern gereinigt.',
  'partly reactive':
    'Kein Effekt; Kammern werden regelmäßig gereinigt, und nach einem Drittel der Fehler noch einmal.',
  busy: 'Kein Effekt; viel genutzte Geräte versäumen mehr und versagen öfter, und beides nimmt über zwei Jahre zu.',
  'false records': 'Kein Effekt; ein Fünftel der Einträge zur Kammer ist ohne Arbeit geschrieben.',
  'ratio 2': 'Überfällige Kammern verdoppeln die Chancen bei einem Viertel der Geräte.',
  'ratio 3': 'Überfällige Kammern verdreifachen die Chancen bei einem Viertel der Geräte.',
  'ratio 4': 'Überfällige Kammern vervierfachen die Chancen bei einem Viertel der Geräte.',
  'strainer only':
    'Versäumte Siebe vervierfachen die Chancen bei allen Geräten; Kammern, zur selben Zeit versäumt, tun nichts.',
  'too little data': 'Ein Verhältnis von 2 bei einem Viertel der Geräte, drei Monate Aufzeichnungen.',
  'shape 1': 'Fehler hängen nicht von der Zeit seit der Reinigung ab.',
  'shape 1, units differ':
    'Kein Zusammenhang mit der Zeit; die Geräte unterscheiden sich, die schlechten werden früh gereinigt.',
  'shape 1, bad spells': 'Kein Zusammenhang mit der Zeit; Fehler kommen in schlechten Wochen.',
  'shape 1, partly reactive':
    'Kein Zusammenhang mit der Zeit; auf ein Drittel der Fehler folgt eine Reinigung.',
  'shape 1, one site': 'Kein Zusammenhang mit der Zeit; drei Geräte, achtzehn Monate.',
  'shape 2': 'Die Fehlerrate steigt im selben Maß wie die Zeit.',
  'shape 2, units differ': 'Dasselbe; die Geräte unterscheiden sich.',
  'shape 2, cleaned after failure': 'Dasselbe; auf jeden Fehler folgt eine Reinigung.',
  'shape 1.5': 'Die Fehlerrate steigt mit der Wurzel der Zeit.',
  'shape 3, few failures': 'Ein steiler Anstieg, aber wenige Fehler.',
  'shape 2, one site': 'Ein Anstieg; drei Geräte, achtzehn Monate.',
};
/** Namen der Szenarien, wo sie in einer Tabelle stehen. */
export const scenarioName = (name: string): string =>
  name
    .replace(
      /^shape (\d)(?:\.(\d))?/,
      (_, whole: string, part?: string) => `Form ${whole}${part ? `,${part}` : ''}`,
    )
    .replace('units differ', 'Geräte verschieden')
    .replace('bad spells', 'schlechte Wochen')
    .replace('partly reactive', 'teils anlassbezogen')
    .replace('one site', 'ein Standort')
    .replace('cleaned after failure', 'gereinigt nach Fehler')
    .replace('few failures', 'wenige Fehler');
