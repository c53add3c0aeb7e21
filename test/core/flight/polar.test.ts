import { DISC_POLARS, STALL_RAD } from "../../../src/core/constants";
import { dragAt, liftAt, polarFor } from "../../../src/core/flight/polar";
import { DISC_TYPES } from "../../../src/core/types";
import { toMetres, toRadians } from "../../../src/core/units";

describe("a polar", () => {
  // Worked by hand from the fairway coefficients at 10°: CL = .094 + 2.7·.174533,
  // CD = .0446 + 2.19·(.174533 + .031416)².
  test("gives lift and drag of an angle of attack", () => {
    const { fairway } = DISC_POLARS;
    expect(liftAt(fairway, toRadians(10))).toBeCloseTo(0.565239, 6);
    expect(dragAt(fairway, toRadians(10))).toBeCloseTo(0.137489, 6);
  });

  test.each(DISC_TYPES)("of a %s has no jump at stall, on either side", (type) => {
    const polar = polarFor(type, 0);
    for (const stall of [STALL_RAD, -STALL_RAD]) {
      const beyond = stall * (1 + 1e-9);
      expect(liftAt(polar, beyond)).toBeCloseTo(liftAt(polar, stall), 6);
      expect(dragAt(polar, beyond)).toBeCloseTo(dragAt(polar, stall), 6);
    }
  });

  test.each(DISC_TYPES)("of a %s met face on is a flat plate's", (type) => {
    const polar = polarFor(type, 0);
    for (const faceOn of [Math.PI / 2, -Math.PI / 2]) {
      expect(liftAt(polar, faceOn)).toBeCloseTo(0, 12);
      expect(dragAt(polar, faceOn)).toBeCloseTo(1.1, 12);
    }
  });
});

describe("the polar of a disc of no stated type", () => {
  test.each([
    [120, "putter"],
    [200, "putter"],
    [250, "midrange"],
    [300, "fairway"],
    [350, "distance"],
    [600, "distance"],
  ] as const)("at %d ft is that of a %s", (distanceFt, type) => {
    const blend = polarFor(null, toMetres(distanceFt, "ft"));
    for (const [name, value] of Object.entries(DISC_POLARS[type])) {
      expect(blend[name as keyof typeof blend]).toBeCloseTo(value, 12);
    }
  });

  test("is half of either type half-way", () => {
    const { midrange, fairway } = DISC_POLARS;
    const blend = polarFor(null, toMetres(275, "ft"));
    expect(blend.lift).toBeCloseTo((midrange.lift + fairway.lift) / 2, 12);
    expect(blend.diameterM).toBeCloseTo((midrange.diameterM + fairway.diameterM) / 2, 12);
  });

  test("gives way to a stated type", () =>
    expect(polarFor("putter", 200)).toBe(DISC_POLARS.putter));
});
