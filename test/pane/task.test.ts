import {
  EMPTY_HOLE,
  fillFrom,
  type HoleForm,
  isBlankForm,
  taskOf,
} from "../../src/pane/hole/model";
import { DEFAULT_SETTINGS } from "../../src/core/log/readSettings";
import { MPS_PER_MPH, METRES_PER_FOOT } from "../../src/core/units";
import { starterBook } from "./starterBook";

const task = (part: Partial<HoleForm>, settings = DEFAULT_SETTINGS) =>
  taskOf({ ...EMPTY_HOLE, ...part }, settings);

test("a level distance, its rise and a felt headwind", () => {
  const read = task({ distance: "300", rise: "-12", headwind: "5", longTrouble: "30" });
  expect(read.distanceM).toBeCloseTo(300 * METRES_PER_FOOT, 9);
  expect(read.riseM).toBeCloseTo(-12 * METRES_PER_FOOT, 9);
  expect(read.headwindMps).toBeCloseTo(5 * MPS_PER_MPH, 9);
  expect(read.longTroubleM).toBeCloseTo(30 * METRES_PER_FOOT, 9);
  expect([read.shortTroubleM, read.crosswindMps]).toEqual([null, 0]);
});

// Right triangle with an angle of 30°: half the range up, √3/2 of it out.
test("a range along the line of sight", () => {
  const metres = { ...DEFAULT_SETTINGS, distanceUnit: "m" } as const;
  const read = task({ sight: "line", range: "100", angle: "30" }, metres);
  expect(read.distanceM).toBeCloseTo(50 * Math.sqrt(3), 9);
  expect(read.riseM).toBeCloseTo(50, 9);
});

// Straight into the wind, with it, and square to it; 0.85 of the wind at 10 m is felt at flight height.
test.each([
  ["W", "270", 1, 0],
  ["E", "W", -1, 0],
  ["N", "E", 0, 1],
  ["S", "E", 0, -1],
])("a forecast wind from %s, throwing to %s", (windFrom, bearing, head, cross) => {
  const read = task({ distance: "300", windBy: "forecast", speed: "10", windFrom, bearing });
  expect(read.headwindMps).toBeCloseTo(head * 8.5 * MPS_PER_MPH, 9);
  expect(read.crosswindMps).toBeCloseTo(cross * 8.5 * MPS_PER_MPH, 9);
});

// WMO: force 4 is 5.5 to 7.9 m/s.
test("a wind by eye, from ahead and from the left", () => {
  const ahead = task({ distance: "300", windBy: "eye", force: "4", side: "0" });
  expect(ahead.headwindMps / 0.85).toBeGreaterThan(5.5);
  expect(ahead.headwindMps / 0.85).toBeLessThan(8);
  const left = task({ distance: "300", windBy: "eye", force: "4", side: "270" });
  expect(left.crosswindMps).toBeCloseTo(ahead.headwindMps, 9);
  expect(left.headwindMps).toBeCloseTo(0, 9);
});

test.each([
  [{ distance: "0" }, "Distance must be above 0."],
  [{ distance: "far" }, "Distance: type a number, such as 12.5."],
  [{ distance: "300", rise: "x" }, "Rise: type a number, such as 12.5."],
  [{ sight: "line", range: "-3" }, "Range must be above 0."],
  [{ distance: "300", windBy: "forecast", speed: "9", windFrom: "up" }, "up"],
] as const)("%p is refused in a sentence", (part, words) => {
  expect(() => task(part)).toThrow(words);
});

test("nothing typed is blank, whichever way the distance is measured", () => {
  expect(isBlankForm(EMPTY_HOLE)).toBe(true);
  expect(isBlankForm({ ...EMPTY_HOLE, distance: "3", sight: "line" })).toBe(true);
  expect(isBlankForm({ ...EMPTY_HOLE, range: "3", sight: "line" })).toBe(false);
});

test("a hole of the course fills the boxes, and reads back as itself", async () => {
  const { holes, settings } = await starterBook();
  for (const hole of holes) {
    const read = taskOf(fillFrom(hole, settings), settings);
    expect(read.distanceM).toBeCloseTo(hole.distanceM, 6);
    expect(read.riseM).toBeCloseTo(hole.riseM, 6);
    expect(read.headwindMps).toBeCloseTo(hole.headwindMps, 6);
    expect(read.longTroubleM ?? -1).toBeCloseTo(hole.longTroubleM ?? -1, 6);
    expect(read.shortTroubleM ?? -1).toBeCloseTo(hole.shortTroubleM ?? -1, 6);
    expect(read.line).toBe(hole.line);
  }
});
