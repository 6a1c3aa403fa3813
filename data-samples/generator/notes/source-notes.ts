/** What there is to say of each source of the site file. */
export interface SourceNote {
  what: string;
  form: string;
  delimiter: string;
  oddities: string;
}

const QUILLHAVEN = 'comma-separated UTF-8, dates as in ISO 8601 on the wall clock of Quillhaven';
const TORNFELL =
  'semicolon-separated Windows-1252 with CRLF, dates as dd.MM.yyyy HH:mm on the wall clock of Tornfell, decimal comma';

export const NOTES: Readonly<Record<string, SourceNote>> = {
  'Quillhaven cycle log': {
    what: 'One row a cycle of any kind, in order of start. Seconds, degrees Celsius, kPa absolute. A cycle that is not over has no end and no measures.',
    form: `${QUILLHAVEN}, with a byte order mark and three lines above the header`,
    delimiter: ',',
    oddities:
      'each file but the last was drawn some days into the next quarter, so that files overlap and their last cycles are still running; cycle numbers of Q6 start again at 1 after 9999; on 2025-11-02 a cycle of Q3 ends before it starts on the wall clock.',
  },
  'Quillhaven air removal tests': {
    what: 'One row a test, as read by a person. Date and time stand in two columns.',
    form: QUILLHAVEN,
    delimiter: ',',
    oddities:
      'some tests are typed in a batch at the end of the shift or on the next day; retests, tests after a repair and qualification tests stand beside the day’s tests and are not marked; a few test cycles have no row.',
  },
  'Quillhaven leak tests': {
    what: 'One row a weekly leak test: rise of pressure in mbar over ten minutes, and the limit.',
    form: QUILLHAVEN,
    delimiter: ',',
    oddities: 'a leak test on the day of a chamber cleaning reads high: the chamber was wet.',
  },
  'Quillhaven cleaning log': {
    what: 'One row a cleaning that was done; what was not done has no row.',
    form: 'a workbook of one sheet, dates as typed cells (wall clock of Quillhaven)',
    delimiter: ' | ',
    oddities:
      'rows stand in the order in which they were typed, some days after the work; the reason is often blank; three rows hold strainers cleaned once more out of turn.',
  },
  'Quillhaven service': {
    what: 'Repairs, upkeep, contractor cleaning, days out of use.',
    form: QUILLHAVEN,
    delimiter: ',',
    oddities: 'a major repair has a second row for the days out of use.',
  },
  'Quillhaven inspections': {
    what: 'Appearance of the chamber before each chamber cleaning, 0 (clean) to 4. Headers are named as the fields of the record.',
    form: QUILLHAVEN,
    delimiter: ',',
    oddities: 'dates without a time.',
  },
  'Quillhaven water': {
    what: 'Feed water and condensate, sampled each quarter. Headers are named as the fields of the record.',
    form: QUILLHAVEN,
    delimiter: ',',
    oddities: 'dates without a time.',
  },
  'Quillhaven actions': {
    what: 'Actions that the reviews decided on, with the role that decides or does them, the day by which, and the day on which they were done. Headers are named as the fields of the record.',
    form: QUILLHAVEN,
    delimiter: ',',
    oddities: 'dates without a time; actions of no single unit have none.',
  },
  'Tornfell journal': {
    what: 'One row a cycle of any kind. The unit stands in the name of the file alone. Durations in mm:ss, degrees Fahrenheit, psi gauge, inches of mercury of vacuum.',
    form: TORNFELL,
    delimiter: ';',
    oddities:
      'T1 has a file under its old name, OLD-7, and a week in November 2025 stands in both; numbers of T2 start again at 1 with the new control; `Lot` and `Opér.` (load numbers and initials, invented) are there to be left out.',
  },
  'Tornfell essais d’air': {
    what: 'One row an air-removal test, one file a month.',
    form: TORNFELL,
    delimiter: ';',
    oddities: 'T1 is called OLD-7 until 2025-11-16; initials that are not mapped.',
  },
  'Tornfell fuites': {
    what: 'One row a weekly leak test: rise in mmHg per minute, and the limit.',
    form: TORNFELL,
    delimiter: ';',
    oddities: 'T1 is called OLD-7 until 2025-11-16.',
  },
  'Tornfell nettoyages': {
    what: 'One row a cleaning task with its state: fait (done), omis (missed), sans objet (not due).',
    form: TORNFELL,
    delimiter: ';',
    oddities:
      'some chamber cleanings of T1 and T4 have a date and no time; nothing of T3 from 2026-04-20 to 2026-05-01; initials that are not mapped.',
  },
  'Tornfell service': {
    what: 'Repairs, upkeep, contractor cleaning, a new control, days out of use.',
    form: TORNFELL,
    delimiter: ';',
    oddities: 'none beside the words.',
  },
  'Tornfell inspections': {
    what: 'Appearance of the chamber before each chamber cleaning, 0 (clean) to 4. Headers are named as the fields of the record.',
    form: TORNFELL.replace('dd.MM.yyyy HH:mm on the wall clock of Tornfell', 'yyyy-MM-dd'),
    delimiter: ';',
    oddities: 'written by another hand than the other files of the site: ISO dates, English headers.',
  },
  'Tornfell water': {
    what: 'Feed water and condensate, sampled each quarter. Headers are named as the fields of the record.',
    form: TORNFELL.replace('dd.MM.yyyy HH:mm on the wall clock of Tornfell', 'yyyy-MM-dd').replace(
      'decimal comma',
      'decimal point',
    ),
    delimiter: ';',
    oddities: 'written by another hand than the other files of the site: ISO dates, decimal points.',
  },
};
