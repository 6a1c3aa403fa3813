import type { IntervalPlanWords } from '../en/interval-plan.ts';
import { format } from './format.ts';

const { integer, count, fixed } = format;

const HAZARD =
  'Vorsicht: Kammer abkühlen lassen; Dampf, Strom, Druckluft und Wasser absperren; Schutzausrüstung tragen und lüften; nur eingewiesene und befugte Personen. Es gelten die Gebrauchsanweisungen von Gerät und Reinigungsmittel. Danach aufheizen und den Bowie-Dick-Test bestehen, vor jeder Charge.';

/** Wörter dazu, wann gereinigt wird: Seite, Befehl und Kalenderdatei. */
export const intervalPlan: IntervalPlanWords = {
  weekday: format.weekday,
  weekdayShort: format.weekdayShort,
  dayAndTime: (day, wall) => `${format.weekdayShort(day)}, ${format.time(wall)}`,
  intro: (n) =>
    `Aus den letzten ${count(n.weeks, 'Woche', 'Wochen')} des Chargenprotokolls: wann jedes Gerät lange genug stillsteht, um abzukühlen (${n.cool} h), gereinigt zu werden (${n.work} h) und mit Aufheizcharge und Bowie-Dick-Test zurückzukehren (${n.back} h), und was eine Reinigung verdrängen würde. Aufheizcharge, Bowie-Dick-Test und Vakuumtest zählen nicht als verdrängt: Sie wandern mit der Rückkehr.`,
  allSites: (count) => `Alle ${count} Standorte`,
  needed: {
    site: (site) => `${site}: Die Geräte, die verfügbar bleiben müssen, stehen in der Standortdatei.`,
    record: (site) =>
      `${site}: In jeder Stunde der Woche müssen so viele Geräte verfügbar bleiben, wie in der mittleren Woche darin liefen, ohne Aufheizchargen und Tests.`,
  },
  worked: {
    site: 'Arbeit wird in den Stunden der Standortdatei vorgeschlagen.',
    record:
      'Arbeit wird in Stunden vorgeschlagen, in denen in mindestens der Hälfte der Wochen Chargen begannen, und in der Stunde davor.',
  },
  patternTitle: (site) => `Wie oft jedes Gerät läuft, nach Stunde der Woche, ${site}`,
  patternReading: 'Dunkler: In dieser Stunde lief in mehr Wochen eine Charge. Weiße Stunden sind frei.',
  patternAxis: 'Stunde der Woche, Ortszeit',
  patternDescription: (lines) => `Eine Zeile je Gerät, eine Zelle je Stunde der Woche. ${lines.join(' ')}`,
  patternLine: (unit, hours) => `${unit}: in ${integer(hours)} von 168 Stunden jeder Woche frei.`,
  share: 'Anteil der Wochen',
  windowsCaption: 'Zeitfenster, die am wenigsten Chargen verdrängen',
  windowHeads: {
    unit: 'Gerät',
    window: 'Tag der Arbeit',
    out: 'Außer Betrieb ab',
    work: 'Arbeit',
    back: 'Wieder im Einsatz',
    displaced: 'Verdrängte Chargen',
    spare: 'Übrige Geräte',
  },
  proposalsCaption: (month) => `Vorgeschlagene Kammerreinigungen, ${month}`,
  proposalHeads: {
    unit: 'Gerät',
    due: 'Fällig',
    out: 'Außer Betrieb ab',
    work: 'Arbeit',
    back: 'Wieder im Einsatz',
    displaced: 'Verdrängte Chargen',
  },
  state: {
    due: '',
    due_before_plan: 'vor dem ersten Tag des Plans',
    overdue: 'überfällig',
    never_recorded: 'nie verzeichnet',
  },
  hazard: HAZARD,
  basis: (interval, earliest) =>
    `Vorgeschlagen für das Intervall ${interval}: in der Woche bis zum Fälligkeitstag, nie danach, zu der halben Stunde, die am wenigsten Chargen verdrängt, an einem Standort eine Kammer nach der anderen. Nichts vor dem ${earliest}, damit Zeit zum Entscheiden bleibt: Geräte, die überfällig sind oder vor diesem Tag fällig werden, kommen in der ersten Woche danach. Die Liste ist ein Angebot; die Kalenderdatei enthält dasselbe.`,
  calendarFile: 'Kalenderdatei (iCalendar)',
  notPlanned: {
    no_interval:
      'Es wird nichts vorgeschlagen: Die Standortdatei nennt kein Intervall, und die Aufzeichnungen benennen keines.',
    no_units_in_use: 'Es wird nichts vorgeschlagen: In den letzten 90 Tagen war kein Gerät im Einsatz.',
    record_too_short:
      'Es wird nichts vorgeschlagen: Das Chargenprotokoll der Geräte im Einsatz ist kürzer als zwei Wochen.',
  },
  notPlaced: {
    units_needed: 'kein Zeitfenster lässt genug Geräte im Einsatz',
    work_hours: 'kein Zeitfenster mit genug Geräten im Einsatz liegt in den Arbeitsstunden',
    work_taken: 'die passenden Arbeitsstunden sind mit anderen Geräten des Standorts belegt',
  },
  notPlacedLine: (unit, date, why) => `${unit}, fällig ${date}: ${why}.`,
  noneDue: 'In diesem Monat wird keine Reinigung fällig.',
  noWindow: (unit, why) => `${unit}: ${why}.`,
  displaced: (value) => fixed(value, 1),
  calendarName: (organisation, month) =>
    organisation === ''
      ? `Vorgeschlagene Kammerreinigungen, ${month}`
      : `${organisation}: vorgeschlagene Kammerreinigungen, ${month}`,
  eventTitle: (unit) => `Vorgeschlagene Kammerreinigung, Gerät ${unit}`,
  eventText: (n) =>
    [
      n.due === null ? 'Keine Kammerreinigung ist verzeichnet.' : `Fällig am ${n.due}.`,
      `Von Beginn an außer Betrieb: abkühlen, Arbeit ${n.work} bis ${n.workTo}, dann Aufheizcharge und bestandener Bowie-Dick-Test vor jeder Charge.`,
      HAZARD,
      `Chargen, die sonst in dieser Zeit laufen: ${n.displaced}.`,
      'Ein Vorschlag aus den Aufzeichnungen; es entscheiden die örtlichen Regeln und die von ihnen Beauftragten.',
    ].join(' '),
};
