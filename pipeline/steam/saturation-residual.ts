import type { SteamOutcome } from './outcome.ts';
import { saturationCelsius } from './saturation.ts';

/**
 * Measured temperature minus the saturation temperature at the measured pressure.
 *
 * Below 0: air or other gas in the chamber, or a cold or wet sensor. Above 0: superheat, or an error of
 * either sensor. The same offset in all cycles: calibration. At 134 C an error of 1 kPa in the pressure moves
 * the residual by 0.11 K, at 121 C by 0.16 K.
 *
 * @param celsius measured chamber temperature, C
 * @param kilopascals measured chamber pressure at the same moment, kPa absolute
 * @returns difference in K, with the saturation temperature it was taken from; a stated outcome where the
 * pressure is outside 0.611213 to 22 064 kPa or the temperature isn't a finite number
 *
 * Source of the saturation temperature: IAPWS R7-97(2012), section 8.2.
 *
 * @example
 * saturationResidual(134.0, 310); // saturationCelsius 134.65, kelvin -0.65
 */
export function saturationResidual(
  celsius: number,
  kilopascals: number,
): SteamOutcome<{ kelvin: number; saturationCelsius: number }> {
  const saturation = saturationCelsius(kilopascals);
  if (!saturation.computable) return saturation;
  if (!Number.isFinite(celsius)) {
    return {
      computable: false,
      method: saturation.method,
      reason: `Temperature must be a number, found ${celsius}.`,
    };
  }
  return {
    computable: true,
    method: saturation.method,
    kelvin: celsius - saturation.celsius,
    saturationCelsius: saturation.celsius,
  };
}
