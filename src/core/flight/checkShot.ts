import { FARTHEST_TARGET_M, STRONGEST_WIND_MPS } from "../constants";
import { unavailable, unusable } from "../errors";
import { messages } from "../messages";
import type { Shot } from "../types";

/** Refuses a wind along or across a throw that is no number, or stronger than is covered. */
export function checkWind(windMps: number): void {
  if (!Number.isFinite(windMps)) throw unusable(messages.flight.badWind());
  if (Math.abs(windMps) > STRONGEST_WIND_MPS) throw unavailable(messages.flight.tooWindy());
}

/** Refuses a task that makes no sense, or that the model does not cover. */
export function checkShot({ distanceM, riseM, headwindMps }: Shot): void {
  if (!(distanceM > 0 && distanceM < Infinity)) throw unusable(messages.flight.badDistance());
  if (distanceM > FARTHEST_TARGET_M) throw unavailable(messages.flight.outOfReach());
  if (!Number.isFinite(riseM)) throw unusable(messages.flight.badRise());
  if (Math.abs(riseM) > distanceM) throw unavailable(messages.flight.tooSteep());
  checkWind(headwindMps);
}
