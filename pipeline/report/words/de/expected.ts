/** Was das Lesen erwartet hat: Muster der englischen Sätze und ihr deutscher Text. */
const PATTERNS: readonly (readonly [RegExp, string])[] = [
  [/^a value$/, 'ein Wert'],
  [/^a value of at most (\S+)(.*)$/, 'ein Wert von höchstens $1$2'],
  [/^a value of at least (\S+)(.*)$/, 'ein Wert von mindestens $1$2'],
  [/^a whole number$/, 'eine ganze Zahl'],
  [/^a length of time in (.+)$/, 'eine Zeitdauer in $1'],
  [
    /^a number with the decimal mark "(.)" and no ambiguous separator$/,
    'eine Zahl mit dem Dezimalzeichen „$1“ und ohne mehrdeutiges Trennzeichen',
  ],
  [/^a time of the calendar like (.+)$/, 'eine Zeit des Kalenders wie $1'],
  [/^a time like (.+)$/, 'eine Zeit wie $1'],
  [/^a time from (\d+) to (\d+)$/, 'eine Zeit von $1 bis $2'],
  [
    /^a time within (\d+) days of other cycles or tests; if it is right, it counts as soon as (\d+) records lie there$/,
    'eine Zeit innerhalb von $1 Tagen um andere Chargen oder Tests; ist sie richtig, zählt sie, sobald $2 Datensätze dort liegen',
  ],
  [/^a date like (.+)$/, 'ein Datum wie $1'],
  [
    /^a time on or after the first day of service of the unit$/,
    'eine Zeit ab dem ersten Tag des Geräts in Betrieb',
  ],
  [/^an end on or after the start$/, 'ein Ende zum Anfang oder danach'],
  [/^an end within (\d+) hours of the start$/, 'ein Ende innerhalb von $1 Stunden nach dem Anfang'],
  [/^a row as long as the header$/, 'eine Zeile so lang wie die Kopfzeile'],
  [/^no more cells than the header has$/, 'nicht mehr Zellen als die Kopfzeile'],
  [/^a last row that is not cut short$/, 'eine letzte Zeile, die nicht abgeschnitten ist'],
  [/^a row without NUL bytes$/, 'eine Zeile ohne NUL-Bytes'],
  [/^a row of at most (\d+) characters$/, 'eine Zeile von höchstens $1 Zeichen'],
  [/^at most (\d+) characters$/, 'höchstens $1 Zeichen'],
  [/^a header and rows$/, 'eine Kopfzeile und Zeilen'],
  [/^a row below the header$/, 'eine Zeile unter der Kopfzeile'],
  [/^a file below the input folder$/, 'eine Datei im Eingangsordner'],
  [/^a column "(.+)" for (\w+)$/, 'eine Spalte „$1“ für $2'],
  [
    /^a column "(.+)" that marks rows to skip$/,
    'eine Spalte „$1“, die zu überspringende Zeilen kennzeichnet',
  ],
  [/^one column "(.+)"$/, 'eine einzige Spalte „$1“'],
  [/^one of the sheets (.+)$/, 'eines der Blätter $1'],
  [/^the id or an alias of a unit$/, 'Kennung oder weiterer Name eines Geräts'],
  [
    /^another name than that for all units together: declare the unit under an id of its own$/,
    'ein anderer Name als der für alle Geräte zusammen: das Gerät in der Standortdatei unter eigener Kennung angeben',
  ],
  [/^a name that means a unit on that day$/, 'ein Name, der an diesem Tag ein Gerät bezeichnet'],
  [/^yes or no, or a word mapped onto one$/, 'ja oder nein, oder ein zugeordnetes Wort'],
  [/^one of (.+), or a word mapped onto one$/, 'eines von $1, oder ein zugeordnetes Wort'],
  [
    /^each quoted cell closed by a quote before a delimiter or line end, within (\d+) lines; a quote inside it doubled$/,
    'jede Zelle in Anführungszeichen vor dem Trennzeichen oder Zeilenende geschlossen, innerhalb von $1 Zeilen; Anführungszeichen darin verdoppelt',
  ],
  [/^a reading of vacuum that is not negative$/, 'ein Unterdruck, der nicht negativ ist'],
];

/** Der Satz auf Deutsch; einer, zu dem kein Muster passt, bleibt als solcher gekennzeichnet stehen. */
export function expectedText(expected: string): string {
  for (const [pattern, text] of PATTERNS) if (pattern.test(expected)) return expected.replace(pattern, text);
  return `(englisch) ${expected}`;
}
