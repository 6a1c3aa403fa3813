import type { SteamOutcome } from './outcome.ts';

const METHOD = 'IAPWS-IF97 region 4';

/** Coefficients n1 to n10 of the saturation equation: IAPWS R7-97(2012), Table 34. */
const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

const LOWEST_KELVIN = 273.15;
const CRITICAL_KELVIN = 647.096;
const LOWEST_MEGAPASCALS = 0.000611213;
const CRITICAL_MEGAPASCALS = 22.064;
const KELVIN_AT_ZERO_CELSIUS = 273.15;

/**
 * Pressure at which water and steam are in balance at a temperature.
 *
 * Pure water vapour is assumed: air or other gas in the chamber adds its own pressure. Valid from 273.15 K to
 * the critical 647.096 K; outside (and for NaN) the outcome states so. Within 0.025 % of the scientific
 * standard over that range.
 *
 * @param kelvin temperature, K (ITS-90)
 * @returns absolute pressure, MPa
 *
 * Source: IAPWS R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997, section 8.1, equation
 * 30.
 *
 * @example
 * saturationPressure(500); // megapascals 2.63889776
 */
export function saturationPressure(kelvin: number): SteamOutcome<{ megapascals: number }> {
  if (!(kelvin >= LOWEST_KELVIN && kelvin <= CRITICAL_KELVIN)) {
    return outside(`Temperature must be ${LOWEST_KELVIN} to ${CRITICAL_KELVIN} K, found ${kelvin} K.`);
  }
  const theta = kelvin + n9 / (kelvin - n10);
  const a = theta * theta + n1 * theta + n2;
  const b = n3 * theta * theta + n4 * theta + n5;
  const c = n6 * theta * theta + n7 * theta + n8;
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  return { computable: true, method: METHOD, megapascals: root ** 4 };
}

/**
 * Temperature at which water and steam are in balance at a pressure: the exact inverse of
 * `saturationPressure`.
 *
 * Valid from 611.213 Pa to the critical 22.064 MPa; outside (and for NaN) the outcome states so.
 *
 * @param megapascals absolute pressure, MPa; a gauge reading must be converted first
 * @returns temperature, K
 *
 * Source: IAPWS R7-97(2012), section 8.2, equation 31.
 *
 * @example
 * saturationTemperature(1); // kelvin 453.035632
 */
export function saturationTemperature(megapascals: number): SteamOutcome<{ kelvin: number }> {
  if (!(megapascals >= LOWEST_MEGAPASCALS && megapascals <= CRITICAL_MEGAPASCALS)) {
    return outside(
      `Absolute pressure must be ${LOWEST_MEGAPASCALS} to ${CRITICAL_MEGAPASCALS} MPa, found ${megapascals} MPa.`,
    );
  }
  const beta = megapascals ** 0.25;
  const e = beta * beta + n3 * beta + n6;
  const f = n1 * beta * beta + n4 * beta + n7;
  const g = n2 * beta * beta + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = n10 + d;
  const kelvin = (sum - Math.sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2;
  return { computable: true, method: METHOD, kelvin };
}

/**
 * `saturationPressure` in the measures of a cycle log: Celsius in, kPa absolute out. Valid from 0 to 373.946
 * C.
 */
export function saturationKilopascals(celsius: number): SteamOutcome<{ kilopascals: number }> {
  const pressure = saturationPressure(celsius + KELVIN_AT_ZERO_CELSIUS);
  if (!pressure.computable) return pressure;
  return { computable: true, method: METHOD, kilopascals: pressure.megapascals * 1000 };
}

/**
 * `saturationTemperature` in the measures of a cycle log: kPa absolute in, Celsius out. Valid from 0.611213
 * to 22 064 kPa.
 */
export function saturationCelsius(kilopascals: number): SteamOutcome<{ celsius: number }> {
  const temperature = saturationTemperature(kilopascals / 1000);
  if (!temperature.computable) return temperature;
  return { computable: true, method: METHOD, celsius: temperature.kelvin - KELVIN_AT_ZERO_CELSIUS };
}

function outside(reason: string): SteamOutcome<never> {
  return { computable: false, method: METHOD, reason };
}
