import {
  climbMps,
  climbMps2,
  HEIGHT_M,
  newState,
  STEP_S,
  TIME_S,
  type Craft,
  type State,
} from "./craft";
import { step } from "./step";

/** Error of velocity that one step may make, m/s; no landing is then off by 1 mm. */
export const TOLERANCE_MPS = 1e-5;

/** No step is longer, s: the turns of a flight must not fall between two. */
const LONGEST_STEP_S = 0.5;

/** A step may be this much longer or shorter than the one before, and aims a little low. */
const MOST_GROWTH = 2;
const MOST_CUT = 0.1;
const CAUTION = 0.9;

/** Writes to `to` what `from` comes to in one step, as long as the tolerance allows. */
export function advance(from: State, to: State, craft: Craft, toleranceMps: number): void {
  let stepS = from[STEP_S]!;
  for (;;) {
    const errorMps = step(from, to, craft, stepS);
    const room = CAUTION * Math.sqrt(Math.sqrt(toleranceMps / errorMps));
    const nextS = stepS * Math.max(MOST_CUT, Math.min(MOST_GROWTH, room));
    if (!(errorMps > toleranceMps)) {
      to[STEP_S] = Math.min(LONGEST_STEP_S, nextS);
      return;
    }
    stepS = nextS;
  }
}

/** A disc still in the air by now, s, is not followed any longer. */
const LONGEST_FLIGHT_S = 60;

/** Newton's rule is used at most so often, down to a height this near, m. */
const MOST_CUTS = 8;
const LANDED_M = 1e-9;

/** Moves a flight, which turns down about here, to its highest point. */
function toApex(state: State, craft: Craft): void {
  for (let cut = 0; cut < MOST_CUTS && Math.abs(climbMps(state, craft)) > LANDED_M; cut++) {
    step(state, state, craft, -climbMps(state, craft) / climbMps2(state, craft));
  }
}

/** Moves a flight, which comes down about here, to where it is `landingM` high. */
function toLanding(state: State, craft: Craft, landingM: number): void {
  for (let cut = 0; cut < MOST_CUTS; cut++) {
    const aboveM = state[HEIGHT_M]! - landingM;
    if (Math.abs(aboveM) < LANDED_M) return;
    step(state, state, craft, -aboveM / climbMps(state, craft));
  }
}

/** Takes turns with the caller's state, so that flying allocates nothing. */
const other = newState();

/**
 * Flies a released disc to where it comes down through `landingM` (height over the ground at
 * the throw), and leaves the state there. False where it never gets that high, or does not
 * come down within a minute; the state then says nothing.
 */
export function flyDown(
  state: State,
  craft: Craft,
  landingM: number,
  toleranceMps = TOLERANCE_MPS,
): boolean {
  let here = state;
  let next = other;
  let highestM = state[HEIGHT_M]!;
  do {
    if (here[TIME_S]! > LONGEST_FLIGHT_S) return false;
    advance(here, next, craft, toleranceMps);
    const passed = here;
    here = next;
    next = passed;
    highestM = Math.max(highestM, here[HEIGHT_M]!);
  } while (here[HEIGHT_M]! > landingM || climbMps(here, craft) >= 0);
  if (highestM < landingM) {
    // Not at the end of a step; but perhaps at the top, within the last one.
    toApex(here, craft);
    const overM = here[HEIGHT_M]! - landingM;
    if (overM < 0) return false;
    step(here, here, craft, Math.sqrt((-2 * overM) / climbMps2(here, craft)));
  }
  toLanding(here, craft, landingM);
  if (here !== state) state.set(here);
  return true;
}
