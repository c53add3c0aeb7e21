import { FULL_EFFECT } from "../../../src/core/flight/air";
import { flightPath, windDriftM } from "../../../src/core/flight/path";

const air = { densityKgM3: 1.225, ...FULL_EFFECT };
const shot = { distanceM: 100, riseM: 4, headwindMps: 3 };

describe("flightPath", () => {
  const path = flightPath(shot, air, null);

  test("begins in the hand", () =>
    expect(path[0]).toEqual({ alongM: 0, heightM: 1.3, sideM: 0, timeS: 0 }));

  test("ends at the target", () => {
    const { alongM, heightM, sideM } = path.at(-1)!;
    expect(alongM).toBeCloseTo(100, 3);
    expect(heightM).toBeCloseTo(4, 6);
    expect(sideM).toBe(0);
  });

  test("is even in time, and comes to its end without a jump", () => {
    const slice = path.at(-1)!.timeS / (path.length - 1);
    path.forEach(({ timeS }, index) => expect(timeS).toBeCloseTo(index * slice, 9));
    const [before, last] = [path.at(-2)!, path.at(-1)!];
    const [earlier] = [path.at(-3)!];
    expect(last.alongM - before.alongM).toBeCloseTo(before.alongM - earlier.alongM, 1);
  });

  test("clears the ground on its way", () =>
    path.slice(1, -1).forEach(({ alongM, heightM }) => {
      expect(heightM).toBeGreaterThan((4 * alongM) / 100);
    }));

  test("is pushed to the right by a wind from the left", () => {
    const pushed = flightPath({ ...shot, crosswindMps: 4 }, air, null);
    const sides = pushed.map(({ sideM }) => sideM);
    expect(sides).toEqual([...sides].sort((a, b) => a - b));
    expect(sides.at(-1)).toBeGreaterThan(1);
  });

  test.each([NaN, Infinity])("calls a crosswind of %d unusable", (crosswindMps) =>
    expect(() => flightPath({ ...shot, crosswindMps }, air, null)).toThrow(
      expect.objectContaining({ code: "unusable" }),
    ),
  );

  test("has no answer out of reach", () =>
    expect(() => flightPath({ ...shot, distanceM: 900 }, air, null)).toThrow(
      expect.objectContaining({ code: "unavailable" }),
    ));
});

describe("windDriftM", () => {
  test("is nothing without wind, and mirrored by the wind from the other side", () => {
    expect(windDriftM(100, 0, air, null)).toBe(0);
    expect(windDriftM(100, -4, air, null)).toBeCloseTo(-windDriftM(100, 4, air, null), 9);
  });

  test("grows with wind, distance and density, and stays below the wind's own way", () => {
    const drift = windDriftM(90, 4, air, "fairway");
    const { timeS } = flightPath(
      { ...shot, distanceM: 90, riseM: 0, headwindMps: 0 },
      air,
      "fairway",
    ).at(-1)!;
    expect(drift).toBeGreaterThan(0);
    expect(drift).toBeLessThan(4 * timeS);
    expect(windDriftM(90, 5, air, "fairway")).toBeGreaterThan(drift);
    expect(windDriftM(110, 4, air, "fairway")).toBeGreaterThan(drift);
    expect(windDriftM(90, 4, { ...air, densityKgM3: 0.9 }, "fairway")).toBeLessThan(drift);
  });
});
