import type { RecordKind } from '../site/vocabulary.ts';
import { Fault } from './cell.ts';
import type { ReadInstant } from './codecs/instant.ts';
import type { AnyRecord, LaterReadings } from './draft.ts';

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

/** What came of putting the instants of a record in order. */
export interface OrderedTimes {
  lost: { field: string; fault: Fault } | undefined;
  later: LaterReadings | undefined;
}

/**
 * Checks that a record's end doesn't lie before its start and, for cycles, that it isn't longer than a day. Where a wall time occurs twice, the first readings
 * (earlier before later) that fit together are put into the record; a cycle's second readings are handed on, for its neighbours may decide.
 */
export function orderTimes(
  kind: RecordKind,
  record: AnyRecord,
  instants: ReadonlyMap<string, ReadInstant>,
): OrderedTimes {
  const stretch = STRETCHES[kind];
  const first = stretch && instants.get(stretch.first);
  const last = stretch && instants.get(stretch.last);
  const later = kind === 'cycles' ? laterOf(first, last) : undefined;
  if (!stretch || !first || !last || record[stretch.optional] === undefined)
    return { lost: undefined, later };
  for (const from of readings(first)) {
    for (const to of [...readings(last), ...onOldClock(first, last)]) {
      if (from > to || to - from > stretch.longest) continue;
      record[stretch.first] = from;
      record[stretch.last] = to;
      return { lost: undefined, later };
    }
  }
  return {
    lost: { field: stretch.optional, fault: last.at < first.at ? FAULTS.order : FAULTS.length },
    later: later && { start: later.start, end: undefined },
  };
}

function laterOf(first: ReadInstant | undefined, last: ReadInstant | undefined): LaterReadings | undefined {
  if (first?.later === undefined && last?.later === undefined) return undefined;
  return { start: first?.later, end: last?.later };
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
