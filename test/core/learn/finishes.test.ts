/** Ellipses of finishes, against NumPy (mean, covariance, eigenvalues) and SciPy's chi-square quantiles. */
import { finishScatter } from "../../../src/core/learn/finishes";
import type { RoundRow } from "../../../src/core/types";

const round = (finishM: number | null, offlineM: number | null, row = 2): RoundRow => ({
  ...{ row, day: null, course: "", hole: "", disc: "Copper mid", power: 1, distanceM: 90 },
  ...{ riseM: 0, headwindMps: 0, finishM, offlineM, inCircle: null },
});
const SIX = [
  [-6, -2],
  [3, 1],
  [9, 4],
  [-4, 3],
  [2, -5],
  [0.5, 6],
] as const;
const six = SIX.map(([along, side]) => round(along, side));

test("half axes are those of the covariance times the chi-square quantile", () => {
  // numpy.cov and numpy.linalg.eigh; chi2.ppf([0.5, 0.8], 2) = 1.38629436, 3.21887582.
  const { half, eightTenths } = finishScatter(six);
  expect(half).toMatchObject({ alongM: 0.75 });
  expect(half!.sideM).toBeCloseTo(1.16666667, 8);
  expect(half!.longM).toBeCloseTo(6.5144678, 6);
  expect(half!.shortM).toBeCloseTo(4.48791123, 6);
  expect(eightTenths!.longM).toBeCloseTo(9.92666407, 6);
  expect(eightTenths!.shortM).toBeCloseTo(6.83862266, 6);
  // eigh gives the opposite direction of the same axis.
  expect(half!.turnRad).toBeCloseTo(Math.PI - 2.7776690998, 6);
});

test("rows without both figures are passed over, and few finishes have no ellipse", () => {
  const few = finishScatter([round(3, 1), round(null, 4), round(2, null)]);
  expect(few).toEqual({ finishes: [{ alongM: 3, sideM: 1 }], half: null, eightTenths: null });
  expect(() => finishScatter([round(3, null)])).toThrow("No row of the rounds says both");
  expect(() => finishScatter([])).toThrow("No row of the rounds says both");
});

test("finishes on one spot have an ellipse of no size", () => {
  const { half } = finishScatter(Array.from({ length: 5 }, () => round(2, 2)));
  expect(half).toMatchObject({ alongM: 2, sideM: 2, longM: 0, shortM: 0 });
});
