import type { SteamOutcome } from './outcome.ts';

export interface LethalityInput {
  /** Times of the readings, minutes, strictly rising. */
  minutes: readonly number[];
  /** Temperatures at those times, C. */
  celsius: readonly number[];
  /** Default 121.1 C. */
  referenceCelsius?: number;
  /** Temperature difference that changes the rate tenfold; default 10 K. */
  zKelvin?: number;
  /** Readings below this count as rate 0; default none (every reading counts). */
  floorCelsius?: number;
}

export interface Lethality {
  /** Equivalent minutes at the reference temperature. */
  minutes: number;
  readings: number;
  /**
   * Longest time between neighbouring readings, minutes: the coarser, the less the trapezoid says where
   * temperature moves fast.
   */
  longestStepMinutes: number;
  settings: { referenceCelsius: number; zKelvin: number; floorCelsius: number | null; rule: 'trapezoid' };
}

/** Lethal rate at a temperature: minutes at the reference temperature that equal one minute at this one. */
export function lethalRate(celsius: number, referenceCelsius = 121.1, zKelvin = 10): number {
  return 10 ** ((celsius - referenceCelsius) / zKelvin);
}

/**
 * F0: the integral of the lethal rate 10^((T - 121.1)/10) over time, by the trapezoid rule on the rate.
 *
 * Holds in saturated steam at the point measured and nowhere else: a high F0 says nothing about a pack with
 * trapped air. Use the coldest probe. Not for air-removal or leak tests. It describes a recorded cycle and
 * releases no load.
 *
 * Conventions, all returned in `settings`: reference 121.1 C (121.0 or 121.11 would change the result by up
 * to 2.6 %), z = 10 K, trapezoid, no floor. Edges: fewer than two readings, a reading that isn't finite, or
 * times that don't rise are stated outcomes. A trapezoid over a fast rise overstates (the rate is convex in
 * temperature): see `longestStepMinutes`.
 *
 * @throws RangeError if the two series differ in length or z isn't above 0
 *
 * Source: definition as in the European Pharmacopoeia, general text 5.1.5 (from memory; there with 121 C);
 * reference 121.1 C is 250 F.
 *
 * @example
 * lethality({ minutes: [0, 3], celsius: [134, 134] }); // minutes 58.495
 */
export function lethality(input: LethalityInput): SteamOutcome<Lethality> {
  const { minutes, celsius, referenceCelsius = 121.1, zKelvin = 10, floorCelsius } = input;
  const method = 'F0 by the trapezoid rule';
  if (minutes.length !== celsius.length) {
    throw new RangeError(
      `lethality: minutes and celsius must have the same length, found ${minutes.length} and ${celsius.length}.`,
    );
  }
  if (!(zKelvin > 0)) throw new RangeError(`lethality: zKelvin must be above 0, found ${zKelvin}.`);
  const refuse = (reason: string): SteamOutcome<never> => ({ computable: false, method, reason });
  if (minutes.length < 2) return refuse(`At least 2 readings are needed, found ${minutes.length}.`);
  const rate = (t: number) =>
    floorCelsius !== undefined && t < floorCelsius ? 0 : lethalRate(t, referenceCelsius, zKelvin);

  let sum = 0;
  let longestStepMinutes = 0;
  for (const [i, now] of minutes.entries()) {
    const temperature = celsius[i]!;
    if (!Number.isFinite(now) || !Number.isFinite(temperature))
      return refuse(`Reading ${i} is not a number.`);
    if (i === 0) continue;
    const step = now - minutes[i - 1]!;
    if (step <= 0) return refuse(`Reading ${i} is not later than the one before it.`);
    longestStepMinutes = Math.max(longestStepMinutes, step);
    sum += (step * (rate(celsius[i - 1]!) + rate(temperature))) / 2;
  }
  return {
    computable: true,
    method,
    minutes: sum,
    readings: minutes.length,
    longestStepMinutes,
    settings: { referenceCelsius, zKelvin, floorCelsius: floorCelsius ?? null, rule: 'trapezoid' },
  };
}
