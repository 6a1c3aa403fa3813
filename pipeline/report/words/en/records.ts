import { format } from './format.ts';

const { integer, count } = format;

/** Words about single records and about the reading of files. */
export const records = {
  contradicted: {
    heading: 'Records that contradict the cycle log',
    intro:
      'A chamber cleaning record is set beside the cycle log. Running: a cycle overlaps the stated work. Hot: less idle time before it than the cool-down. Such records are shown to the site; whether they count as done is the site’s rule. Check clocks and units before people.',
    none: (span: string) => `No chamber cleaning record contradicts the cycle log in ${span}.`,
    caption: (span: string) => `Chamber cleaning records that contradict the cycle log, ${span}`,
    before: (n: number) => `${count(n, 'more record', 'more records')} before this month`,
    rule: (counts: boolean): string =>
      counts
        ? 'By the site’s rule these records count as done.'
        : 'By the site’s rule these records do not count as done. Where a conclusion depends on it, both readings are given.',
    heads: {
      unit: 'Unit',
      time: 'Record says',
      why: 'The log says',
      idle: 'Idle time before',
      where: 'Where',
    },
    clock: (sources: readonly string[]): string =>
      `The times of ${sources.join(', ')} as a whole do not fit the cycle log, as if a clock were off: a record may then contradict the log though the work was done.`,
    running: 'a cycle was running',
    hot: 'too little time to cool',
    hours: (hours: number) => `${format.fixed(hours, 1)} h`,
  },
  timing: {
    heading: 'Tests missing, late or failed before production',
    intro:
      'Missing: production and no valid air-removal test on that operating day. Late: the test ended after the first production cycle had started. Failed: production after a failed test and before one passed.',
    none: (month: string) =>
      `On each production day of ${month} a valid passing test came before production.`,
    nothing: (month: string) => `There was no production in ${month}.`,
    counts: (missing: number, late: number, failed: number, unknown: number, days: number) =>
      `Of ${count(days, 'production day', 'production days')}: ${integer(missing)} with no test, ${integer(late)} with a late test, ${integer(failed)} with production after a failed test and before one passed, ${integer(unknown)} with a test of which only the date is known.`,
    caption: (month: string) => `Production days with no passing test in time, ${month}`,
    heads: {
      unit: 'Unit',
      day: 'Operating day',
      what: 'Test',
      ended: 'Test ended',
      production: 'First production cycle',
    },
    missing: 'missing',
    late: 'late',
    after_failure: 'failed, production before one passed',
  },
  withoutPass: {
    heading: 'Cycles with no passing test before them',
    intro:
      'Production and liquids cycles that ran after a failed test and before one passed, before a late test, or on a day with no test. The list judges no cycle and recalls nothing: those who are responsible decide about them.',
    summary: {
      after_failure: (unit: string, failed: string, cycles: number) =>
        `Unit ${unit}, after the failed test of ${failed}: ${count(cycles, 'cycle', 'cycles')} before one passed`,
      before_late_test: (unit: string, day: string, cycles: number) =>
        `Unit ${unit}, ${day}: ${count(cycles, 'cycle', 'cycles')} before the late test ended`,
      no_test: (unit: string, day: string, cycles: number) =>
        `Unit ${unit}, ${day}: ${count(cycles, 'cycle', 'cycles')} on a day with no test`,
    },
    until: {
      after_failure: (passed: string | null) =>
        passed === null
          ? 'The record holds no passing test after it: the list goes on to the end of the month.'
          : `Next passing test: ${passed}.`,
      before_late_test: (ended: string | null) => `The test ended: ${ended ?? ''}.`,
      no_test: (_: string | null) => 'No valid test of that day is on record.',
    },
    unsure: (n: number) =>
      `Where only the date of a test is known, the list errs toward more: of ${count(n, 'cycle', 'cycles')} it is not sure that no test had passed before.`,
    perhaps: 'not sure',
    caption: {
      after_failure: (unit: string, failed: string) =>
        `Cycles of unit ${unit} after the failed test of ${failed} and before one passed`,
      before_late_test: (unit: string, day: string) => `Cycles of unit ${unit} before the late test, ${day}`,
      no_test: (unit: string, day: string) => `Cycles of unit ${unit} on a day with no test, ${day}`,
    },
    moreLists: (n: number) =>
      `${count(n, 'list more is', 'lists more are')} on the pages of the units and in tables/without-pass-cycles.csv.`,
  },
  lookBack: {
    moreLists: (n: number) =>
      `${count(n, 'list more is', 'lists more are')} on the pages of the units and in tables/look-back-cycles.csv.`,
    heading: 'Look-back lists',
    intro:
      'For each first failed test after a pass: the production cycles since that unit’s last passing test, for those who decide. The list judges no cycle and recalls nothing.',
    none: (month: string) => `No air-removal test failed in ${month}, so there is no list.`,
    summary: (unit: string, failed: string, cycles: number) =>
      `Unit ${unit}, failed ${failed}: ${count(cycles, 'production cycle', 'production cycles')}`,
    since: (pass: string | null) =>
      pass === null
        ? 'The record holds no passing test before it: the list goes back to its beginning.'
        : `Last passing test before it: ${pass}.`,
    empty: 'No production cycle lies between them.',
    wholeDay: 'Where only the date of a test is known, production of that whole day is listed.',
    heads: { number: 'Cycle number', start: 'Start', kind: 'Kind', standing: 'Ended', where: 'Where' },
    caption: (unit: string, failed: string) =>
      `Production cycles of unit ${unit} before the failed test of ${failed}`,
    noNumber: 'none',
    more: (n: number) => `${integer(n)} more in review.json`,
  },
  returns: {
    heading: 'Incomplete returns to service',
    intro:
      'After a chamber cleaning: a warm-up and a passing air-removal test before production. After major service: the stated number of passing air-removal tests in a row before production.',
    none: (span: string) => `No incomplete return is on record in ${span}.`,
    cleaningCaption: (span: string) =>
      `Chamber cleanings followed by production before a warm-up and a passing test, ${span}`,
    serviceHeading: 'Returns after major service',
    serviceCaption: 'Returns after major service, whole record',
    noService: 'No major service is on record.',
    heads: { unit: 'Unit', cleaned: 'Cleaned', where: 'Where' },
    serviceHeads: {
      unit: 'Unit',
      service: 'Service',
      ended: 'Ended',
      passes: 'Passing tests in a row',
      state: 'State',
    },
    passes: (passes: number, wanted: number) => `${integer(passes)} of ${integer(wanted)}`,
  },
  stops: {
    heading: 'Early stops and unclassified aborts',
    intro:
      'An early stop looks like a drain purge with no cleaning record near: it may be a cleaning that nobody recorded. An abort text that no row of the site’s table matches is listed, never guessed.',
    none: (month: string) => `There was no unexplained early stop in ${month}.`,
    caption: (month: string) => `Unexplained early stops, ${month}`,
    heads: { unit: 'Unit', start: 'Start', minutes: 'Minutes', where: 'Where' },
    textsCaption: 'Abort texts in no class, whole record',
    textHeads: { text: 'Text', count: 'Cycles' },
    noTexts: 'Each abort text is in a class.',
    blank: '(blank)',
    unknownLength: 'not known',
  },
  data: {
    heading: 'Data read and rejected',
    intro:
      'Each row of each file became a record, a duplicate of one, a rejected row with its reason, or a row that the site file says to skip. The sums are checked.',
    later: (n: number) =>
      `${count(n, 'record lies', 'records lie')} after the month and ${n === 1 ? 'is' : 'are'} left out, so that the review can be made again later.`,
    sumCaption: 'Rows read, by source',
    filesCaption: 'Files read',
    filesMore: (n: number) => `${count(n, 'more file', 'more files')}: tables/files.csv has them all`,
    filesSummary: (n: number) => `${count(n, 'file or sheet', 'files and sheets')} with size and SHA-256`,
    heads: {
      source: 'Source',
      kind: 'Records',
      files: 'Files',
      rows: 'Rows',
      records: 'Became records',
      duplicates: 'Duplicates',
      rejected: 'Rejected',
      skipped: 'Skipped',
      cells: 'Cells lost',
      file: 'File',
      bytes: 'Size',
      sha: 'SHA-256',
    },
    total: 'All',
    noFiles: 'No file was found.',
    problemsCaption: 'Problems, by source and code',
    problemHeads: {
      source: 'Source',
      what: 'What is wrong',
      costs: 'Costs',
      count: 'Times',
      examples: 'Examples',
    },
    noProblems: 'No problem was found.',
    problemsFile:
      'They are in problems.csv (of over a thousand alike in a file, the last says how many more there are); examples on the page of records and data.',
    example: (where: string, column: string | null, value: string | null, expected: string) =>
      `${where}${column === null ? '' : `, ${column}`}: ${value === null ? '' : `found “${value}”, `}expected ${expected}`,
    /** What is wrong, by its code; English is what the reading itself says. */
    problem: (_code: string, meaning: string) => meaning,
    join: (name: string) => name,
    relationship: (name: string) => name,
    joinsCaption: 'How records were joined to the unit-day panel',
    joinHeads: {
      name: 'Join',
      relationship: 'Expected',
      left: 'Left rows',
      right: 'Right rows',
      matched: 'Matched',
      unmatchedLeft: 'Left alone',
      unmatchedRight: 'Right alone',
    },
    sums: (holds: boolean): string =>
      holds
        ? 'Rows = records + duplicates + rejected + skipped holds for each file.'
        : 'Rows = records + duplicates + rejected + skipped does not hold for each file: do not use this review before that is found.',
  },
  where: (file: string, sheet: string | null, row: number | null) =>
    `${file}${sheet === null ? '' : `, sheet ${sheet}`}${row === null ? '' : `, row ${row}`}`,
  onPage: 'Whole list',
};
export type RecordsWords = typeof records;
