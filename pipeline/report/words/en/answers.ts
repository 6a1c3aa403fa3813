import { format } from './format.ts';

const { integer, count, list } = format;

export interface CleaningAnswer {
  due: number;
  done: number;
  late: number;
  missed: number;
  notRecorded: number;
  contradicted: number;
  open: number;
  /** Tasks that are outstanding at the end of the month, by task, and how many of them fell due before it. */
  outstanding: { task: string; count: number }[];
  fromBefore: number;
}
export interface FailuresAnswer {
  total: number;
  /** Scopes with the strongest verdicts, as "Q2 (chamber overdue)". */
  shown: string[];
  suggested: string[];
  notShown: number;
  cannotTell: number;
  notComparable: number;
  /** Least and largest adjusted p of those that are suggested. */
  suggestedP: { low: number; high: number } | null;
  /** Simulated reviews with nothing going on: least and largest share of those with a wrong verdict; null where that was not measured. */
  measured: { shown: [number, number]; either: [number, number] } | null;
}
export interface UnitsAnswer {
  units: number;
  act: string[];
  decide: string[];
  look: string[];
}
export interface ReadingAnswer {
  files: number;
  rows: number;
  records: number;
  duplicates: number;
  rejected: number;
  skipped: number;
  cellsLost: number;
  filesFailed: number;
  /** Records that lie alone in time. */
  lone: number;
  unclassifiedTexts: number;
}

/** An answer: one sentence, and what stands behind it. */
export interface AnswerWords {
  lead: string;
  detail: string;
}

const names = (items: string[], most = 6): string =>
  items.length <= most ? list(items) : list([...items.slice(0, most), `${items.length - most} more`]);

/** What is outstanding at the end of the month. */
const outstanding = ({ outstanding: tasks, fromBefore }: CleaningAnswer): string => {
  if (tasks.length === 0) return '';
  const sum = tasks.reduce((total, of) => total + of.count, 0);
  const named = list(tasks.map((of) => `${of.task.toLowerCase()} ${integer(of.count)}`));
  return ` Outstanding at its end: ${integer(sum)}${fromBefore > 0 ? `, ${integer(fromBefore)} of them from earlier months` : ''} (${named}).`;
};

const range = ([low, high]: [number, number]): string =>
  low === high ? format.percent(low) : `${format.percent(low)} to ${format.percent(high)}`;

/** How little a *suggested* says by itself. */
const caution = ({ suggested, measured }: FailuresAnswer): string =>
  suggested.length === 0 || measured === null
    ? ''
    : ` With nothing to find, ${range(measured.either)} of simulated reviews had one suggested or shown, ${range(measured.shown)} one shown.`;

const adjusted = ({ suggestedP: p }: FailuresAnswer): string => {
  if (p === null) return '';
  return ` (adjusted p ${p.low === p.high ? format.pValue(p.low) : `${format.pValue(p.low)} to ${format.pValue(p.high)}`})`;
};

/** The month in one sentence for each question. */
export const answers = {
  heading: 'The month in three answers',
  questions: {
    cleaning: 'Was the cleaning done?',
    failures: 'Do failures rise after missed cleaning?',
    units: 'Which unit needs attention?',
    reading: 'What could not be read?',
  },
  more: {
    cleaning: 'Cleaning done against due',
    failures: 'All comparisons',
    units: 'Units that need attention',
    reading: 'Data read and rejected',
  },
  /** The first page as a story: what to decide, and the one picture. */
  story: {
    parts: { story: 'In two minutes', evidence: 'Evidence', records: 'Records', methods: 'Methods' },
    decisionsHeading: 'For this meeting',
    decisionsCaption: 'Units in the order of need, each with its most pressing reasons',
    heads: { unit: 'Unit', found: 'What the records say', next: 'Next step', decides: 'Who decides' },
    also: (reasons: string[]): string => `Also: ${reasons.join('; ')}.`,
    others: (n: number): string => (n === 0 ? '' : count(n, 'more reason', 'more reasons')),
    rest: (n: number): string => `${count(n, 'more unit', 'more units')} and all reasons`,
    none: 'Nothing on record asks for a decision this month. No flag does not mean no fault.',
    plain: (what: string, scope: string, exposure: string, otherwise: string, a: string, b: string): string =>
      `${format.sentence(what)}, ${scope}: ${a} on days with ${exposure}, ${b} on days with ${otherwise}.`,
    verdict: (verdict: string, ratio: string, level: string): string =>
      `${format.sentence(verdict)}: ratio ${ratio}, ${level} interval in brackets. An association in the records, not a proof of cause.`,
    figure: (outcome: string, exposure: string): string =>
      `${format.sentence(outcome)}, with and without: ${exposure}`,
    reading: (level: string): string =>
      `Point: what was counted, per 100. Bar: its exact ${level} interval; an arrow means that it goes on.`,
    ratio: (text: string, verdict: string): string => `ratio ${text}: ${verdict}`,
    allUnits: 'All comparisons as a picture',
    numbers: 'Their numbers',
    means: 'What the verdicts mean',
  },
  cleaning: (a: CleaningAnswer): AnswerWords => {
    if (a.due === 0)
      return {
        lead: 'Nothing is known to have been due.',
        detail:
          'No task fell due in the month: there was no day of use, or the site file states no interval for the tasks.',
      };
    const parts = [
      a.missed > 0 ? `${integer(a.missed)} missed` : '',
      a.notRecorded > 0 ? `${integer(a.notRecorded)} not recorded` : '',
      a.contradicted > 0 ? `${integer(a.contradicted)} contradicted by the cycle log` : '',
      a.open > 0 ? `${integer(a.open)} still open` : '',
    ].filter((part) => part !== '');
    const all = a.done + a.late === a.due;
    return {
      lead: all
        ? `Yes: all ${count(a.due, 'task', 'tasks')} due were done${a.late > 0 ? `, ${integer(a.late)} of them late` : ''}.`
        : `${integer(a.done + a.late)} of ${count(a.due, 'task', 'tasks')} due were done${a.late > 0 ? `, ${integer(a.late)} of them late` : ''}.`,
      detail: `${parts.length > 0 ? `The rest: ${list(parts)}.` : 'Each due task has a record that says done.'}${outstanding(a)}`,
    };
  },
  failures: (a: FailuresAnswer): AnswerWords => {
    if (a.total === 0)
      return {
        lead: 'The question can’t be put to this record.',
        detail: 'There is no unit of which it is known on which days a cleaning task was overdue.',
      };
    const rest = [
      a.notShown > 0 ? `not shown in ${integer(a.notShown)}` : '',
      a.cannotTell > 0 ? `in ${integer(a.cannotTell)} the record is too small to tell` : '',
      a.notComparable > 0 ? `${integer(a.notComparable)} can’t be compared` : '',
    ].filter((part) => part !== '');
    const of = `Of ${count(a.total, 'comparison', 'comparisons')}: ${list([
      ...(a.shown.length > 0 ? [`shown in ${integer(a.shown.length)}`] : []),
      ...(a.suggested.length > 0 ? [`suggested in ${integer(a.suggested.length)}${adjusted(a)}`] : []),
      ...rest,
    ])}.`;
    if (a.shown.length > 0)
      return {
        lead: `Shown for ${names(a.shown)}.`,
        detail: `${of}${caution(a)}`,
      };
    if (a.suggested.length > 0)
      return { lead: `Shown for none; suggested for ${names(a.suggested)}.`, detail: `${of}${caution(a)}` };
    if (a.notShown === 0)
      return { lead: 'The record can’t tell.', detail: `${of} This is not the same as no effect.` };
    return { lead: 'No rise was shown.', detail: of };
  },
  units: (a: UnitsAnswer): AnswerWords => {
    if (a.units === 0) return { lead: 'No unit has a record.', detail: 'No cycle and no test was read.' };
    const parts = [
      a.act.length > 0 ? `before the next load: ${names(a.act)}` : '',
      a.decide.length > 0 ? `at this review: ${names(a.decide)}` : '',
      a.look.length > 0 ? `soon: ${names(a.look)}` : '',
    ].filter((part) => part !== '');
    const n = a.act.length + a.decide.length + a.look.length;
    if (n === 0)
      return {
        lead: `None of the ${count(a.units, 'unit', 'units')} has a reason on record.`,
        detail: 'No flag does not mean no fault.',
      };
    const first = a.act[0] ?? a.decide[0] ?? a.look[0]!;
    const counts = [
      a.act.length > 0 ? `${integer(a.act.length)} before the next load` : '',
      a.decide.length > 0 ? `${integer(a.decide.length)} at this review` : '',
      a.look.length > 0 ? `${integer(a.look.length)} soon` : '',
      a.units > n ? `${integer(a.units - n)} with no reason` : '',
    ].filter((part) => part !== '');
    return {
      lead: n === 1 && a.units === 1 ? `${first}.` : `${first} first; ${counts.join(', ')}.`,
      detail: `${format.sentence(parts.join('; '))}.`,
    };
  },
  reading: (a: ReadingAnswer): AnswerWords => {
    if (a.files === 0)
      return {
        lead: 'Nothing was read.',
        detail: 'No file of any source was found; the list of problems says which were looked for.',
      };
    const lost = [
      a.filesFailed > 0
        ? count(a.filesFailed, 'source or file could not be used', 'sources or files could not be used')
        : '',
      a.cellsLost > 0 ? count(a.cellsLost, 'optional cell was left out', 'optional cells were left out') : '',
      a.lone > 0
        ? count(
            a.lone,
            'record lies months from all others and is taken for a slip',
            'records lie months from all others and are taken for slips',
          )
        : '',
      a.unclassifiedTexts > 0
        ? count(a.unclassifiedTexts, 'abort text is in no class', 'abort texts are in no class')
        : '',
    ].filter((part) => part !== '');
    return {
      lead:
        a.rejected === 0
          ? `Every one of ${count(a.rows, 'row', 'rows')} could be read.`
          : `${integer(a.rejected)} of ${count(a.rows, 'row', 'rows')} were rejected.`,
      detail: `${count(a.files, 'file', 'files')}: ${count(a.records, 'record', 'records')}, ${count(a.duplicates, 'duplicate', 'duplicates')}, ${integer(a.rejected)} rejected, ${integer(a.skipped)} skipped${lost.length > 0 ? `; ${list(lost)}` : ''}.`,
    };
  },
};
export type AnswersWords = typeof answers;
