/**
 * Pressure of saturated steam, kPa absolute, at a temperature in degrees Celsius.
 *
 * Wagner and Pruss 1993 (J. Phys. Chem. Ref. Data 22:783), the saturation-pressure equation of the IAPWS supplementary release of 1992: another
 * equation than the IAPWS-IF97 of the pipeline, so that demo data and pipeline don't share a mistake.
 */
export function saturationPressure(celsius: number): number {
  const critical = 647.096;
  const kelvin = celsius + 273.15;
  const tau = 1 - kelvin / critical;
  const sum =
    -7.85951783 * tau +
    1.84408259 * tau ** 1.5 -
    11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3.5 -
    15.9618719 * tau ** 4 +
    1.80122502 * tau ** 7.5;
  return 22_064 * Math.exp((critical / kelvin) * sum);
}
