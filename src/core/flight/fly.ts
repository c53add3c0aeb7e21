import { STALL_RAD } from "../constants";
import {
  climbMps,
  HEIGHT_M,
  newState,
  NOSE_MPS,
  SIDE_MPS,
  TIME_S,
  TOP_MPS,
  type Craft,
  type State,
} from "./craft";
import { step } from "./step";

/** A step lasts while the disc flies this far through the air, were it this much faster. */
const STEP_M = 1;
const STEP_SLACK_MPS = 4;

/** The polar has a bend at stall; a step that meets it is quartered this often. */
const STALL_QUARTERINGS = 4;

const STALL_TILT_SQUARED = Math.tan(STALL_RAD) ** 2;

/** −1, 0 or 1: stalled nose down, flying, stalled nose up. */
function stall(state: State): number {
  const nose = state[NOSE_MPS]!;
  const side = state[SIDE_MPS]!;
  const top = state[TOP_MPS]!;
  if (top * top <= STALL_TILT_SQUARED * (nose * nose + side * side)) return 0;
  return top > 0 ? -1 : 1;
}

function airMps(state: State): number {
  const nose = state[NOSE_MPS]!;
  const side = state[SIDE_MPS]!;
  const top = state[TOP_MPS]!;
  return Math.sqrt(nose * nose + side * side + top * top);
}

/**
 * Writes to `to` what `from` comes to within one step of a length that suits it. `fineness` 2
 * halves every step; that moves a landing by less than 1 mm.
 */
export function advance(from: State, to: State, craft: Craft, fineness: number): void {
  let stepS = STEP_M / (airMps(from) + STEP_SLACK_MPS) / fineness;
  step(from, to, craft, stepS);
  for (let cut = 0; cut < STALL_QUARTERINGS && stall(from) !== stall(to); cut++) {
    stepS /= 4;
    step(from, to, craft, stepS);
  }
}

/** A disc still in the air by now, s, is not followed any longer. */
const LONGEST_FLIGHT_S = 60;

/** Newton steps that bring a landing to within rounding of the ground. */
const LANDING_STEPS = 4;

/** Takes turns with the caller's state, so that flying allocates nothing. */
const other = newState();

/**
 * Flies a released disc to where it comes down through `landingM` (height over the ground at
 * the throw), and leaves the state there. False where it never gets that high, or does not
 * come down within a minute; the state then says nothing.
 */
export function flyDown(state: State, craft: Craft, landingM: number, fineness = 1): boolean {
  let here = state;
  let next = other;
  let highestM = state[HEIGHT_M]!;
  do {
    if (here[TIME_S]! > LONGEST_FLIGHT_S) return false;
    advance(here, next, craft, fineness);
    [here, next] = [next, here];
    highestM = Math.max(highestM, here[HEIGHT_M]!);
  } while (here[HEIGHT_M]! > landingM || climbMps(here, craft) >= 0);
  if (highestM < landingM) return false;
  for (let cut = 0; cut < LANDING_STEPS; cut++) {
    step(here, here, craft, (landingM - here[HEIGHT_M]!) / climbMps(here, craft));
  }
  if (here !== state) state.set(here);
  return true;
}
