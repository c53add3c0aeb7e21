import { climbMps, HEIGHT_M, newState, STEP_S, TIME_S, type Craft, type State } from "./craft";
import { step } from "./step";

/** Error of velocity that one step may make, m/s; no landing is then off by 1 mm. */
export const TOLERANCE_MPS = 1e-5;

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
      to[STEP_S] = nextS;
      return;
    }
    stepS = nextS;
  }
}

/** A disc still in the air by now, s, is not followed any longer. */
const LONGEST_FLIGHT_S = 60;

/** Newton steps that bring a landing to within rounding of the ground. */
const LANDING_STEPS = 3;

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
  if (highestM < landingM) return false;
  for (let cut = 0; cut < LANDING_STEPS; cut++) {
    step(here, here, craft, (landingM - here[HEIGHT_M]!) / climbMps(here, craft));
  }
  if (here !== state) state.set(here);
  return true;
}
