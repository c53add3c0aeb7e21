import fc from "fast-check";
import { RELEASE_HEIGHT_M } from "../../../src/core/constants";
import {
  ALONG_M,
  dragAt,
  HEIGHT_M,
  liftAt,
  newState,
  NOSE_MPS,
  polarFor,
  TIME_S,
  TOP_MPS,
} from "../../../src/core/flight/polar";
import {
  flyDown,
  release,
  setVelocity,
  step,
  TOLERANCE_MPS,
} from "../../../src/core/flight/integrator";
import { DISC_TYPES } from "../../../src/core/types";
import { toRadians } from "../../../src/core/units";
import golden from "../../golden/vacuum.json";
import { craftFor, landingOf, plain, throwIt, type Thrown } from "./flights";
import { odexPosition } from "./odexFlight";

/** Throws that players make, in wind that they play in. */
const ordinary: fc.Arbitrary<Thrown> = fc.record({
  type: fc.constantFrom(...DISC_TYPES),
  speedMps: fc.double({ min: 10, max: 35, noNaN: true }),
  elevationDeg: fc.double({ min: -8, max: 16, noNaN: true }),
  headwindMps: fc.double({ min: -8, max: 8, noNaN: true }),
  crosswindMps: fc.double({ min: -8, max: 8, noNaN: true }),
  densityKgM3: fc.double({ min: 0.8, max: 1.4, noNaN: true }),
  landingM: fc.double({ min: -10, max: 0, noNaN: true }),
});
const check = (property: fc.IProperty<[Thrown]>, numRuns = 60) =>
  fc.assert(property, { numRuns, seed: 20261125 });

describe("a flight without air", () => {
  test.each(golden.rows as [number, number, number, number, number][])(
    "is a parabola: %d m/s at %d°, released %d m up",
    (speedMps, elevationDeg, upM, rangeM, timeS) => {
      const landingM = RELEASE_HEIGHT_M - upM;
      const found = throwIt({ speedMps, elevationDeg, densityKgM3: 0, landingM });
      expect(Math.abs(found.alongM - rangeM)).toBeLessThan(golden.tolerance);
      expect(Math.abs(found.timeS - timeS)).toBeLessThan(golden.tolerance);
    },
  );
});

describe("a flight in air", () => {
  test("is where a general-purpose solver of differential equations puts it", () =>
    check(
      fc.property(ordinary, (thrown) => {
        const found = throwIt(thrown);
        const elevationRad = toRadians(thrown.elevationDeg);
        const [alongM, heightM, sideM] = odexPosition({ ...thrown, elevationRad }, found.timeS);
        expect(Math.abs(found.alongM - alongM)).toBeLessThan(0.002);
        expect(Math.abs(found.heightM - heightM)).toBeLessThan(0.002);
        expect(Math.abs(found.sideM - sideM)).toBeLessThan(0.002);
        expect(found.heightM).toBeCloseTo(thrown.landingM, 9);
      }),
      40,
    ));

  test("moves by less than 1 mm when its steps are halved", () =>
    check(
      fc.property(ordinary, (thrown) => {
        // The rule's error goes with the fourth power of the step.
        const finer = throwIt(thrown, TOLERANCE_MPS / 2 ** 4);
        expect(Math.abs(throwIt(thrown).alongM - finer.alongM)).toBeLessThan(0.001);
      }),
    ));

  test("is the same for twice the mass in air twice as dense", () => {
    const found = throwIt({});
    const elevationRad = toRadians(plain.elevationDeg);
    const heavy = { ...plain, elevationRad, densityKgM3: 2 * plain.densityKgM3, massKg: 0.35 };
    const [alongM, heightM] = odexPosition(heavy, found.timeS);
    expect(found.alongM).toBeCloseTo(alongM, 3);
    expect(found.heightM).toBeCloseTo(heightM, 3);
  });

  test("keeps Froude's scaling: lengths by n, speeds and times by the root of n", () => {
    const craft = craftFor({ ...plain, headwindMps: 3, crosswindMps: 2 });
    const small = landingOf(craft, plain.speedMps, RELEASE_HEIGHT_M - 1);
    for (const scale of [0.25, 3, 10]) {
      const root = Math.sqrt(scale);
      const scaled = {
        ...craft,
        grip: craft.grip / scale,
        headwindMps: craft.headwindMps * root,
        crosswindMps: craft.crosswindMps * root,
      };
      const large = landingOf(scaled, plain.speedMps * root, RELEASE_HEIGHT_M - scale);
      expect(large.alongM / scale).toBeCloseTo(small.alongM, 3);
      expect(large.sideM / scale).toBeCloseTo(small.sideM, 3);
      expect(large.timeS / root).toBeCloseTo(small.timeS, 3);
    }
  });

  test("is mirrored by a crosswind from the other side", () =>
    check(
      fc.property(ordinary, (thrown) => {
        const here = throwIt(thrown);
        const there = throwIt({ ...thrown, crosswindMps: -thrown.crosswindMps });
        expect(there).toEqual({ ...here, sideM: expect.closeTo(-here.sideM, 12) });
      }),
    ));

  test("in a uniform wind is a calm flight with the wind taken from its release, and carried on by it", () =>
    check(
      fc.property(ordinary, (thrown) => {
        const { headwindMps, crosswindMps, landingM, speedMps } = thrown;
        const inWind = throwIt(thrown);
        const craft = craftFor({ ...thrown, headwindMps: 0, crosswindMps: 0 });
        const state = newState();
        release(state, craft, speedMps);
        const { cos, sin } = craft;
        const nose = speedMps + headwindMps * cos;
        setVelocity(state, craft, nose, -crosswindMps, -headwindMps * sin);
        flyDown(state, craft, landingM);
        expect(inWind.timeS).toBeCloseTo(state[TIME_S]!, 9);
        expect(inWind.alongM).toBeCloseTo(state[ALONG_M]! - headwindMps * inWind.timeS, 9);
      }),
    ));

  test.each(DISC_TYPES)("of a %s ends in a steady glide that sinks at atan(CD/CL)", (type) => {
    const craft = craftFor({ ...plain, type, elevationDeg: 4 });
    const state = newState();
    release(state, craft, 15);
    for (let count = 0; count < 4000; count++) step(state, state, craft, 0.02);
    const attackRad = -Math.atan2(state[TOP_MPS]!, state[NOSE_MPS]!);
    const descentRad = attackRad - toRadians(4);
    const polar = polarFor(type, 0);
    expect(descentRad).toBeCloseTo(
      Math.atan(dragAt(polar, attackRad) / liftAt(polar, attackRad)),
      9,
    );
  });

  test("never comes down where it does not get that high", () =>
    expect(throwIt({ landingM: 30 }).down).toBe(false));

  test("ends for a release that is no number", () => {
    const state = newState();
    release(state, craftFor(plain), NaN);
    flyDown(state, craftFor(plain), 0);
    expect(state[HEIGHT_M]).toBeNaN();
  });
});
