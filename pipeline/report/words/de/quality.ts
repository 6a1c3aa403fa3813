import type { QualityWords } from '../en/quality.ts';
import { format } from './format.ts';

const { integer, count, fixed } = format;

const minutesOf = (value: number): string => fixed(Math.abs(value), Number.isInteger(value) ? 0 : 1);
/** Minuten, deren Vorzeichen in Worten steht. */
const minutes = (value: number): string => {
  if (value === 0) return 'an ihrem Ende';
  return value < 0 ? `${minutesOf(value)} min davor` : `${minutesOf(value)} min danach`;
};

const signed = (value: number): string => `${value < 0 ? '\u2212' : '+'}${integer(Math.abs(value))}`;

/** Wörter dazu, wie gut die Aufzeichnungen sind. Sie handeln von Aufzeichnungen und Uhren, nie von Menschen. */
export const quality: QualityWords = {
  heading: 'Wie gut die Aufzeichnungen sind',
  intro:
    'Uhren, Zeiten und Zähler der Aufzeichnungen nebeneinandergestellt. Das sagt, wie weit einem Befund zu trauen ist, und nichts über Menschen: Gerundete Minuten und Eintragen am Ende der Schicht sind üblich, wo die Arbeit vorgeht. Es wird dadurch nichts berichtigt.',
  none: 'Es gibt nichts nebeneinanderzustellen: keinen Test mit Uhrzeit und Charge, keinen Reinigungseintrag, keinen Zähler.',
  short: (clocks, sources, counters) =>
    `${count(clocks, 'Uhr', 'Uhren')} von Testaufzeichnungen nicht im Gleichlauf mit dem Chargenprotokoll; ${count(sources, 'Quelle', 'Quellen')} mit mehr Minuten auf Fünfern, als eine Uhr ergibt; ${count(counters, 'Chargenzähler', 'Chargenzähler')} mit Sprung oder Rücksetzung.`,
  cleaningShort: (logs) =>
    `${count(logs, 'Reinigungsbuch', 'Reinigungsbücher')} mit einer Uhr, die nicht im Gleichlauf mit dem Chargenprotokoll ist.`,
  more: 'Uhren, Einträge und Zähler im Einzelnen',
  clocksCaption: 'Zeit des Tests gegen das Ende seiner Charge',
  clockHeads: {
    source: 'Quelle',
    unit: 'Gerät',
    matched: 'Tests mit ihrer Charge',
    unmatched: 'Ohne',
    median: 'Eingetragen, Median',
    before: 'Vor dem Ende',
    verdict: 'Uhren',
    offset: 'Passender Versatz',
  },
  minutes,
  /** Grenzen gleichen Vorzeichens sagen davor oder danach nur einmal. */
  interval: (low, high) =>
    low === high
      ? minutes(low)
      : low * high > 0
        ? `${minutesOf(low < 0 ? high : low)} bis ${minutes(low < 0 ? low : high)}`
        : `${minutes(low)} bis ${minutes(high)}`,
  clock: {
    agree: 'stimmen überein',
    test_clock_behind: 'Uhr der Tests geht nach, oder die des Protokolls vor',
    test_clock_ahead: 'Uhr der Tests geht vor, oder Tests werden spät abgelesen',
    changes: 'der Unterschied wechselt von Monat zu Monat',
    too_few: 'zu wenige für eine Aussage',
  },
  clocksNote: `Ein Test wird gewöhnlich vom Ende seiner Charge bis eine Stunde danach eingetragen. Das Intervall ist das des Medians, ${format.level(0.95)}. Ein passender Versatz kann für die Quelle als clock_offset_minutes gesetzt werden; von selbst wird er nie angewendet.`,
  offset: (value) => `${signed(value)} min`,
  monthsSummary: (source, unit) => `Nach Monat: ${source}, Gerät ${unit}`,
  monthsCaption: (unit) => `Zeit des Tests gegen das Ende seiner Charge, nach Monat, Gerät ${unit}`,
  monthHeads: { month: 'Monat', matched: 'Tests', median: 'Eingetragen, Median' },
  cleaningCaption: 'Uhr der Reinigungsbücher: Einträge neben dem Chargenprotokoll',
  cleaningHeads: {
    source: 'Quelle',
    site: 'Standort',
    records: 'Einträge mit Uhrzeit',
    leftOut: 'Ausgelassen',
    fit: 'So, wie sie sind, in einer Pause',
    fitWith: 'Mit dem Versatz',
    verdict: 'Uhr',
    offset: 'Passender Versatz',
  },
  /** Bereich der Versätze. */
  offsets: (low, high) => (low === high ? 'nur dieser' : `${signed(low)} bis ${signed(high)} min`),
  cleaningClock: {
    agree: 'die Einträge passen so, wie sie sind',
    cleaning_clock_behind: 'Uhr des Reinigungsbuchs geht nach, oder die des Chargenprotokolls vor',
    cleaning_clock_ahead: 'Uhr des Reinigungsbuchs geht vor, oder die Arbeit wird spät eingetragen',
    changes: 'der Unterschied wechselt von Monat zu Monat',
    too_few: 'zu wenige für eine Aussage',
    cannot_tell: 'viele liegen in laufenden Chargen, und keine Uhr erklärt es',
  },
  cleaningNote:
    'Solange eine Kammer, ein Sieb oder ein Ablauf gereinigt wird, läuft keine Charge. Von einer Uhr heißt es nur dann, dass sie falsch geht, wenn viele Einträge in laufenden Chargen liegen und ein einziger Versatz fast alle in Pausen bringt und die Hälfte bis auf 30 Minuten an eine Charge. Arbeit, die zu beiden Zeiten in einer Pause liegt, zeigt nichts: Eine Uhr, die nachgeht, wird oft nicht erkannt. Ausgelassen: ein Datum ohne Uhrzeit, eine Minute, die drei oder mehr Einträge teilen, keine Charge innerhalb eines Tages. Zuerst die Uhr selbst ansehen; dann kann ein Versatz für die Quelle als clock_offset_minutes gesetzt werden. Von selbst wird er nie angewendet.',
  cleaningMonthsSummary: (source, site) => `Nach Monat: ${source}, ${site}`,
  cleaningMonthsCaption: (source, site) =>
    `Reinigungseinträge neben dem Chargenprotokoll, nach Monat: ${source}, ${site}`,
  cleaningMonthHeads: {
    month: 'Monat',
    records: 'Einträge',
    fit: 'So, wie sie sind, in einer Pause',
    offset: 'Bester Versatz',
  },
  entryCaption: 'Wie Aufzeichnungen eingetragen wurden, nach Quelle',
  entryHeads: {
    source: 'Quelle',
    records: 'Einträge',
    timed: 'Mit Uhrzeit',
    fives: 'Minuten auf Fünfern',
    typed: 'Mit Zeit des Eintragens',
    median: 'Eingetragen nach, Median',
    late: 'Über 12 h danach',
    before: 'Vor dem Ereignis',
    batches: 'In Stapeln ab 5',
    largest: 'Größter Stapel',
  },
  hours: (hours) => `${fixed(hours, 1)} h`,
  fives: (n, of) => `${integer(n)} von ${integer(of)}`,
  entryNote:
    'Eine Uhr ergibt jede fünfte Minute auf Fünfern. Minuten auf Fünfern sind gerundete Zeiten: gut genug für den Tag, nicht für die Reihenfolge innerhalb von Minuten. Ein Stapel ist eine Minute, die fünf oder mehr Einträge teilen.',
  countersCaption: 'Chargenzähler',
  counterHeads: {
    unit: 'Gerät',
    numbered: 'Chargen mit Nummer',
    unnumbered: 'Ohne',
    missing: 'Ausgelassene Nummern',
    repeated: 'Doppelte Nummern',
    events: 'Sprünge und Rücksetzungen',
  },
  countersNote:
    'Ausgelassene Nummern sind Chargen, die keine Datei enthält: ausspielen, falls es sie gibt. Sprünge und Rücksetzungen sind üblich, wenn eine Steuerung getauscht wird.',
  eventsCaption: 'Sprünge und Rücksetzungen der Chargenzähler',
  eventHeads: {
    unit: 'Gerät',
    time: 'Wann',
    from: 'Von',
    to: 'Auf',
    what: 'Was',
    near: 'Steuerung getauscht',
  },
  counter: {
    rollover: 'nach der letzten Nummer von vorn',
    reset: 'auf den Anfang zurückgesetzt',
    back: 'zurückgesprungen',
    jump: 'vorgesprungen',
  },
  near: 'innerhalb von 7 Tagen',
  notNear: 'nicht verzeichnet',
  unitHeading: 'Wie gut diese Aufzeichnungen sind',
  unitEvents: (n) => `${count(n, 'Ereignis', 'Ereignisse')} aller Aufzeichnungen`,
  unitEventsCaption: (unit) => `Ereignisse von Gerät ${unit}`,
  unitEventHeads: { day: 'Betriebstag', what: 'Was', detail: 'Näheres', where: 'Fundstelle' },
  event: {
    chamber_cleaning: 'Kammerreinigung',
    professional_cleaning: 'Fachreinigung',
    repair: 'Reparatur',
    controller_replaced: 'Steuerung getauscht',
    out_of_service: 'außer Betrieb',
    maintenance: 'Wartung',
    failed_test: 'nicht bestandener Bowie-Dick-Test',
  },
  eventDetail: {
    counts: 'zählt als erledigt',
    contradicted: 'das Chargenprotokoll widerspricht',
    major: 'größer',
  },
};
