/**
 * Plays-like distance once more, from its definition and not from this project's code: flights by the
 * general-purpose solver, the best elevation by golden section, the speed by secants.
 */
import type { DiscType, Shot } from "../../../src/core/types";
import { odexLanding, type OdexThrow } from "./odexFlight";

const DEGREE = Math.PI / 180;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

interface Farthest {
  readonly carryM: number;
  readonly elevationRad: number;
}

/** The farthest throw of a speed to a height, from 2 to 14 degrees above the slope. */
function farthest(air: Omit<OdexThrow, "elevationRad">, riseM: number, slopeRad: number): Farthest {
  const carryAt = (elevationRad: number): number =>
    odexLanding({ ...air, elevationRad }, riseM)?.[0] ?? -Infinity;
  let [low, high] = [slopeRad + 2 * DEGREE, slopeRad + 14 * DEGREE];
  const inner = (): [number, number] => [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [left, right] = inner();
  let [atLeft, atRight] = [carryAt(left), carryAt(right)];
  while (high - low > 0.02 * DEGREE) {
    if (atLeft > atRight) {
      high = right;
      [left, right] = [inner()[0], left];
      [atLeft, atRight] = [carryAt(left), atLeft];
    } else {
      low = left;
      [left, right] = [right, inner()[1]];
      [atLeft, atRight] = [atRight, carryAt(right)];
    }
  }
  const elevationRad = (low + high) / 2;
  return { carryM: carryAt(elevationRad), elevationRad };
}

/** The softest throw that gets there, from its definition: the speed whose farthest throw does. */
export function odexSoftest(
  { distanceM, riseM, headwindMps }: Shot,
  densityKgM3: number,
  type: DiscType,
): { speedMps: number; elevationRad: number } {
  const slopeRad = Math.atan2(riseM, distanceM);
  const air = { type, headwindMps, crosswindMps: 0, densityKgM3 };
  const look = (speedMps: number) => {
    const { carryM, elevationRad } = farthest({ ...air, speedMps }, riseM, slopeRad);
    return { speedMps, elevationRad, beyondM: carryM - distanceM };
  };
  let [before, last] = [look(2.3 * Math.sqrt(distanceM)), look(2.4 * Math.sqrt(distanceM))];
  while (Math.abs(last.beyondM) > 0.002) {
    const slope = (last.beyondM - before.beyondM) / (last.speedMps - before.speedMps);
    [before, last] = [last, look(last.speedMps - last.beyondM / slope)];
  }
  return last;
}

/** Plays-like distance in m, the whole of rise, wind and air. */
export function odexPlaysLikeM(shot: Shot, densityKgM3: number, type: DiscType): number {
  const { speedMps } = odexSoftest(shot, densityKgM3, type);
  const calm = { type, speedMps, headwindMps: 0, crosswindMps: 0, densityKgM3: 1.225 };
  return farthest(calm, 0, 0).carryM;
}
