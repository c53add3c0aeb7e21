import { STANDARD_DENSITY } from "../../../src/core/constants";
import { airDensity, isStandard, moistDensity } from "../../../src/core/flight/air";
import golden from "../../golden/air.json";

const dryAt = (altitudeM: number) => airDensity({ altitudeM, temperatureC: null, humidity: null });

describe("airDensity", () => {
  test.each(golden.standard.rows as [number, number][])(
    "is that of the standard atmosphere at %d m",
    (altitudeM, density) =>
      expect(Math.abs(dryAt(altitudeM) - density)).toBeLessThan(golden.standard.tolerance),
  );

  test("is the standard density at sea level", () => {
    expect(isStandard(dryAt(0))).toBe(true);
    expect(isStandard(dryAt(10))).toBe(false);
    expect(dryAt(0)).toBeCloseTo(STANDARD_DENSITY, 6);
  });

  test("goes with one over the absolute temperature", () => {
    const at = (temperatureC: number) =>
      airDensity({ altitudeM: 800, temperatureC, humidity: null });
    expect(at(-20) / at(45)).toBeCloseTo((45 + 273.15) / (-20 + 273.15), 12);
  });

  test("falls with humidity, and more in warm air", () => {
    const loss = (temperatureC: number) =>
      airDensity({ altitudeM: 0, temperatureC, humidity: 0 }) -
      airDensity({ altitudeM: 0, temperatureC, humidity: 1 });
    expect(loss(0)).toBeGreaterThan(0);
    expect(loss(35)).toBeGreaterThan(loss(0));
  });

  // The published densities are for measured pressures, so the mixture itself is compared, with
  // the vapour pressure by another formula: Buck 1981, J. Appl. Meteor. 20:1527.
  test.each(golden.moist.rows as [number, number, number, number][])(
    "of moist air at %d °C, %d Pa, humidity %d",
    (celsius, pressurePa, humidity, density) => {
      const vapourPa = humidity * 611.21 * Math.exp((17.502 * celsius) / (240.97 + celsius));
      const found = moistDensity(pressurePa, celsius + 273.15, vapourPa);
      expect(Math.abs(found / density - 1)).toBeLessThan(golden.moist.tolerance);
    },
  );

  // A pressure that has a standard altitude: 97,325.3 Pa is 338.4 m up by the same standard.
  test("takes humidity into account as published", () => {
    const [celsius, , humidity, density] = golden.moist.rows[2] as [number, number, number, number];
    const found = airDensity({ altitudeM: 338.4, temperatureC: celsius, humidity });
    expect(Math.abs(found / density - 1)).toBeLessThan(golden.moist.tolerance);
  });

  // Moisture takes up to 2 % off here: it cannot be ignored within the tolerance.
  test.each(golden.hotMoist.rows as [number, number, number, number, number][])(
    "of hot moist air at %d °C, %d m up (%d Pa), humidity %d",
    (temperatureC, altitudeM, _pressurePa, humidity, density) => {
      const found = airDensity({ altitudeM, temperatureC, humidity });
      expect(Math.abs(found / density - 1)).toBeLessThan(golden.hotMoist.tolerance);
    },
  );

  test("is NaN for NaN", () => expect(dryAt(NaN)).toBeNaN());
});
