import { type Conditions, conditionsOf, FULL_EFFECT } from "../../../src/core/flight/air";
import { playsLikeBandM, playsLikeM, playsLikeSdM } from "../../../src/core/flight/playsLike";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { DISC_TYPES, type Shot } from "../../../src/core/types";

const usual = conditionsOf(DEFAULT_SETTINGS);
const still: Conditions = { densityKgM3: 1.225, ...FULL_EFFECT };
const thin: Conditions = { ...still, densityKgM3: 1.05 };
const shot = (distanceM: number, riseM: number, headwindMps: number): Shot => ({
  distanceM,
  riseM,
  headwindMps,
});

describe("playsLikeSdM", () => {
  const windy = shot(90, 4, 5);
  const full = (task: Shot, air: Conditions = still) => playsLikeM(task, air, "fairway") - 90;
  const slope = full(shot(90, 4, 0));

  test.each([
    ["uphill", { uphill: { value: 1, sd: 0.3 } }, 0.3 * slope],
    ["headwind", { headwind: { value: 1, sd: 0.5 } }, 0.5 * (full(windy) - slope)],
    ["tailwind", { tailwind: { value: 0, sd: 0.7 } }, 0],
  ])("is the doubt of the %s factor times what it is a factor of", (_, factor, expected) =>
    expect(playsLikeSdM(windy, { ...still, ...factor }, "fairway")).toBeCloseTo(expected, 6),
  );

  test("takes a tailwind's doubt though its effect is not counted", () => {
    const task = shot(90, 0, -5);
    const doubtful = { ...still, tailwind: { value: 0, sd: 0.7 } };
    expect(playsLikeM(task, doubtful, "fairway")).toBeCloseTo(90, 6);
    expect(playsLikeSdM(task, doubtful, "fairway")).toBeCloseTo(0.7 * Math.abs(full(task)), 5);
  });

  test("doubts all that altitude and temperature do, and adds in quadrature", () => {
    const inThin = full(shot(90, 4, 0), thin);
    const doubtful = { ...thin, uphill: { value: 1, sd: 0.3 } };
    expect(playsLikeSdM(shot(90, 4, 0), doubtful, "fairway")).toBeCloseTo(
      Math.hypot(0.3 * inThin, inThin - slope),
      5,
    );
  });

  test("spreads over the types where none is known, and over those that get there", () => {
    const task = shot(80, 5, 0);
    const answers = DISC_TYPES.map((type) => playsLikeM(task, still, type));
    const mean = answers.reduce((sum, answer) => sum + answer / 4, 0);
    const sd = Math.sqrt(answers.reduce((sum, answer) => sum + (answer - mean) ** 2 / 4, 0));
    expect(playsLikeSdM(task, still, null)).toBeCloseTo(sd, 9);
    expect(playsLikeSdM(task, still, 85)).toBeCloseTo(sd, 9);
    expect(playsLikeSdM(task, still, "midrange")).toBe(0);

    const far = shot(230, 10, 0);
    expect(() => playsLikeM(far, still, "putter")).toThrow(
      expect.objectContaining({ code: "unavailable" }),
    );
    expect(playsLikeSdM(far, still, null)).toBeLessThan(100);
  });
});

describe("playsLikeBandM", () => {
  test.each([
    [60, 4, 0],
    [90, -6, 3],
    [110, 0, -5],
  ])("has the likely answer in its middle: %d m, %d m up, %d m/s", (...task) => {
    const { lowM, likelyM, highM } = playsLikeBandM(shot(...task), usual);
    expect(likelyM).toBe(playsLikeM(shot(...task), usual, null));
    expect((lowM + highM) / 2).toBeCloseTo(likelyM, 9);
    // 1.2816, the upper tenth of the normal distribution: Abramowitz & Stegun, table 26.5.
    expect((highM - lowM) / 2 / playsLikeSdM(shot(...task), usual, null)).toBeCloseTo(1.2816, 4);
  });

  test("narrows as rounds teach", () => {
    const task = shot(90, 5, 4);
    const width = (conditions: Conditions): number => {
      const { lowM, highM } = playsLikeBandM(task, conditions, "midrange");
      return highM - lowM;
    };
    const learnt = {
      ...usual,
      uphill: { value: 0.9, sd: 0.1 },
      headwind: { value: 1.1, sd: 0.2 },
    };
    expect(width(learnt)).toBeLessThan(0.5 * width(usual));
  });

  test("has no width on level ground in calm standard air", () => {
    const level = { lowM: 100, likelyM: 100, highM: 100 };
    for (const kind of [null, "putter", 75] as const)
      expect(playsLikeBandM(shot(100, 0, 0), usual, kind)).toEqual(level);
  });

  test("never reaches below 0", () => {
    expect(playsLikeBandM(shot(20, -9, 0), usual).lowM).toBeGreaterThanOrEqual(0);
  });

  test("passes a senseless argument on", () =>
    expect(() => playsLikeBandM(shot(NaN, 0, 0), usual)).toThrow(
      expect.objectContaining({ code: "unusable" }),
    ));
});
