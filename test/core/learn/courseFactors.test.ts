/** The learning itself, against an independent computation of the same posterior. */
import jstat from "jstat";
import { courseFactors } from "../../../src/core/learn/courseFactors";
import {
  addThrow,
  UNKNOWNS,
  type CourseThrow,
  type Unknown,
} from "../../../src/core/learn/courseThrow";

import golden from "../../golden/learn.json";

/** Spread of ln carry that softness adds, as the reference has it. */
const SOFTNESS = 0.15;

interface GoldenRow {
  readonly D: number;
  readonly R: number;
  readonly W: number;
  readonly tail: boolean;
  readonly p: number;
  readonly C: number;
  readonly s: number;
  readonly sb: number;
  readonly f?: number;
  readonly o?: number;
  readonly in?: boolean;
}

const throwOf = (row: GoldenRow): CourseThrow => ({
  distanceM: row.D,
  slopeM: row.R,
  windM: row.W,
  tailwind: row.tail,
  lnCarry: Math.log(row.p * row.C),
  spread: Math.hypot(row.s, SOFTNESS * (1 - row.p)),
  sideSpread: row.sb,
  finishM: row.f ?? null,
  offlineM: row.o ?? null,
  offlineRad: row.o === undefined ? null : Math.atan2(row.o, row.D),
  inCircle: row.in ?? null,
  circleM: 10,
});

const throws = (golden.rows as GoldenRow[]).map(throwOf);
const NAMES: Record<Unknown, keyof typeof golden.posterior> = {
  lnCourseCarry: "ln(1+bias)",
  uphill: "uphill",
  headwind: "headwind",
  tailwind: "tailwind",
  lnCourseSpread: "ln courseSpread",
  lnCourseSide: "ln courseSide",
};

describe.each([
  ["24 rows", throws, golden.posterior],
  ["the first 3", throws.slice(0, 3), golden.posteriorFirst3],
] as const)("%s", (_, rows, expected) => {
  const found = courseFactors(rows);
  test.each(UNKNOWNS)("%s", (name) => {
    const { mode, sd } = expected[NAMES[name]];
    expect(Math.abs(found[name].mode - mode)).toBeLessThan(golden.tolerance.mode);
    expect(Math.abs(found[name].sd - sd)).toBeLessThan(golden.tolerance.sd);
  });
});

test("the chances behind in and out", () => {
  for (const chance of golden.chance) {
    // Through minus the log likelihood of a throw that is in, with factors that change nothing.
    const thrown: CourseThrow = {
      ...throwOf({ D: chance.D, R: 0, W: 0, tail: false, p: 1, C: 1, s: 0, sb: chance.sb }),
      lnCarry: Math.log(chance.carry * chance.power),
      slopeM: chance.playsLike - chance.D,
      spread: Math.hypot(chance.s, SOFTNESS * (1 - chance.power)),
      inCircle: true,
    };
    const unknowns = [0, 1, 1, 0, Math.log(chance.tau), Math.log(chance.tauSide)];
    const share = Math.exp(-addThrow(thrown, unknowns, [0, 0, 0, 0, 0, 0]));
    expect(Math.abs(share - chance.value)).toBeLessThan(golden.toleranceChance);
  }
});

describe("slopes", () => {
  const kinds: [string, Partial<CourseThrow>][] = [
    ["a finish", { finishM: -4 }],
    ["a finish and an offline", { finishM: 7, offlineM: 3, offlineRad: 0.05 }],
    ["in", { inCircle: true }],
    ["out", { inCircle: false }],
    ["in at an offline", { inCircle: true, offlineM: 6, offlineRad: 0.09 }],
    ["out at an offline", { inCircle: false, offlineM: -6, offlineRad: -0.09 }],
    ["out by the side alone", { inCircle: false, offlineM: 12, offlineRad: 0.16 }],
  ];
  test.each(kinds)("%s", (_, change) => {
    const base = throwOf({ D: 80, R: 6, W: 5, tail: false, p: 0.9, C: 95, s: 0.06, sb: 0.05 });
    for (const tailwind of [false, true]) {
      const thrown: CourseThrow = { ...base, ...change, tailwind };
      const at = [0.02, 1.1, 0.8, 0.3, -2.5, -2.9];
      const slopes = [0, 0, 0, 0, 0, 0];
      addThrow(thrown, at, slopes);
      at.forEach((_, index) => {
        const moved = (by: number): number =>
          addThrow(
            thrown,
            at.map((value, other) => (other === index ? value + by : value)),
            [0, 0, 0, 0, 0, 0],
          );
        expect(slopes[index]!).toBeCloseTo((moved(1e-4) - moved(-1e-4)) / 2e-4, 4);
      });
    }
  });
});

test("an offline narrows what the circle asks along the line: 6 of 10 m leave a chord of 16", () => {
  // Closed form: ± 8 m of 80 m at a spread of 0.1 is t₈ from ln 0.9 to ln 1.1 over 0.1.
  const thrown: CourseThrow = {
    ...throwOf({ D: 80, R: 0, W: 0, tail: false, p: 1, C: 80, s: 0.06, sb: 0.05 }),
    offlineM: 6,
    inCircle: true,
  };
  const share = Math.exp(-addThrow(thrown, [0, 1, 1, 0, Math.log(0.08), -3], [0, 0, 0, 0, 0, 0]));
  const { cdf } = jstat.studentt;
  expect(share).toBeCloseTo(cdf(0.953102, 8) - cdf(-1.053605, 8), 4);
});

test("without throws the prior stays", () => {
  const found = courseFactors([]);
  expect(found.uphill.mode).toBeCloseTo(1, 12);
  expect(found.tailwind.sd).toBeCloseTo(0.7, 6);
});

test("one wild finish among many does not carry the factors away", () => {
  const calm = Array.from({ length: 30 }, (_, i) => ({
    ...throws[0]!,
    slopeM: 0,
    windM: 0,
    lnCarry: Math.log(63),
    finishM: ((i % 5) - 2) * 2,
    offlineM: null,
    offlineRad: null,
  }));
  const before = courseFactors(calm).lnCourseCarry.mode;
  const after = courseFactors([...calm, { ...calm[0]!, finishM: -45 }]).lnCourseCarry.mode;
  expect(Math.abs(after - before)).toBeLessThan(0.004);
});
