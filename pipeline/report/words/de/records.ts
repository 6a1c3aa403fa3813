import type { ProblemCode } from '../../../ingest/reading.ts';
import type { RecordsWords } from '../en/records.ts';
import { expectedText } from './expected.ts';
import { format } from './format.ts';

const { integer, count } = format;

const PROBLEMS: Record<ProblemCode, string> = {
  no_file: 'Keine Datei passt zum Muster der Quelle',
  unreadable_file: 'Die Datei lässt sich nicht öffnen oder nicht bis zum Ende lesen',
  empty_file: 'Die Datei enthält keine Zeile',
  no_rows: 'Die Datei enthält eine Kopfzeile und keine Zeile darunter',
  header_not_found: 'Keine Zeile enthält die Spaltenköpfe, die die Quelle braucht',
  repeated_header: 'Ein Spaltenkopf, den die Quelle braucht, steht zweimal da',
  column_not_found: 'Eine Spalte, die die Quelle nennt, fehlt in der Kopfzeile; das Feld bleibt leer',
  sheet_not_found: 'Die Arbeitsmappe enthält kein Blatt dieses Namens',
  encoding: 'Die Zeile enthält Bytes, die die Zeichenkodierung nicht kennt',
  nul_byte: 'Die Zeile enthält NUL-Bytes',
  too_long: 'Die Zeile oder Zelle ist länger als erlaubt',
  quote: 'Eine Zelle in Anführungszeichen ist nicht geschlossen oder es folgt Text darauf',
  short_row: 'Die Zeile endet vor der letzten Spalte, die die Quelle braucht',
  long_row: 'Die Zeile hat mehr Zellen als die Kopfzeile; Werte können in falschen Spalten stehen',
  missing_value: 'Eine notwendige Zelle ist leer',
  unknown_unit: 'Der Name des Geräts ist nicht bekannt, oder nicht an diesem Tag',
  unknown_word: 'Das Wort ist keinem zugeordnet, das der Datensatz enthalten darf',
  bad_time: 'Der Text ist keine Zeit nach dem Muster oder keine Zeit des Kalenders',
  bad_number: 'Der Text ist keine Zahl',
  out_of_range: 'Der Wert liegt außerhalb des Möglichen',
  end_before_start: 'Das Ende liegt vor dem Anfang',
  clock_reset: 'Die Zeit liegt vor der möglichen Inbetriebnahme des Geräts oder später als möglich',
  conflicting_duplicate: 'Zwei Zeilen mit demselben Schlüssel unterscheiden sich; die erste bleibt',
  lone_record:
    'Wenige Chargen oder Tests liegen mehr als 62 Tage von allen anderen entfernt: Sie gelten als Fehler einer Uhr oder beim Tippen und zählen in keinem Monat außer ihrem eigenen, wenn nach ihm gefragt wird',
};

const JOINS: Record<string, string> = {
  'days of use with cycle counts': 'Einsatztage mit Anzahlen der Chargen',
  'days of use with day results': 'Einsatztage mit Tagesergebnissen',
  'days of use with exposures': 'Einsatztage mit Versäumnissen',
};
const RELATIONSHIPS: Record<string, string> = {
  'one-to-one': 'eins zu eins',
  'one-to-many': 'eins zu vielen',
  'many-to-one': 'viele zu eins',
  'many-to-many': 'viele zu vielen',
};

/** Wörter zu einzelnen Aufzeichnungen und zum Lesen der Dateien. */
export const records: RecordsWords = {
  contradicted: {
    heading: 'Einträge, denen das Chargen\u00adprotokoll widerspricht',
    intro:
      'Jeder Eintrag einer Kammerreinigung wird neben das Chargenprotokoll gestellt. Lief: Eine Charge überschneidet sich mit der eingetragenen Arbeit. Heiß: Davor lag weniger Stillstand als die Abkühlzeit. Solche Einträge werden dem Standort gezeigt; ob sie als erledigt zählen, sagt die Regel des Standorts. Zuerst Uhren und Gerätenamen prüfen, dann Menschen fragen.',
    none: (span) => `Das Chargenprotokoll widerspricht keinem Eintrag einer Kammerreinigung, ${span}.`,
    caption: (span) => `Einträge der Kammerreinigung, denen das Chargenprotokoll widerspricht, ${span}`,
    before: (n) => `${count(n, 'weiterer Eintrag', 'weitere Einträge')} vor diesem Monat`,
    rule: (counts) =>
      counts
        ? 'Nach der Regel des Standorts zählen diese Einträge als erledigt.'
        : 'Nach der Regel des Standorts zählen diese Einträge nicht als erledigt. Wo ein Schluss davon abhängt, stehen beide Lesarten.',
    heads: {
      unit: 'Gerät',
      time: 'Eintrag sagt',
      why: 'Protokoll sagt',
      idle: 'Stillstand davor',
      where: 'Fundstelle',
    },
    clock: (sources) =>
      `Die Zeiten von ${sources.join(', ')} passen im Ganzen nicht zum Chargenprotokoll, als ginge eine Uhr falsch: Dann kann ein Eintrag dem Protokoll widersprechen, obwohl die Arbeit getan wurde.`,
    running: 'eine Charge lief',
    hot: 'zu wenig Zeit zum Abkühlen',
    hours: (hours) => `${format.fixed(hours, 1)} h`,
  },
  timing: {
    heading: 'Fehlende, späte oder nicht bestandene Tests vor der Produktion',
    intro:
      'Fehlend: Produktion und kein gültiger Bowie-Dick-Test an diesem Betriebstag. Spät: Der Test endete, nachdem die erste Produktionscharge begonnen hatte. Nicht bestanden: Produktion nach einem nicht bestandenen Test und vor einem bestandenen.',
    none: (month) =>
      `An jedem Produktionstag im ${month} kam ein gültiger, bestandener Test vor der Produktion.`,
    nothing: (month) => `Im ${month} gab es keine Produktion.`,
    counts: (missing, late, failed, unknown, days) =>
      `Von ${count(days, 'Produktionstag', 'Produktionstagen')}: ${integer(missing)} ohne Test, ${integer(late)} mit spätem Test, ${integer(failed)} mit Produktion nach einem nicht bestandenen Test und vor einem bestandenen, ${integer(unknown)} mit einem Test, von dem nur das Datum bekannt ist.`,
    caption: (month) => `Produktionstage ohne rechtzeitig bestandenen Test, ${month}`,
    heads: {
      unit: 'Gerät',
      day: 'Betriebstag',
      what: 'Test',
      ended: 'Ende des Tests',
      production: 'Erste Produktionscharge',
    },
    missing: 'fehlt',
    late: 'spät',
    after_failure: 'nicht bestanden, Produktion vor einem bestandenen',
  },
  withoutPass: {
    heading: 'Chargen ohne bestandenen Test davor',
    intro:
      'Produktionschargen nach einem nicht bestandenen Test und vor einem bestandenen, vor einem späten Test oder an einem Tag ohne Test. Die Liste beurteilt keine Charge und ruft nichts zurück: Über sie entscheiden die Verantwortlichen.',
    summary: {
      after_failure: (unit, failed, cycles) =>
        `Gerät ${unit}, nach dem nicht bestandenen Test (${failed}): ${count(cycles, 'Charge', 'Chargen')} vor einem bestandenen`,
      before_late_test: (unit, day, cycles) =>
        `Gerät ${unit}, ${day}: ${count(cycles, 'Charge', 'Chargen')} vor dem Ende des späten Tests`,
      no_test: (unit, day, cycles) =>
        `Gerät ${unit}, ${day}: ${count(cycles, 'Charge', 'Chargen')} an einem Tag ohne Test`,
    },
    until: {
      after_failure: (passed) =>
        passed === null
          ? 'Danach ist kein bestandener Test verzeichnet: Die Liste reicht bis zum Ende des Monats.'
          : `Nächster bestandener Test: ${passed}.`,
      before_late_test: (ended) => `Ende des Tests: ${ended ?? ''}.`,
      no_test: () => 'Von diesem Tag ist kein gültiger Test verzeichnet.',
    },
    unsure: (n) =>
      `Wo von einem Test nur das Datum bekannt ist, nennt die Liste eher mehr: Bei ${count(n, 'Charge', 'Chargen')} ist nicht sicher, dass davor kein Test bestanden wurde.`,
    perhaps: 'nicht sicher',
    caption: {
      after_failure: (unit, failed) =>
        `Chargen von Gerät ${unit} nach dem nicht bestandenen Test (${failed}) und vor einem bestandenen`,
      before_late_test: (unit, day) => `Chargen von Gerät ${unit} vor dem späten Test, ${day}`,
      no_test: (unit, day) => `Chargen von Gerät ${unit} an einem Tag ohne Test, ${day}`,
    },
    moreLists: (n) =>
      `${count(n, 'weitere Liste steht', 'weitere Listen stehen')} auf den Seiten der Geräte und in tables/without-pass-cycles.csv.`,
  },
  lookBack: {
    moreLists: (n) =>
      `${count(n, 'weitere Liste steht', 'weitere Listen stehen')} auf den Seiten der Geräte und in tables/look-back-cycles.csv.`,
    heading: 'Rückschaulisten',
    intro:
      'Zu jedem ersten nicht bestandenen Test nach einem bestandenen: die Produktionschargen seit dem letzten bestandenen Test dieses Geräts, für die, die entscheiden. Die Liste beurteilt keine Charge und ruft nichts zurück.',
    none: (month) => `Im ${month} wurde kein Bowie-Dick-Test nicht bestanden, also gibt es keine Liste.`,
    summary: (unit, failed, cycles) =>
      `Gerät ${unit}, nicht bestanden am ${failed}: ${count(cycles, 'Produktionscharge', 'Produktionschargen')}`,
    since: (pass) =>
      pass === null
        ? 'Davor ist kein bestandener Test verzeichnet: Die Liste reicht bis zum Beginn der Aufzeichnungen.'
        : `Letzter bestandener Test davor: ${pass}.`,
    empty: 'Dazwischen liegt keine Produktionscharge.',
    wholeDay:
      'Wo von einem Test nur das Datum bekannt ist, steht die Produktion dieses ganzen Tages in der Liste.',
    heads: { number: 'Chargennummer', start: 'Beginn', kind: 'Art', standing: 'Ende', where: 'Fundstelle' },
    caption: (unit, failed) =>
      `Produktionschargen von Gerät ${unit} vor dem nicht bestandenen Test vom ${failed}`,
    noNumber: 'keine',
    more: (n) => `${integer(n)} weitere in review.json`,
  },
  returns: {
    heading: 'Unvollständige Wieder\u00adinbetrieb\u00adnahmen',
    intro:
      'Nach einer Kammerreinigung: eine Aufheizcharge und ein bestandener Bowie-Dick-Test vor der Produktion. Nach einer größeren Instandhaltung: die festgelegte Zahl bestandener Bowie-Dick-Tests in Folge vor der Produktion.',
    none: (span) => `Keine unvollständige Wiederinbetriebnahme ist verzeichnet, ${span}.`,
    cleaningCaption: (span) =>
      `Kammerreinigungen, nach denen Produktion vor Aufheizcharge und bestandenem Test kam, ${span}`,
    serviceHeading: 'Rückkehr nach größerer Instandhaltung',
    serviceCaption: 'Rückkehr nach größerer Instandhaltung, alle Aufzeichnungen',
    noService: 'Eine größere Instandhaltung ist nicht verzeichnet.',
    heads: { unit: 'Gerät', cleaned: 'Gereinigt', where: 'Fundstelle' },
    serviceHeads: {
      unit: 'Gerät',
      service: 'Instandhaltung',
      ended: 'Ende',
      passes: 'Bestandene Tests in Folge',
      state: 'Stand',
    },
    passes: (passes, wanted) => `${integer(passes)} von ${integer(wanted)}`,
  },
  stops: {
    heading: 'Frühe Stopps und nicht zugeordnete Abbrüche',
    intro:
      'Ein früher Stopp sieht aus wie eine Entleerungscharge, ohne dass ein Reinigungseintrag in der Nähe steht: Es kann eine Reinigung sein, die niemand eingetragen hat. Ein Abbruchtext, zu dem keine Zeile der Tabelle des Standorts passt, wird aufgeführt und nie geraten.',
    none: (month) => `Im ${month} gab es keinen ungeklärten frühen Stopp.`,
    caption: (month) => `Ungeklärte frühe Stopps, ${month}`,
    heads: { unit: 'Gerät', start: 'Beginn', minutes: 'Minuten', where: 'Fundstelle' },
    textsCaption: 'Abbruchtexte ohne Klasse, alle Aufzeichnungen',
    textHeads: { text: 'Text', count: 'Chargen' },
    noTexts: 'Jeder Abbruchtext gehört zu einer Klasse.',
    blank: '(leer)',
    unknownLength: 'nicht bekannt',
  },
  data: {
    heading: 'Gelesene und abgewiesene Daten',
    intro:
      'Jede Zeile jeder Datei wurde ein Datensatz, eine Dublette, eine abgewiesene Zeile mit ihrem Grund, oder eine Zeile, die nach der Standortdatei zu überspringen ist. Die Summen sind geprüft.',
    later: (n) =>
      `${count(n, 'Datensatz liegt', 'Datensätze liegen')} nach dem Monat und ${n === 1 ? 'bleibt' : 'bleiben'} außer Betracht, damit der Bericht später gleich wiederholt werden kann.`,
    sumCaption: 'Gelesene Zeilen, nach Quelle',
    filesCaption: 'Gelesene Dateien',
    filesMore: (n) => `${count(n, 'weitere Datei', 'weitere Dateien')}: in tables/files.csv stehen alle`,
    filesSummary: (n) => `${count(n, 'Datei oder Blatt', 'Dateien und Blätter')} mit Größe und SHA-256`,
    heads: {
      source: 'Quelle',
      kind: 'Aufzeichnungen',
      files: 'Dateien',
      rows: 'Zeilen',
      records: 'Wurden Datensätze',
      duplicates: 'Dubletten',
      rejected: 'Abgewiesen',
      skipped: 'Übersprungen',
      cells: 'Entfallene Zellen',
      file: 'Datei',
      bytes: 'Größe',
      sha: 'SHA-256',
    },
    total: 'Alle',
    noFiles: 'Es wurde keine Datei gefunden.',
    problemsCaption: 'Probleme, nach Quelle und Art',
    problemHeads: {
      source: 'Quelle',
      what: 'Was nicht stimmt',
      costs: 'Kostet',
      count: 'Mal',
      examples: 'Beispiele',
    },
    noProblems: 'Es wurde kein Problem gefunden.',
    problemsFile:
      'Sie stehen in problems.csv (bei über tausend gleichen in einer Datei sagt das letzte, wie viele es noch sind); Beispiele auf der Seite Aufzeichnungen und Daten.',
    example: (where, column, value, expected) =>
      `${where}${column === null ? '' : `, ${column}`}: ${value === null ? '' : `gefunden „${value}“, `}erwartet ${expectedText(expected)}`,
    problem: (code) => PROBLEMS[code as ProblemCode],
    join: (name) => JOINS[name] ?? name,
    relationship: (name) => RELATIONSHIPS[name] ?? name,
    joinsCaption: 'Wie die Aufzeichnungen zu Gerätetagen verbunden wurden',
    joinHeads: {
      name: 'Verbindung',
      relationship: 'Erwartet',
      left: 'Zeilen links',
      right: 'Zeilen rechts',
      matched: 'Verbunden',
      unmatchedLeft: 'Links allein',
      unmatchedRight: 'Rechts allein',
    },
    sums: (holds) =>
      holds
        ? 'Zeilen = Datensätze + Dubletten + abgewiesene + übersprungene gilt für jede Datei.'
        : 'Zeilen = Datensätze + Dubletten + abgewiesene + übersprungene gilt nicht für jede Datei: Diesen Bericht nicht verwenden, bevor das geklärt ist.',
  },
  where: (file, sheet, row) =>
    `${file}${sheet === null ? '' : `, Blatt ${sheet}`}${row === null ? '' : `, Zeile ${row}`}`,
  onPage: 'Ganze Liste',
};
