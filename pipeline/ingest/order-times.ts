import type { RecordKind } from '../site/vocabulary.ts';
import { Fault } from './cell.ts';
import type { ReadInstant } from './codecs/instant.ts';
import type { RowFields, TimeChoices } from './draft.ts';

const HOUR = 3_600_000;

/** Longest cycle that is believed, ms. */
const LONGEST_CYCLE = 24 * HOUR;

/** The two instants of a kind that bound a stretch of time: the optional one is lost where they don't fit together. */
const STRETCHES: Partial<
  Record<RecordKind, { first: string; last: string; optional: string; longest: number }>
> = {
  cycles: { first: 'start', last: 'end', optional: 'end', longest: LONGEST_CYCLE },
  cleanings: { first: 'start', last: 'time', optional: 'start', longest: Number.POSITIVE_INFINITY },
  service: { first: 'from', last: 'to', optional: 'to', longest: Number.POSITIVE_INFINITY },
};

const FAULTS = {
  order: new Fault('end_before_start', 'an end on or after the start'),
  length: new Fault('out_of_range', `an end within ${LONGEST_CYCLE / HOUR} hours of the start`),
} as const;

/** The two instants of a kind that bound a stretch of time, and the longest that is believed, ms; undefined where it has no such instants. */
export const stretchOf = (kind: RecordKind): (typeof STRETCHES)[RecordKind] => STRETCHES[kind];

/** What came of putting the instants of a record in order. */
export interface OrderedTimes {
  lost: { field: string; fault: Fault } | undefined;
  choices: TimeChoices | undefined;
}

/**
 * Checks that a record's end doesn't lie before its start and, for cycles, that it isn't longer than a day. Where a wall time occurs twice, the first readings
 * (earlier before later) that fit together are put into the record; a cycle's readings are handed on, since its neighbours may
 * decide between them.
 */
export function orderTimes(
  kind: RecordKind,
  record: RowFields,
  instants: ReadonlyMap<string, ReadInstant>,
): OrderedTimes {
  const stretch = STRETCHES[kind];
  const first = stretch && instants.get(stretch.first);
  const last = stretch && instants.get(stretch.last);
  const choices = kind === 'cycles' ? choicesOf(first, last) : undefined;
  if (!stretch || !first || !last || record[stretch.optional] === undefined)
    return { lost: undefined, choices };
  for (const from of readings(first)) {
    for (const to of [...readings(last), ...onOldClock(first, last)]) {
      if (from > to || to - from > stretch.longest) continue;
      record[stretch.first] = from;
      record[stretch.last] = to;
      return { lost: undefined, choices };
    }
  }
  return {
    lost: { field: stretch.optional, fault: last.at < first.at ? FAULTS.order : FAULTS.length },
    choices,
  };
}

function choicesOf(first: ReadInstant | undefined, last: ReadInstant | undefined): TimeChoices | undefined {
  if (!first || (first.later === undefined && last?.later === undefined)) return undefined;
  return { starts: readings(first), ends: last ? readings(last) : [] };
}

/**
 * A time that never occurred shows that the clock had not been put forward yet; an end that lies before it is then on the old clock too.
 */
function onOldClock(first: ReadInstant, last: ReadInstant): number[] {
  if (first.mark !== 'shifted' || first.wallMs === undefined || last.wallMs === undefined) return [];
  return [last.wallMs - (first.wallMs - first.at)];
}

const readings = (instant: ReadInstant): number[] =>
  instant.later === undefined ? [instant.at] : [instant.at, instant.later];
