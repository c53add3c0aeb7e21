/** Plays-like, its doubt and drift against the definition, flown by a general-purpose solver. */
import { type Conditions, FULL_EFFECT } from "../../../src/core/flight/air";
import { windDriftM } from "../../../src/core/flight/path";
import { playsLikeBandM, playsLikeM } from "../../../src/core/flight/playsLike";
import { DISC_TYPES, type DiscType, type Shot } from "../../../src/core/types";
import { METRES_PER_FOOT, toMetres, toMps } from "../../../src/core/units";
import { odexLanding } from "./odexFlight";
import { odexPlaysLikeM, odexSoftest } from "./odexPlaysLike";

const inAir = (densityKgM3: number): Conditions => ({ densityKgM3, ...FULL_EFFECT });
const task = (distanceFt: number, riseFt: number, headwindMph: number): Shot => ({
  distanceM: toMetres(distanceFt, "ft"),
  riseM: toMetres(riseFt, "ft"),
  headwindMps: toMps(headwindMph, "mph"),
});

test.each<[number, number, number, number, DiscType]>([
  // Hot and high, at about 2,000 m; a hot humid day; a hard frost.
  [300, 0, 0, 0.95, "fairway"],
  [250, 12, 6, 1.0, "midrange"],
  [350, -10, 8, 1.1, "distance"],
  [200, 8, -6, 1.12, "putter"],
  [300, 10, 8, 1.38, "fairway"],
  // Near and far.
  [100, 0, 10, 1.225, "putter"],
  [100, 8, 0, 1.225, "midrange"],
  [100, -6, 5, 1.05, "putter"],
  [500, 0, 5, 1.225, "distance"],
  [500, 15, 0, 1.225, "distance"],
  [500, -20, -8, 1.05, "distance"],
])("%d ft, %d ft up, %d mph, %d kg/m³, %s: plays-like within 0.1 ft", (...asked) => {
  const [distanceFt, riseFt, headwindMph, densityKgM3, type] = asked;
  const shot = task(distanceFt, riseFt, headwindMph);
  const outside = odexPlaysLikeM(shot, densityKgM3, type);
  const found = playsLikeM(shot, inAir(densityKgM3), type);
  expect(Math.abs(found - outside) / METRES_PER_FOOT).toBeLessThan(0.1);
});

describe("the band", () => {
  const shot = task(300, 12, 8);
  const calm = { ...shot, headwindMps: 0 };
  const doubtful: Conditions = {
    densityKgM3: 1.05,
    uphill: { value: 0.9, sd: 0.3 },
    headwind: { value: 1.2, sd: 0.5 },
    tailwind: { value: 0, sd: 0.7 },
  };
  /** The parts of the effect by the solver, and the doubt put together from them by hand. */
  const parts = (type: DiscType) => {
    const [all, calmly, standard] = [
      odexPlaysLikeM(shot, 1.05, type),
      odexPlaysLikeM(calm, 1.05, type),
      odexPlaysLikeM(calm, 1.225, type),
    ];
    const [rise, wind] = [calmly - shot.distanceM, all - calmly];
    const likely = shot.distanceM + 0.9 * rise + 1.2 * wind;
    return { likely, doubts: [0.3 * rise, 0.5 * wind, 0.9 * (calmly - standard)] };
  };

  test("of a disc of known type", () => {
    const { likely, doubts } = parts("fairway");
    const half = 1.2816 * Math.sqrt(doubts.reduce((sum, doubt) => sum + doubt ** 2, 0));
    const band = playsLikeBandM(shot, doubtful, "fairway");
    expect(Math.abs(band.lowM - (likely - half))).toBeLessThan(0.1);
    expect(Math.abs(band.highM - (likely + half))).toBeLessThan(0.1);
  });

  // At 300 ft a disc of unknown type is the usual fairway disc.
  test("of a disc of unknown type, which adds the spread of the types", () => {
    const each = DISC_TYPES.map((type) => parts(type).likely);
    const mean = each.reduce((sum, answer) => sum + answer / each.length, 0);
    const spread = Math.hypot(...each.map((answer) => answer - mean)) / 2;
    const { likely, doubts } = parts("fairway");
    const half = 1.2816 * Math.hypot(...doubts, spread);
    const band = playsLikeBandM(shot, doubtful);
    expect(Math.abs(band.lowM - (likely - half))).toBeLessThan(0.15);
    expect(Math.abs(band.highM - (likely + half))).toBeLessThan(0.15);
  });
});

test.each<[number, number, number, DiscType]>([
  [200, 8, 1.225, "putter"],
  [300, 8, 1.225, "fairway"],
  [300, -15, 1.0, "fairway"],
  [400, 5, 1.225, "distance"],
])("drift at %d ft in %d mph across, %d kg/m³, %s", (distanceFt, mph, densityKgM3, type) => {
  const shot = task(distanceFt, 0, 0);
  const crosswindMps = toMps(mph, "mph");
  const air = { type, headwindMps: 0, crosswindMps, densityKgM3 };
  const { speedMps, elevationRad } = odexSoftest(shot, densityKgM3, type);
  const outside = odexLanding({ ...air, speedMps, elevationRad }, 0)![2];
  const found = windDriftM(shot.distanceM, crosswindMps, inAir(densityKgM3), type);
  // Drift follows the elevation of the farthest throw, which both find roughly only.
  expect(Math.abs(found / outside - 1)).toBeLessThan(0.003);
});
