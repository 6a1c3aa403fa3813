import { expect, test } from 'vitest';
import { simulateFleet } from '../../data-samples/generator/fleet.ts';
import { saturationPressure } from '../../data-samples/generator/saturation.ts';

// IAPWS R7-97(2012), table 35: saturation pressures by the region 4 equation, in MPa, at 300, 500 and 600 K. The generator's equation is
// another one of IAPWS (1992); the two are told to agree within the uncertainty of the data, which is 0.02 to 0.05 %.
test.each([
  [300, 0.353658941e-2],
  [500, 2.63889776],
  [600, 12.3443146],
])('saturation pressure at %s K', (kelvin, megapascal) => {
  expect(saturationPressure(kelvin - 273.15) / 1000 / megapascal).toBeCloseTo(1, 3);
});

test('pressures in exposure fit the temperatures within 0.2 K', () => {
  for (const { cycles } of simulateFleet().values()) {
    for (const { temperatureMin, temperatureMax, pressure, outcome } of cycles) {
      if (outcome !== 'completed' || temperatureMin === undefined) continue;
      const middle = (temperatureMin + temperatureMax!) / 2;
      expect(saturationPressure(middle - 0.2)).toBeLessThan(pressure!);
      expect(saturationPressure(middle + 0.2)).toBeGreaterThan(pressure!);
    }
  }
});
