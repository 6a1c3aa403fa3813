import type { SteamOutcome } from './outcome.ts';

/** Standard atmosphere at sea level, kPa (ISO 2533:1975). */
export const STANDARD_ATMOSPHERE_KPA = 101.325;

/**
 * Barometric pressure of the standard atmosphere at an elevation, for a site without a barometer.
 *
 * Weather moves the true value by roughly 3 kPa either way (common knowledge, no source): about 0.3 K of
 * saturation temperature at 134 C.
 *
 * @param metres geopotential height above sea level, m; valid from -500 to 11 000
 * @returns kPa absolute
 *
 * Source: ISO 2533:1975, Standard Atmosphere, layer with gradient -6.5 K/km from 288.15 K and 101.325 kPa.
 *
 * @example
 * standardBarometricPressure(1000); // kilopascals 89.875
 */
export function standardBarometricPressure(metres: number): SteamOutcome<{ kilopascals: number }> {
  const method = 'ISO 2533 standard atmosphere';
  if (!(metres >= -500 && metres <= 11_000)) {
    return { computable: false, method, reason: `Elevation must be -500 to 11 000 m, found ${metres} m.` };
  }
  // g / (R L) with g 9.80665 m/s2, R 287.05287 J/(kg K), L 0.0065 K/m.
  const exponent = 9.80665 / (287.05287 * 0.0065);
  return {
    computable: true,
    method,
    kilopascals: STANDARD_ATMOSPHERE_KPA * (1 - (0.0065 * metres) / 288.15) ** exponent,
  };
}

/**
 * Absolute pressure from a gauge reading (vacuum negative) and the barometric pressure at the site.
 *
 * An absolute pressure under 0 is impossible: the outcome then states that the reading or the barometer is
 * wrong. Absolute readings need no correction for altitude.
 *
 * @param gaugeKilopascals reading relative to the air outside, kPa
 * @param barometricKilopascals air pressure at the site, kPa absolute; no default, since sea level is seldom
 * where the site is
 */
export function gaugeToAbsolute(
  gaugeKilopascals: number,
  barometricKilopascals: number,
): SteamOutcome<{ kilopascals: number }> {
  const method = 'gauge plus barometric pressure';
  const kilopascals = gaugeKilopascals + barometricKilopascals;
  if (!Number.isFinite(kilopascals)) {
    return { computable: false, method, reason: 'Gauge and barometric pressure must be numbers.' };
  }
  // 50 kPa is the air at 5500 m, 110 kPa more than the highest barometer on record: outside, the figure is no
  // barometric pressure in kPa.
  if (barometricKilopascals < 50 || barometricKilopascals > 110) {
    return {
      computable: false,
      method,
      reason: `Barometric pressure must be 50 to 110 kPa, found ${barometricKilopascals} kPa.`,
    };
  }
  if (kilopascals < 0) {
    return {
      computable: false,
      method,
      reason: `Absolute pressure would be ${kilopascals.toFixed(2)} kPa, under 0: the reading or the barometric pressure is wrong.`,
    };
  }
  return { computable: true, method, kilopascals };
}
