import { format } from './format.ts';

const { integer, count } = format;

/** Words of the frame: titles, navigation, headers and footers, tables and figures. */
export const pages = {
  product: 'Monthly review of sterilizer cleaning and tests',
  never: 'It describes records and never releases, rejects or recalls a load.',
  title: (month: string) => `${month}: review of sterilizer cleaning and tests`,
  unitTitle: (unit: string, month: string) => `Unit ${unit}, ${month}`,
  comparisonsTitle: (month: string) => `Comparisons, ${month}`,
  recordsTitle: (month: string) => `Records and data, ${month}`,
  methodsTitle: (month: string) => `Methods and settings, ${month}`,
  skip: 'To the content',
  contents: 'On this page',
  pagesNav: 'Pages',
  review: 'Review',
  units: 'Units',
  comparisons: 'Comparisons',
  interval: 'Cleaning interval',
  records: 'Records and data',
  methods: 'Methods and settings',
  unit: (unit: string) => `Unit ${unit}`,
  previous: 'Previous',
  nextUnit: 'Next',
  back: 'To the review',
  month: 'Month',
  data: 'Data',
  newest: 'Newest event',
  sites: 'Sites',
  site: (name: string, zone: string, starts: string) =>
    `${name} (clock ${zone}, operating day from ${starts})`,
  files: 'Files',
  fingerprint: (n: number, mark: string) => `${count(n, 'file', 'files')}, fingerprint ${mark}`,
  version: (version: string) => `version ${version}`,
  noRecord: 'no record',
  footer:
    'Describes records; releases, rejects or recalls no load. Local policy and those it authorises decide.',
  figure: (n: number) => `Figure ${n}`,
  table: (n: number) => `Table ${n}`,
  csv: 'Numbers of this figure (CSV)',
  csvTable: 'CSV',
  scrolls: (name: string) => `${name}, scrolls sideways`,
  printHeader: (organisation: string, month: string) =>
    organisation === ''
      ? `Cleaning and test review, ${month}`
      : `${organisation}: cleaning and test review, ${month}`,
  printFooter: (span: string, mark: string) =>
    `Data ${span}. Fingerprint ${mark}. Never releases, rejects or recalls a load.`,
  picturesOf: (n: number, all: number) =>
    `Pictures of single units hold the first ${integer(n)} of ${integer(all)} units in the order of need.`,
  pictured: (n: number, all: number) =>
    `Pictures of single units hold the first ${integer(n)} of ${integer(all)} units in the order of need. Tables and files hold all.`,
  picturedAndListed: (n: number, all: number) =>
    `Pictures of single units and long tables hold the first ${integer(n)} of ${integer(all)} units in the order of need. The table of all units and the files hold all.`,
  rowsCut: (n: number, all: number) =>
    `The first ${integer(n)} of ${integer(all)} rows. The data files of this review hold all.`,
  ownPages: (n: number, all: number) =>
    n === all
      ? 'Each unit has its own page.'
      : `${count(n, 'unit has its', 'units have their')} own page: those that need attention, and those asked for (review --unit-pages).`,
  findUnit: 'Find a unit',
  pagedUnits: (n: number, all: number) =>
    n === all ? `All ${integer(n)} units` : count(n, 'unit with a page', 'units with a page'),
  allUnits: (n: number) => `All ${integer(n)} units`,
  unitsHeading: 'All units',
  unitsCaption: (month: string) => `Units in ${month}`,
  unitHeads: {
    unit: 'Unit',
    site: 'Site',
    days: 'Days of use',
    done: 'Tasks done of due',
    failed: 'Failed of test days',
    aborts: 'Aborts of production cycles',
    clock: 'Days since chamber cleaning',
    attention: 'Needs attention',
  },
  attentionHeading: 'Units that need attention',
  comparisonsHeading: 'Failures after missed cleaning',
  keyHeading: 'The question behind this review',
  noAttention: 'no',
  reasons: (n: number) => count(n, 'reason', 'reasons'),
  numbers: 'In numbers',
  history: 'The whole record',
  outOf: (events: number, of: number) => `${integer(events)} of ${integer(of)}`,
  rate: (events: string, interval: string) => `${events} (${interval})`,
  rateText: (share: string, low: string, high: string, level: string) =>
    `${share}, ${level} interval ${low} to ${high}`,
  rateShort: (share: string, low: string, high: string) => `${share} (${low} to ${high})`,
  span: { month: 'Month', record: 'Whole record' },
  none: 'none',
  nothingToShow: 'No record of this unit.',
  machine: 'For programs',
  machineText: 'The same content as data, its schema, all problems, and the tables of the figures:',
};
export type PagesWords = typeof pages;
