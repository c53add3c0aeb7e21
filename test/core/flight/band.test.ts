import { FULL_EFFECT } from "../../../src/core/flight/air";
import { playsLikeBandM, playsLikeM } from "../../../src/core/flight/playsLike";
import { DISC_TYPES } from "../../../src/core/types";

const still = { densityKgM3: 1.225, ...FULL_EFFECT };

describe("playsLikeBandM", () => {
  test.each([
    [60, 4, 0],
    [90, -6, 3],
    [110, 0, -5],
  ])("holds the answers of all types about the likely one: %d m, %d m up, %d m/s", (...task) => {
    const [distanceM, riseM, headwindMps] = task;
    const shot = { distanceM, riseM, headwindMps };
    const { lowM, likelyM, highM } = playsLikeBandM(shot, still);
    expect(likelyM).toBe(playsLikeM(shot, still, null));
    for (const type of [null, ...DISC_TYPES]) {
      expect(playsLikeM(shot, still, type)).toBeGreaterThanOrEqual(lowM);
      expect(playsLikeM(shot, still, type)).toBeLessThanOrEqual(highM);
    }
    expect(highM).toBeGreaterThan(lowM);
  });

  // A player who does not adapt meets a headwind harder: the fixed launch widens the band.
  test("is wider than the types alone make it", () => {
    const shot = { distanceM: 90, riseM: 0, headwindMps: 5 };
    const adapted = DISC_TYPES.map((type) => playsLikeM(shot, still, type));
    expect(playsLikeBandM(shot, still).highM).toBeGreaterThan(Math.max(...adapted) + 1);
  });

  test("has no width on level ground in calm standard air", () => {
    const shot = { distanceM: 100, riseM: 0, headwindMps: 0 };
    expect(playsLikeBandM(shot, still)).toEqual({ lowM: 100, likelyM: 100, highM: 100 });
  });

  test("leaves out a disc that cannot get there", () => {
    const shot = { distanceM: 230, riseM: 10, headwindMps: 0 };
    expect(() => playsLikeM(shot, still, "putter")).toThrow(
      expect.objectContaining({ code: "unavailable" }),
    );
    expect(playsLikeBandM(shot, still).highM).toBeLessThan(500);
  });

  test("passes a senseless argument on", () =>
    expect(() => playsLikeBandM({ distanceM: NaN, riseM: 0, headwindMps: 0 }, still)).toThrow(
      expect.objectContaining({ code: "unusable" }),
    ));
});
