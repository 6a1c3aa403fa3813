import { HOUR, MINUTE, toMinute } from './clock.ts';
import type { Stream } from './random.ts';

/** When a record was typed: mostly minutes after, some in a batch at the end of the shift, few the next day. */
export function typedAt(time: number, shiftEnd: number, draw: Stream): number {
  const chance = draw.float();
  const minutes = draw.int(2, 22);
  if (chance < 0.015) return toMinute(shiftEnd) + draw.int(14, 18) * HOUR;
  if (chance < 0.14 && time < shiftEnd) return toMinute(shiftEnd);
  return toMinute(time) + minutes * MINUTE;
}

/** Cleaning rows are typed later still: some days after the work. */
export function typedLate(time: number, shiftEnd: number, draw: Stream): number {
  return draw.chance(0.04) ? toMinute(time) + draw.int(26, 120) * HOUR : typedAt(time, shiftEnd, draw);
}
