/** What the cells of a column hold, as far as its name needs to know. */
export type Holds = 'dates' | 'clock' | 'numbers' | 'text';

/**
 * What a name of a column says by its parts of the record as a whole: when something was done or typed, what work it was, what was read or measured. Cycles' phases and
 * readings are told elsewhere. More than one meaning may come of it ("work done" is a task in one table and a remark in another): the kind of record decides.
 *
 * @param found parts of the name
 * @param holds what the cells hold; undefined: not known
 */
export function recordMeanings(found: ReadonlySet<string>, holds: Holds | undefined): string[] {
  const has = (...names: string[]): boolean => names.every((name) => found.has(name));
  const any = (...names: string[]): boolean => names.some((name) => found.has(name));
  if (holds === 'dates' || holds === 'clock') return timeMeanings(has, any, holds);
  if (holds === undefined && any('date', 'hour') && !any('phase', 'drain')) {
    if (has('entered')) return ['entered_at'];
    if (has('planned')) return ['due'];
  }
  if (holds === 'numbers') return numberMeanings(has, any);
  return textMeanings(has, any);
}

type Test = (...names: string[]) => boolean;

/** A day or time of day by what happened then. One that was planned is never one on which something was done. */
function timeMeanings(has: Test, any: Test, holds: 'dates' | 'clock'): string[] {
  const when = holds === 'clock' ? ['time_of_day'] : ['date', 'date_time'];
  if (has('clerical')) return ['unread'];
  if (has('entered')) return ['entered_at'];
  if (has('planned')) return has('done') ? ['cleaned_at'] : ['due'];
  if (has('decided')) return ['decided_at'];
  if (any('phase', 'drain')) return [];
  if (has('back')) return ['to'];
  if (has('out')) return ['from'];
  if (has('closed')) return ['done_on', 'to'];
  if (has('start') !== has('end'))
    return has('start') ? ['start', 'from', 'begun'] : ['end', 'to', 'cleaned_at', 'done_on'];
  if (has('done')) return holds === 'clock' ? when : ['cleaned_at', 'date_time', 'done_on'];
  return any('event', 'cycle', 'work', 'unit') && any('date', 'hour', 'time') ? when : [];
}

function numberMeanings(has: Test, any: Test): string[] {
  if (any('looks', 'grade') && any('chamber', 'looks') && any('grade', 'chamber')) return ['appearance'];
  if (any('work', 'clean') && any('time', 'hour')) return ['minutes'];
  if (has('measured')) return ['value'];
  return [];
}

function textMeanings(has: Test, any: Test): string[] {
  if (has('remark')) return ['note'];
  if (has('residue')) return ['residue_after_rinsing'];
  if (has('sampled', 'place')) return ['point'];
  if (has('analysed')) return ['determinand'];
  if (has('role') && any('in_charge', 'decided')) return ['role'];
  if (has('action') && any('decided', 'agreed')) return ['action'];
  if (has('reason')) return any('alarm', 'cycle') ? ['abort_text'] : ['reason'];
  if (has('kind') && any('service', 'work')) return ['service_kind'];
  if (has('colour', 'change')) return ['result'];
  if (has('test', 'outcome')) return ['result'];
  if (any('work', 'clean') && any('done', 'described'))
    return has('clean') ? ['task', 'state', 'work'] : ['work'];
  if (has('clean') && any('work', 'kind')) return ['task'];
  if (has('what', 'done')) return ['task', 'work'];
  if (has('done')) return ['state'];
  return [];
}
