import type { PagesWords } from '../en/pages.ts';
import { format } from './format.ts';

const { integer, count } = format;

/** Wörter des Rahmens: Titel, Wege, Kopf und Fuß, Tabellen und Bilder. */
export const pages: PagesWords = {
  product: 'Monatsbericht zu Reinigung und Tests der Sterilisatoren',
  never: 'Er beschreibt Aufzeichnungen und gibt keine Charge frei, weist keine zurück und ruft keine zurück.',
  title: (month) => `${month}: Bericht zu Reinigung und Tests der Sterilisatoren`,
  unitTitle: (unit, month) => `Gerät ${unit}, ${month}`,
  comparisonsTitle: (month) => `Vergleiche, ${month}`,
  recordsTitle: (month) => `Aufzeichnungen und Daten, ${month}`,
  methodsTitle: (month) => `Methoden und Einstellungen, ${month}`,
  skip: 'Zum Inhalt',
  contents: 'Auf dieser Seite',
  pagesNav: 'Seiten',
  review: 'Bericht',
  units: 'Geräte',
  comparisons: 'Vergleiche',
  interval: 'Reinigungsintervall',
  records: 'Aufzeichnungen und Daten',
  methods: 'Methoden und Einstellungen',
  unit: (unit) => `Gerät ${unit}`,
  previous: 'Voriges',
  nextUnit: 'Nächstes',
  back: 'Zum Bericht',
  month: 'Monat',
  data: 'Daten',
  newest: 'Neuestes Ereignis',
  sites: 'Standorte',
  site: (name, zone, starts) => `${name} (Zeitzone ${zone}, Betriebstag ab ${starts})`,
  files: 'Dateien',
  fingerprint: (n, mark) => `${count(n, 'Datei', 'Dateien')}, Fingerabdruck ${mark}`,
  version: (version) => `Version ${version}`,
  noRecord: 'keine Aufzeichnungen',
  footer:
    'Beschreibt Aufzeichnungen; gibt keine Charge frei, weist keine zurück und ruft keine zurück. Es entscheiden die örtlichen Regeln und die von ihnen Beauftragten.',
  figure: (n) => `Bild ${n}`,
  table: (n) => `Tabelle ${n}`,
  csv: 'Zahlen dieses Bildes (CSV)',
  csvTable: 'CSV',
  scrolls: (name) => `${name}, seitlich verschiebbar`,
  printHeader: (organisation, month) =>
    organisation === ''
      ? `Bericht zu Reinigung und Tests, ${month}`
      : `${organisation}: Bericht zu Reinigung und Tests, ${month}`,
  printFooter: (span, mark) =>
    `Daten ${span}. Fingerabdruck ${mark}. Gibt keine Charge frei, weist keine zurück, ruft keine zurück.`,
  picturesOf: (n, all) =>
    `Bilder einzelner Geräte zeigen die ersten ${integer(n)} von ${integer(all)} Geräten nach Dringlichkeit.`,
  pictured: (n, all) =>
    `Bilder einzelner Geräte zeigen die ersten ${integer(n)} von ${integer(all)} Geräten nach Dringlichkeit. Tabellen und Dateien enthalten alle.`,
  picturedAndListed: (n, all) =>
    `Bilder einzelner Geräte und lange Tabellen zeigen die ersten ${integer(n)} von ${integer(all)} Geräten nach Dringlichkeit. Die Tabelle aller Geräte und die Dateien enthalten alle.`,
  rowsCut: (n, all) =>
    `Die ersten ${integer(n)} von ${integer(all)} Zeilen. Die Dateien dieses Berichts enthalten alle.`,
  ownPages: (n, all) =>
    n === all
      ? 'Jedes Gerät hat seine eigene Seite.'
      : `${count(n, 'Gerät hat eine eigene Seite', 'Geräte haben eine eigene Seite')}: die, die Aufmerksamkeit brauchen, und die verlangten (review --unit-pages).`,
  findUnit: 'Ein Gerät suchen',
  pagedUnits: (n, all) =>
    n === all ? `Alle ${integer(n)} Geräte` : count(n, 'Gerät mit eigener Seite', 'Geräte mit eigener Seite'),
  allUnits: (n) => `Alle ${integer(n)} Geräte`,
  unitsHeading: 'Alle Geräte',
  unitsCaption: (month) => `Geräte im ${month}`,
  unitHeads: {
    unit: 'Gerät',
    site: 'Standort',
    days: 'Einsatztage',
    done: 'Erledigt von fälligen',
    failed: 'Nicht bestanden von Prüftagen',
    aborts: 'Abbrüche von Produktions\u00adchargen',
    clock: 'Tage seit Kammer\u00adreinigung',
    attention: 'Anlass',
  },
  attentionHeading: 'Geräte, die Aufmerksamkeit brauchen',
  comparisonsHeading: 'Fehler nach versäumter Reinigung',
  keyHeading: 'Die Frage hinter diesem Bericht',
  noAttention: 'nein',
  reasons: (n) => count(n, 'Anlass', 'Anlässe'),
  numbers: 'In Zahlen',
  history: 'Alle Aufzeichnungen',
  outOf: (events, of) => `${integer(events)} von ${integer(of)}`,
  rate: (events, interval) => `${events} (${interval})`,
  rateText: (share, low, high, level) => `${share}, ${level}\u2011Intervall ${low} bis ${high}`,
  rateShort: (share, low, high) =>
    `${share} (${low.replace(/^unter /, '<\u00a0').replace(/\u00a0%$/, '')} bis ${high})`,
  span: { month: 'Monat', record: 'Alle Aufzeichnungen' },
  none: 'keine',
  nothingToShow: 'Keine Aufzeichnungen dieses Geräts.',
  machine: 'Für Programme',
  machineText:
    'Derselbe Inhalt als Daten, das Schema dazu, alle Probleme und die Tabellen der Bilder (Feldnamen auf Englisch):',
};
