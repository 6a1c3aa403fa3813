import { type Fit, fitAt, logCovers, type Stretch } from './offset-fit.ts';

const MINUTE = 60_000;
const WEEK = 7 * 1440;

/** Offsets that are tried, minutes: within three hours each 5 minutes, to twelve hours each half hour, which other zones are off by. */
export const OFFSETS: readonly number[] = [
  ...Array.from({ length: 73 }, (_, at) => -180 + 5 * at),
  ...Array.from({ length: 18 }, (_, at) => 210 + 30 * at).flatMap((minutes) => [-minutes, minutes]),
].sort((a, b) => a - b);

/** A record with its fit as it is and at each offset; the latter is worked out when it is first asked for. */
export interface Tried {
  asItIs: Fit;
  atOffsets(): Uint8Array;
  /** Whether it would be near a cycle at this offset, and whether a week later; null where the log has no cycles there. */
  againstWeek(offset: number): { own: boolean; week: boolean } | null;
}

export function tryOffsets(record: Stretch): Tried {
  let fits: Uint8Array | undefined;
  return {
    asItIs: fitAt(record, 0),
    atOffsets() {
      fits ??= Uint8Array.from(OFFSETS, (offset) => fitAt(record, offset));
      return fits;
    },
    againstWeek(offset) {
      const own = moved(record, -offset);
      const week = [WEEK, -WEEK].map((by) => moved(own, by)).find(logCovers);
      return week === undefined ? null : { own: fitAt(own, 0) === 2, week: fitAt(week, 0) === 2 };
    },
  };
}

const moved = ({ begin, end, log }: Stretch, minutes: number): Stretch => ({
  begin: begin + minutes * MINUTE,
  end: end + minutes * MINUTE,
  log,
});
