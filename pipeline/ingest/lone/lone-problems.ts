import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import { TIME_FIELD } from '../../site/records.ts';
import { formatWall } from '../../site/wall-clock.ts';
import type { Inputs } from '../read-jobs.ts';
import type { Problem } from '../reading.ts';
import { LONE_BEYOND_DAYS, MOST_LONE } from './lone-at-ends.ts';
import { type EndRecord, type RecordEnds, splitEnds } from './record-ends.ts';

const EXPECTED = `a time within ${LONE_BEYOND_DAYS} days of other cycles or tests; if it is right, it counts as soon as ${MOST_LONE + 1} records lie there`;

/** The lone records as problems of their rows, in order of time. They stay records in the counts of reading. */
export function loneProblems(inputs: Pick<Inputs, 'site' | 'readers'>, ends: RecordEnds): Problem[] {
  const clockOf = clocksOfUnits(inputs.site);
  return (splitEnds(ends)?.lone ?? []).map((of): Problem => {
    const { source, file, sheet, row } = of.origin;
    return {
      code: 'lone_record',
      costs: 'review',
      source,
      file,
      sheet,
      row,
      column: columnOfTime(inputs, of),
      value: formatWall(clockOf(of.unit).wallOf(of.at)),
      expected: EXPECTED,
    };
  });
}

/** The column that its source reads the time from; the field itself where that is no column of its own. */
function columnOfTime({ readers }: Pick<Inputs, 'readers'>, { kind, origin }: EndRecord): string {
  const field = TIME_FIELD[kind];
  const reader = readers.find(({ source }) => source.name === origin.source);
  const headers = reader?.fields.find((of) => of.field.name === field)?.headers ?? [];
  return reader?.source.wide || headers.length === 0 ? field : headers.join(' + ');
}
