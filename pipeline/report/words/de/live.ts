import type { LiveWords } from '../en/live.ts';
import { format } from './format.ts';

const MONTHS = Array.from({ length: 12 }, (_, index) =>
  format.monthName(`2000-${String(index + 1).padStart(2, '0')}`),
);

/** Wörter dessen, was eine Seite gewinnt, wo Skript erlaubt ist. Namen in Klammern stehen für Werte, die das Skript einsetzt. */
export const live: LiveWords = {
  says: {
    months: MONTHS.join(','),
    date: '{day}. {month} {year}',
    span: '{from} bis {to}',
    read: 'Die Marken von {figure} einzeln lesen',
    notBegun: 'nicht begonnen; Pfeiltasten gehen von Marke zu Marke',
    noUnit: 'Diese Marke gehört zu keinem einzelnen Gerät.',
    time: 'Gezeigte Zeit in {figure} und in allen Bildern über die Zeit',
    spanShown: '{span} ist in allen Bildern über die Zeit gezeigt.',
    wholeShown: 'Alle Aufzeichnungen sind gezeigt.',
    marked: 'Gerät {unit} ist in {figures} Bildern hervorgehoben.',
    unmarked: 'Kein Gerät ist hervorgehoben.',
    found: '{shown} von {all} Geräten',
    foundNoName: 'Kein Gerät dieses Namens',
    foundNone: 'Kein solches Gerät',
  },
  read: 'Marken durchgehen',
  closer: 'Näher',
  wider: 'Weiter',
  earlier: 'Früher',
  later: 'Später',
  whole: 'Alle Aufzeichnungen',
  markedUnit: 'Hervorgehobenes Gerät:',
  toPage: 'Seine Seite',
  unmark: 'Nicht hervorheben',
  finder: {
    name: 'Geräte suchen',
    text: 'Gerät, Name oder Standort',
    state: 'Zeigen',
    unit: 'In allen Bildern hervorheben',
    noUnit: 'keines',
    clear: 'Alle zeigen',
    all: 'alle Geräte',
    states: {
      act: 'vor der nächsten Charge',
      decide: 'zu entscheiden',
      look: 'bald',
      calm: 'kein Anlass verzeichnet',
      missed: 'Reinigung versäumt',
      overdue: 'Kammer überfällig',
      failed: 'nicht bestandener Test im Monat',
      moving: 'Drift',
      contradicted: 'Einträge widersprochen',
    },
    groups: { attention: 'Braucht Aufmerksamkeit', month: 'In diesem Monat' },
    link: 'Ein Gerät suchen',
  },
};
