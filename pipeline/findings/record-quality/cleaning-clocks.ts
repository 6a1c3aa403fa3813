import { groupBy } from '../../group-by.ts';
import { monthOf } from '../../site/day.ts';
import type { Cleaning } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { fitsAsItIs, judgeOffsets, type OffsetJudgement, standsElsewhere } from './judge-offsets.ts';
import { logCovers, type PauseLog, pauseLog, type Stretch } from './offset-fit.ts';
import type { CleaningClock } from './record-quality-schema.ts';
import { type Tried, tryOffsets } from './try-offsets.ts';

const MINUTE = 60_000;
const LEAST_RECORDS = 30;
const LEAST_IN_MONTH = 20;
/** So many records of one minute were typed together, or bear a usual time: nobody cleans three units at once. */
const SAME_MINUTE = 3;
/** A range that is wider, or has a gap, gives the direction and no offset to set. */
const WIDEST_RANGE = 60;

/** What of a unit's history is set beside each other. */
export interface LogsOfUnit extends Pick<UnitHistory, 'site' | 'clock'> {
  cycles: PauseLog;
  /** Cleanings that were done. */
  cleanings: readonly Cleaning[];
}

export const logsOfUnit = ({
  site,
  clock,
  cycles,
  cleanings,
}: Pick<UnitHistory, 'site' | 'clock' | 'cycles'> & {
  cleanings: readonly (Cleaning & { done: boolean })[];
}): LogsOfUnit => ({
  site,
  clock,
  cycles: pauseLog(cycles),
  cleanings: cleanings.filter((cleaning) => cleaning.done),
});

interface Beside extends Tried {
  month: string;
  /** Wall time less UTC at the time of the record, ms: tells summer time from the rest of the year. */
  zoneOffset: number;
}

/**
 * How far the clock of a cleaning log runs from that of the cycle log, for each source and site, since one log has one clock: while a chamber, strainer or drain is
 * cleaned no cycle runs. See `judgeOffsets` for what is asked before a clock is called off. Left out are dates alone, times that three or more records share (typed in a batch), and
 * records beside which the unit's log has no cycles.
 */
export function cleaningClocks(site: Site, units: readonly LogsOfUnit[]): CleaningClock[] {
  const rows = units.flatMap((unit) =>
    unit.cleanings.map((cleaning) => ({
      cleaning,
      log: unit.cycles,
      clock: unit.clock,
      site: unit.site,
    })),
  );
  const groups = groupBy(rows, (row) => `${row.cleaning.origin.source}\u0000${row.site}`);
  return [...groups.values()].map((list): CleaningClock => {
    const { cleaning, site: id } = list[0]!;
    const { source } = cleaning.origin;
    const sameMinute = groupBy(list, (row) => Math.floor(row.cleaning.time / MINUTE));
    const beside = list
      .filter(
        (row) =>
          row.cleaning.time_mark !== 'day' &&
          sameMinute.get(Math.floor(row.cleaning.time / MINUTE))!.length < SAME_MINUTE,
      )
      .flatMap((row) => besideLog(row.cleaning, row.clock, row.log));
    const corrected = site.sources.find(({ name }) => name === source)?.clock_offset_minutes ?? 0;
    return {
      source,
      site: id,
      records: beside.length,
      left_out: list.length - beside.length,
      ...judge(beside, corrected),
    };
  });
}

/** The record beside the log of its unit; nothing where the log has no cycles there. */
function besideLog(cleaning: Cleaning, clock: WallClock, log: PauseLog): Beside[] {
  const end = cleaning.time;
  const begin = Math.min(cleaning.start ?? end - (cleaning.minutes ?? 0) * MINUTE, end);
  const stretch: Stretch = { begin, end, log };
  if (!logCovers(stretch)) return [];
  const month = monthOf(clock.operatingDay(end));
  return [{ ...tryOffsets(stretch), month, zoneOffset: clock.wallOf(end) - end }];
}

type Judged = Omit<CleaningClock, 'source' | 'site' | 'records' | 'left_out'>;

/** @param corrected `clock_offset_minutes` with which the source was read; what is suggested stands in its place */
function judge(beside: readonly Beside[], corrected: number): Judged {
  const whole = judgeOffsets(beside);
  const inMonths = [...groupBy(beside, ({ month }) => month)]
    .filter(([, list]) => list.length >= LEAST_IN_MONTH)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const months = inMonths.map(([month, list]) => ({
    month,
    list,
    judged: judgeOffsets(list, inMonths.length),
  }));
  const halves = [...groupBy(beside, ({ zoneOffset }) => zoneOffset).values()]
    .filter((list) => list.length >= LEAST_RECORDS)
    .map((list) => ({ list, judged: judgeOffsets(list, 2) }));
  const tooFew = beside.length < LEAST_RECORDS;
  const share = whole.fit / beside.length;
  const changes = changed(whole, share, months) || changed(whole, share, halves);
  const found = tooFew || changes ? null : whole.found;
  const { verdict } = whole;
  return {
    fit: whole.fit,
    fit_with_offset: found?.fit ?? null,
    p: found === null ? null : Number(found.p.toPrecision(3)),
    low_minutes: found === null ? null : found.low + corrected,
    high_minutes: found === null ? null : found.high + corrected,
    months: months.map(({ month, list, judged }) => ({
      month,
      records: list.length,
      fit: judged.fit,
      offset_minutes: judged.found === null ? null : judged.found.best + corrected,
    })),
    verdict: tooFew
      ? 'too_few'
      : changes
        ? 'changes'
        : verdict === 'ahead' || verdict === 'behind'
          ? `cleaning_clock_${verdict}`
          : verdict,
    suggested_offset_minutes:
      found?.whole && found.high - found.low <= WIDEST_RANGE ? middle(found) + corrected : null,
  };
}

/** Whether a part of the records has another clock than the whole, or than the first part that is off where the whole shows none. */
function changed(
  whole: OffsetJudgement,
  share: number,
  parts: readonly { list: readonly Beside[]; judged: OffsetJudgement }[],
): boolean {
  const best = whole.found?.best ?? parts.find(({ judged }) => judged.found)?.judged.found?.best;
  if (best === undefined) return false;
  return parts.some(
    ({ list, judged }) =>
      standsElsewhere(list, best, parts.length) || fitsAsItIs(judged, list.length, share, parts.length),
  );
}

const middle = ({ low, high }: { low: number; high: number }): number => Math.round((low + high) / 2);
