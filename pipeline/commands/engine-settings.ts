import { setFlagsFromString } from 'node:v8';

/**
 * V8 of the Node release for which the settings were measured. Other engines compile in other steps and are left as they are; an unknown setting would be
 * complained of on stderr.
 */
const MEASURED_ENGINE = /^11\./;

/**
 * Bytes of bytecode that a function runs before V8 asks whether to optimise it; its own value is 67584. A review runs for seconds, and much that was
 * optimised earlier ran hardly longer: of 9.1 s of CPU on the demo, optimising in threads of the engine's own took 1.9.
 */
const BYTES_BEFORE_OPTIMISING = 600_000;

/** Tells the engine that the program is a short one. What is reckoned does not depend on it. */
export function tuneEngine(engine = process.versions.v8): boolean {
  if (!MEASURED_ENGINE.test(engine)) return false;
  setFlagsFromString(`--interrupt-budget=${BYTES_BEFORE_OPTIMISING}`);
  return true;
}

/** Engines of Node 20, 22 and 24 (the last two from memory): those that know how far a heap may grow. */
const BOUNDED_ENGINES = /^1[123]\./;

/**
 * How far the heap of each thread may grow over what was in use when it was last cleared up, %. The engine by itself lets a large one grow to four times as much. The part of a fleet
 * with 1.1 million records takes 9.7 s of CPU and 0.68 GB to join as the engine will, 10.9 s and 0.64 GB with 100 %, 15 s and 0.64 GB with 25 %: units come and go, and little is held. Afterwards
 * much is held, in one heap.
 */
const MOST_GROWTH = { hospital: 40, joining: 100, fleet: 25 };

/** Tells the engine to keep the heaps of all threads small, since much is held. What is reckoned does not depend on it. */
export function boundHeaps(of: keyof typeof MOST_GROWTH = 'hospital', engine = process.versions.v8): boolean {
  if (!BOUNDED_ENGINES.test(engine)) return false;
  setFlagsFromString(`--heap-growing-percent=${MOST_GROWTH[of]}`);
  return true;
}
