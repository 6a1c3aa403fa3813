import { formatWall } from '../../site/wall-clock.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { CounterHistory } from './record-quality-schema.ts';

/** Forward by more is a jump of the counter, and no cycles that are missing. */
const JUMP = 200;
/** A counter rolls over where it had come to the end of its digits, or of 16 bits, within this share. */
const NEAR_END = 0.01;
const LAST_NUMBERS = [999, 9999, 32_767, 65_535, 99_999, 999_999];
/** A counter that starts anew shows at most this. */
const FRESH = 50;
const NEAR_SERVICE = 7 * 86_400_000;

/**
 * Follows the cycle counter of a unit in order of time: rollovers, resets, jumps, and numbers that were passed over, which are cycles that no file holds. A
 * counter that is set back does not make cycles duplicates: those are told by unit, number and start. A unit without cycles has no counter.
 */
export function counterHistory({
  unit,
  cycles,
  service,
  clock,
}: Pick<UnitHistory, 'unit' | 'cycles' | 'service' | 'clock'>): CounterHistory | null {
  if (cycles.length === 0) return null;
  const numbered = cycles
    .filter(({ cycle_number }) => cycle_number !== undefined)
    .toSorted((a, b) => a.start - b.start);
  const replaced = service.filter(({ kind }) => kind === 'controller_replaced').map(({ from }) => from);
  const events: CounterHistory['events'] = [];
  let missing = 0;
  let repeated = 0;
  for (let at = 1; at < numbered.length; at++) {
    const from = numbered[at - 1]!.cycle_number!;
    const to = numbered[at]!.cycle_number!;
    const { start } = numbered[at]!;
    if (to === from) repeated++;
    else if (to > from && to - from <= JUMP) missing += to - from - 1;
    else
      events.push({
        at: start,
        time: formatWall(clock.wallOf(start)),
        from,
        to,
        what: to > from ? 'jump' : setBack(from, to),
        near_controller_replacement: replaced.some((moment) => Math.abs(moment - start) <= NEAR_SERVICE),
      });
  }
  return {
    unit,
    numbered: numbered.length,
    unnumbered: cycles.length - numbered.length,
    missing_numbers: missing,
    repeated_numbers: repeated,
    events,
  };
}

function setBack(from: number, to: number): 'rollover' | 'reset' | 'back' {
  if (to > FRESH) return 'back';
  const atEnd = LAST_NUMBERS.some((last) => from <= last && from >= last - Math.max(5, last * NEAR_END));
  return atEnd ? 'rollover' : from - to <= FRESH ? 'back' : 'reset';
}
