import { FULL_EFFECT } from "../../../src/core/flight/air";
import { flownEvenBlownBackM, orNaN, playsLikeM } from "../../../src/core/flight/playsLike";
import { kindOf } from "../../../src/core/flight/polar";
import type { Shot } from "../../../src/core/types";
import { METRES_PER_FOOT, toMetres, toMps } from "../../../src/core/units";

/** Largest error, ft, of discs of unknown type against flights of their own, over winds in mph. */
function worstFt(winds: readonly number[]): number {
  let worst = 0;
  for (const distanceFt of [100, 200, 250, 300, 350])
    for (const riseFt of [-25, 0, 25])
      for (const mph of winds)
        for (const carryFt of [212, 238, 262, 288, 312, 338])
          for (const densityKgM3 of [1, 1.225]) {
            const shot: Shot = {
              distanceM: toMetres(distanceFt, "ft"),
              riseM: toMetres(riseFt, "ft"),
              headwindMps: toMps(mph, "mph"),
            };
            const air = { densityKgM3, ...FULL_EFFECT };
            const carryM = toMetres(carryFt, "ft");
            const found = orNaN(() => playsLikeM(shot, air, carryM));
            const exact = orNaN(() => flownEvenBlownBackM(shot, densityKgM3, carryM));
            const error = Math.abs(found - exact) / METRES_PER_FOOT;
            if (distanceFt < 1.3 * carryFt && error > worst) worst = error;
          }
  return worst;
}

test("a disc of unknown type plays within 0.2 ft of a flight of its own in winds up to 10 mph", () =>
  expect(worstFt([-10, 4, 10])).toBeLessThan(0.2));

test("and within 0.6 ft up to 20 mph", () => expect(worstFt([-15, 15, 20])).toBeLessThan(0.6));

test("its type counts where it is known, else its own carry, not the distance of the target", () => {
  const mu = Math.log(70);
  expect(kindOf({ type: "midrange", mu })).toBe("midrange");
  expect(kindOf({ type: null, mu })).toBeCloseTo(70, 9);
  const shot = { distanceM: 100, riseM: 5, headwindMps: 3 };
  const air = { densityKgM3: 1.225, ...FULL_EFFECT };
  // 200 ft is the carry of a putter, 350 ft that of a distance disc (TYPE_DISTANCES_FT).
  expect(playsLikeM(shot, air, toMetres(200, "ft"))).toBe(playsLikeM(shot, air, "putter"));
  expect(playsLikeM(shot, air, toMetres(350, "ft"))).toBe(playsLikeM(shot, air, "distance"));
});
