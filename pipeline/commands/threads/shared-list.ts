/**
 * Takes members of a list, one at a time, where other threads take from the same list: each is taken once. The place is shared memory, so that a thread need not wait until another
 * one that is busy has told it what comes next.
 *
 * @param place of the next member, 4 bytes; one for all that take
 */
export function* takenFrom<Of>(
  list: readonly Of[],
  place: SharedArrayBuffer,
): Generator<Of, void, undefined> {
  const next = new Int32Array(place);
  for (let at = Atomics.add(next, 0, 1); at < list.length; at = Atomics.add(next, 0, 1)) yield list[at]!;
}

/** A place before the first member. */
export const sharedPlace = (): SharedArrayBuffer => new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
