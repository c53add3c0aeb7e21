/** What Hole says, in words. */
import type { playsLikeParts } from "../../core/flight/playsLike";
import type { Option, Settings } from "../../core/types";
import { distance, list, power, share } from "../words/figures";

type Parts = ReturnType<typeof playsLikeParts>;

/** "Copper mid, smooth" */
export const pickOf = (option: Option): string => `${option.disc}, ${power(option.power)}`;

/**
 * What the best disc does, and which comes next.
 *
 * @example "71 % in the circle, leaves 19 ft. Second: Mint fairway at 86 %."
 */
export function pickSentence(options: readonly Option[], settings: Settings): string {
  const [best, second] = options;
  if (!best) return "";
  const leaves = `leaves ${distance(best.leavesM, settings.distanceUnit)}.`;
  const unfit = unfitSentence(best, settings);
  if (unfit !== "") return `No disc fits: ${unfit}, ${leaves}`;
  const first = `${share(best.chance)} in the circle, ${leaves}`;
  const next = second ? ` Second: ${second.disc}${joined(second)}.` : "";
  return first + next;
}

const joined = ({ power: part }: Option): string =>
  power(part) === "smooth" ? ", smooth" : ` ${power(part)}`;

/** Aim that cancels the disc's own bias; "" where it is not worth saying. */
export function aimSentence({ aimM }: Option, { distanceUnit }: Settings): string {
  if (Math.abs(aimM) < WORTH_AIMING_M) return "";
  return `Aim ${distance(Math.abs(aimM), distanceUnit)} ${aimM < 0 ? "left" : "right"} of the target.`;
}

/** Less than this is within anyone's aim. */
const WORTH_AIMING_M = 1;
/** A part of plays-like below this is not worth a word. */
const WORTH_SAYING_M = 0.15;

/**
 * Why the hole plays longer or shorter than it is.
 *
 * @example "42 ft more for the slope, 3 ft more for the wind."
 */
export function whySentence(parts: Parts, { distanceUnit }: Settings): string {
  const causes = [
    [parts.slopeM, "slope"],
    [parts.windM, "wind"],
    [parts.airM, "air"],
  ] as const;
  const said = causes
    .filter(([metres]) => Math.abs(metres) >= WORTH_SAYING_M)
    .map(
      ([metres, cause]) =>
        `${distance(Math.abs(metres), distanceUnit)} ${metres < 0 ? "less" : "more"} for the ${cause}`,
    );
  return said.length === 0 ? "Slope, wind and air add nothing here." : `${list(said)}.`;
}

/**
 * Says that a wind does the opposite of what people expect; "" where it does not. A disc thrown well
 * short of its usual distance gains from a headwind, for it has lift to spare.
 */
export function oddWindSentence({ windM }: Parts, headwindMps: number): string {
  if (Math.abs(windM) < WORTH_SAYING_M || windM * headwindMps >= 0) return "";
  return headwindMps > 0
    ? "A throw this soft floats on a headwind."
    : "With the wind behind it the disc has less lift.";
}

/** Doubt wider than the circle, in words; "" where it is not. */
export const doubtSentence = (
  { lowM, highM }: { readonly lowM: number; readonly highM: number },
  { circleM }: Settings,
): string => (highM - lowM > 2 * circleM ? "That is wider than the circle: trust your eyes." : "");

/** Why a disc is no choice here: it does not get there, or cannot be thrown softly enough; "" otherwise. */
export function unfitSentence(option: Option, settings: Settings): string {
  const { distanceUnit, highestPower, circleM } = settings;
  const miss = distance(Math.abs(option.longM), distanceUnit);
  if (option.power >= highestPower && option.longM < -circleM)
    return `even ${power(highestPower)} it stops ${miss} short`;
  if (option.longM > circleM) return `even ${power(option.power)} it goes ${miss} past`;
  return "";
}

/** What a crosswind does to the disc; "" where that is not worth saying. */
export function driftSentence(driftM: number, { distanceUnit }: Settings): string {
  if (Math.abs(driftM) < WORTH_AIMING_M) return "";
  return `The wind carries it ${distance(Math.abs(driftM), distanceUnit)} ${driftM < 0 ? "left" : "right"}.`;
}
