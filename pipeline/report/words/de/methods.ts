import type { MethodsWords } from '../en/methods.ts';
import { format } from './format.ts';
import { policyText, SCENARIOS, SETTINGS, settingValue } from './settings.ts';

/** Wie der Bericht entstand und was zu beachten ist. Jeder Hinweis steht für sich. */
export const methods: MethodsWords = {
  heading: 'Methoden',
  settingsHeading: 'Geltende Einstellungen',
  cautionsHeading: 'Zu beachten',
  wordsHeading: 'Wörter',
  intro:
    'Wie Tage, Tests, Chargen und Reinigungen gezählt werden und mit welchen Methoden. Dieselben Dateien, Einstellungen und dieselbe Version ergeben denselben Bericht, Byte für Byte.',
  words: [
    [
      'Betriebstag',
      'benannt nach dem Datum, an dem er zu der vom Standort gesetzten Uhrzeit beginnt; eine Charge um 01:30 gehört zum Vortag.',
    ],
    [
      'Einsatztag',
      'ein Betriebstag, an dem ein Gerät mindestens eine Charge fuhr, die keine Entleerungscharge ist. Kein Einsatztag, nichts fällig.',
    ],
    [
      'Tagesergebnis',
      'der erste gültige Bowie-Dick-Test eines Betriebstags. Wiederholungstests, Tests nach Reparatur und Qualifizierungen bleiben erhalten, werden gezeigt und nicht gezählt.',
    ],
    ['AEMP', 'Aufbereitungseinheit für Medizinprodukte.'],
    ['Prüftag', 'ein Betriebstag mit Tagesergebnis.'],
    ['Fehlerepisode', 'vom ersten nicht bestandenen Tagesergebnis bis zum ersten bestandenen danach.'],
    [
      'Unter Risiko',
      'ein Tag mit Tagesergebnis, nicht in einer Episode und nicht außer Betrieb. Nur Tage unter Risiko gehen in einen Vergleich ein.',
    ],
    [
      'Produktionscharge',
      'zählende Chargen der Produktion und von Flüssigkeiten. Test- und Hilfschargen, Entleerungschargen, frühe Stopps und Chargen ohne gesehenes Ende sind ausgelassen.',
    ],
    [
      'Entleerungscharge',
      'eine Charge, die nahe einem Reinigungseintrag bald nach dem Beginn von Hand gestoppt wurde, um Spülwasser abzulassen. Weder Fehler noch Produktionscharge.',
    ],
    [
      'Ungeklärter früher Stopp',
      'dasselbe Bild ohne Reinigungseintrag in der Nähe; es kann eine Reinigung sein, die niemand eingetragen hat.',
    ],
    [
      'Abschnitt',
      'die Zeit eines Geräts zwischen zwei Ereignissen, nach denen neu verglichen wird: Reparatur, Tausch der Steuerung, Fachreinigung. Über sein Ende hinweg wird nichts verglichen.',
    ],
    ['Versäumnis', 'was an einem Tag vorlag: Kammer überfällig, Sieb versäumt oder Ablaufspülung versäumt.'],
    [
      'Kammer überfällig',
      'mehr als das festgelegte Intervall und seine Nachfrist seit der letzten gezählten Kammerreinigung, als die erste Charge des Tages begann.',
    ],
    [
      'Anlassbezogen',
      'eine Reinigung innerhalb der festgelegten Tage nach einem Fehler, oder so eingetragen.',
    ],
  ],
  points: [
    [
      'Raten',
      'Anteile der Prüftage mit dem exakten Intervall nach Clopper und Pearson (1934); Abbrüche je Produktionscharge mit dem exakten Poisson-Intervall nach Garwood (1936).',
    ],
    [
      'Karten im Zeitverlauf',
      'p-Karte und u-Karte (Shewhart) mit Drei-Sigma-Grenzen, festgehalten an den ersten zwölf Monaten der Aufzeichnungen, nie am Berichtsmonat. Signale: ein Punkt außerhalb der Grenzen; acht in Folge auf einer Seite des Mittels. Wo weniger als drei Ereignisse im Monat zu erwarten sind, gibt es keine Grenzen.',
    ],
    [
      'Vergleiche',
      'Tage mit Versäumnis gegen Tage ohne, innerhalb eines Geräts und innerhalb von Schichten von etwa einem halben Jahr in einem Abschnitt, damit nicht belebte Geräte, schlechte Geräte oder langsame Trends für die Reinigung sprechen. Es gilt, was vorlag, als die erste Charge des Tages begann. Bei einem Gerät: exaktes bedingtes Chancen- oder Ratenverhältnis; über Geräte: Mantel-Haenszel mit dem Intervall nach Robins, Breslow und Greenland (Chancen) oder Greenland und Robins (Raten).',
    ],
    [
      'p',
      'Durch kreisförmiges Verschieben der Versäumnisse innerhalb jeder Schicht, da Fehler wie überfällige Tage in Strecken kommen: der Anteil der Verschiebungen, deren Ergebnis mindestens so extrem ist, nach beiden Seiten. Angepasst an alle Fragen des Berichts nach Benjamini und Hochberg (1995).',
    ],
    [
      'Was die Aufzeichnungen hätten zeigen können',
      'Das kleinste Verhältnis, das mit diesen Tagen und Fehlern die genannte Trennschärfe hatte; die Strecken sind berücksichtigt.',
    ],
    [
      'Kontrolle',
      'Abbrüche aus Ursachen, an denen Reinigung nichts ändern kann. Sie sollten gleich bleiben; ändern sie sich, fällt das Urteil um eine Stufe.',
    ],
    [
      'Zwei Lesarten',
      'Einträge der Kammerreinigung, denen das Chargenprotokoll widerspricht, zählen nach der Regel des Standorts. Der Vergleich wird auch in der anderen Lesart gemacht und genannt, wo das Urteil abweicht.',
    ],
    [
      'Geräte mit Drift',
      'Evakuierungs-, Aufheiz- und Druckentlastungszeit, Leckrate, Temperaturspanne und Temperatur gegen Sattdampf (IAPWS-IF97) der ersten leeren Charge jeder Art und jeden Tages, Zeiten als Logarithmen. Wo zwei Chargen eines Tages ungewöhnlich weit auseinander liegen, bleibt die, die von den Tagen ringsum absteht, im Wert des Tages außer Betracht. Was die anderen Geräte des Standorts an dem Tag taten, wird herausgenommen (Gewichte nach Huber), so stark, wie das Gerät es spürt, ebenso ein Sägezahn, der bei Reinigungen zurückfällt. Eine EWMA- und eine CUSUM-Karte, eingestellt auf ein falsches Signal in 500 Werten bei der Autokorrelation der Reihe, stellen die Frage; Bewegung heißt es, wo eine Gerade ab irgendeinem Tag die Werte deutlich besser erklärt als eine gleich bleibende Lage und als ein oder zwei Sprünge. Weniger wird von einer Messgröße verlangt, wo sich andere des Geräts mit ihr so bewegen, wie es eine der Ursachen erwarten lässt: Es zählt, was sie zusammen für sich haben. An einem Standort mit zwei Geräten wird jedes mit dem anderen verglichen; wo es kein anderes gibt, wird fast dreimal so viel verlangt, denn auch Jahreszeit und Versorgung bewegen eine Messgröße. Nach Reparatur, neuer Steuerung oder Fachreinigung beginnt es neu. Tage bis zur Grenze: Intervall durch Umkehren eines Tests der Kreuzung (Fieller 1954) über alle möglichen Anfänge.',
    ],
  ],
  cautions: [
    'Dieser Bericht beschreibt Aufzeichnungen. Er gibt keine Charge frei, weist keine zurück und ruft keine zurück; das stützt sich auf physikalische, chemische und biologische Überwachung, beurteilt von sachkundigem Personal nach den örtlichen Regeln.',
    'Ein bestandener Bowie-Dick-Test, ein bestandener Vakuumtest oder eine Statistik beweist keine Sterilität. Ein nicht bestandener heißt: Das Gerät bleibt außer Betrieb, bis es geprüft ist und besteht.',
    'Die Gebrauchsanweisungen von Sterilisator, Zubehör, Testpaketen und Reinigungsmitteln gelten, wo immer dieser Bericht von ihnen abweicht. Kein Intervall darf aufgrund dieser Belege über sie hinaus verlängert werden.',
    'Über Reparatur, Reinigungsintervalle, Requalifizierung und Rückruf entscheiden die örtlichen Regeln, die Krankenhaushygiene, die Medizintechnik und die dafür befugten oder beauftragten Personen.',
    'Ein Zusammenhang zwischen versäumter Reinigung und Fehlern kann andere Ursachen haben: Auslastung, Dampf, Reparaturen, Reinigung als Folge von Fehlern. Er beweist keine Ursache.',
    'Kein Hinweis heißt nicht: kein Fehler. Plötzliche Fehler kündigen sich nicht an, und wenige Fehler lassen viel Ungewissheit.',
    'Fehlende, späte, überlappende oder nicht zugeordnete Aufzeichnungen sind aufgeführt, und die Ergebnisse hängen von ihnen ab. Uhren und Gerätenamen prüfen.',
    'Grenzen sind die vom Standort gesetzten. Normen und ihre Ausgaben unterscheiden sich; die geltende Ausgabe prüfen.',
    'Reinigen ist gefährlich. Kammer abkühlen lassen, Energie und Dampf absperren, Schutzausrüstung tragen, lüften, Chloride und Scheuermittel von Edelstahl fernhalten; nur eingewiesenes Personal.',
    'Nach der Reinigung: aufheizen und den Bowie-Dick-Test bestehen, vor jeder Charge. Nach größerer Reparatur: die vollständige Requalifizierung.',
    'Entleerungschargen nach der Reinigung zählen nach der Regel unter Einstellungen weder als Fehler noch als Abbruch; ihre Anzahl steht neben den Zahlen.',
    'Der Bericht enthält seiner Anlage nach keine Patientendaten. Tauchen Namen oder Chargennummern auf, gelten die örtlichen Datenschutzregeln. Er handelt von der Güte der Aufzeichnungen, nicht von Disziplin.',
    'Der Bericht gehört zu den Qualitätsunterlagen, so lange, wie die Regeln es verlangen; Zeitraum der Daten, Geräte, Regeln und Version stehen auf der ersten Seite und unter Methoden.',
  ],
  errorRates: {
    heading: 'Wie oft die Urteile falsch waren',
    intro: (fleets, made, version) =>
      `Die Vergleiche wurden an je ${format.integer(fleets)} simulierten Gruppen von Geräten jeder Art gemacht, bei denen bekannt ist, ob versäumte Reinigung schadet: gemessen am ${format.date(made)} mit Version ${version}.`,
    since: (version) =>
      `Dieser Bericht ist von Version ${version}, mit der nicht neu gemessen wurde; die erste Gruppe jeder Art ergibt mit ihr dieselben Urteile.`,
    caption: `Urteile an simulierten Gruppen von Geräten, mit ${format.level(0.95)}\u2011Intervallen`,
    scenario: (scenario, says) => SCENARIOS[scenario] ?? says,
    notAsked: 'nicht gefragt',
    heads: {
      scenario: 'Was in den Gruppen galt',
      falseShown: 'Gruppen mit einem falschen „gezeigt“',
      falseEither: 'Gruppen mit einem falschen „gezeigt“ oder „angedeutet“',
      found: 'Geräte mit wahrem Effekt, „gezeigt“',
      foundEither: 'Dasselbe, „gezeigt“ oder „angedeutet“',
      coverage: 'Intervalle, die das wahre Verhältnis enthielten',
    },
  },
  settingsIntro:
    'Was die Standortdatei setzt, und die Vorgaben für das Übrige. Eine Marke steht, wo der Wert von der Vorgabe abweicht. Namen und Werte stehen wie in der Standortdatei.',
  settingsCaption: 'Geltende Einstellungen',
  settingsHeads: { name: 'Einstellung', value: 'Gilt', default: 'Vorgabe', description: 'Bedeutung' },
  policy: 'Reinigungsregel',
  settingValue,
  policyValue: policyText,
  settingMeans: (name, description) => SETTINGS[name] ?? description,
  own: 'vom Standort gesetzt',
  noDefault: 'keine',
  changed: (n) =>
    n === 0
      ? 'Alle Regeln stehen auf ihrer Vorgabe.'
      : `${n === 1 ? 'Eine Regel weicht' : `${format.integer(n)} Regeln weichen`} von der Vorgabe ab:`,
  all: 'Alle Methoden, Wörter und Einstellungen',
};
