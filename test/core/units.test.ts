import * as units from "../../src/core/units";

// NIST SP 811 (2008), appendix B.8: foot 3.048 E-01 m, mile per hour 4.4704 E-01 m/s,
// kilometre per hour 2.777778 E-01 m/s; degree Fahrenheit (t − 32)/1.8.
describe("units at the borders", () => {
  test("one foot is 0.3048 m", () => expect(units.toMetres(1, "ft")).toBe(0.3048));
  test("one mile per hour is 0.44704 m/s", () => expect(units.toMps(1, "mph")).toBe(0.44704));
  test("one kilometre per hour is 0.2777778 m/s", () =>
    expect(units.toMps(1, "km/h")).toBeCloseTo(0.2777778, 7));
  test("212 °F is 100 °C", () => expect(units.toCelsius(212, "F")).toBeCloseTo(100, 12));
  test.each(["ft", "m"] as const)("%s goes there and back", (unit) =>
    expect(units.fromMetres(units.toMetres(123.4, unit), unit)).toBeCloseTo(123.4, 12),
  );
});
