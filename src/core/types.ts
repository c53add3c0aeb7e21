/**
 * The few records that travel between the folders of the core. All SI: metres, metres a
 * second, radians, days as spreadsheet serial numbers. Nothing here computes.
 */
import type { DistanceUnit, TemperatureUnit, WindUnit } from "./units";

/** A value as a spreadsheet sends it. Blank cells come as "", null or undefined. */
export type Cell = unknown;
export type Cells = readonly (readonly Cell[])[];

export const DISC_TYPES = ["putter", "midrange", "fairway", "distance"] as const;
export type DiscType = (typeof DISC_TYPES)[number];

/** One usable row of the throw log. */
export interface Throw {
  /** Row of the range it came from, the header being row 1. */
  readonly row: number;
  readonly disc: string;
  readonly carryM: number;
  /** Signed sideways miss, right positive; null where it was not noted. */
  readonly offlineM: number | null;
  /** Share of smooth; 1 where not noted. */
  readonly power: number;
  readonly line: string;
  readonly headwindMps: number;
  readonly riseM: number;
  readonly player: string;
  /** Serial day; null where not noted. */
  readonly day: number | null;
  readonly note: string;
}

/** A row that does not count, and why, in a sentence. */
export interface LeftOut {
  readonly row: number;
  readonly disc: string;
  readonly reason: string;
  /** Whose throw it is, where a player is chosen and it is another's: then there is nothing wrong with it. */
  readonly otherPlayer?: string;
}

export interface ThrowLog {
  readonly throws: readonly Throw[];
  readonly leftOut: readonly LeftOut[];
}

/** One row of the bag. */
export interface BagDisc {
  readonly row: number;
  readonly disc: string;
  readonly type: DiscType | null;
  readonly line: string;
  /** Softest throw that the player would plan, as a share of smooth; null where the bag does not say. */
  readonly softest: number | null;
  readonly inBag: boolean;
}

export interface PuttingRow {
  readonly distanceM: number;
  /** Share of putts made from there, 0 to 1. */
  readonly share: number;
}

export interface Settings {
  readonly player: string | null;
  readonly asOfDay: number | null;
  /** Infinity where throws never age. */
  readonly memoryDays: number;
  readonly distanceUnit: DistanceUnit;
  readonly windUnit: WindUnit;
  readonly temperatureUnit: TemperatureUnit;
  /** Wind of a round, for holes with a bearing and no headwind of their own; 0 for calm. */
  readonly windMps: number;
  /** Where it comes from, degrees clockwise from north; null where not known. */
  readonly windFromDegrees: number | null;
  /** null: standard for the altitude. */
  readonly temperatureC: number | null;
  readonly altitudeM: number;
  /** Air in which the throws of the log were made; null: as here. */
  readonly fieldTemperatureC: number | null;
  readonly fieldAltitudeM: number | null;
  /** Relative humidity 0 to 1; null: dry. */
  readonly humidity: number | null;
  readonly circleM: number;
  readonly usualSpread: number;
  readonly sideSpreadRad: number;
  /** What the course adds in quadrature to the spread of the field: along, as a share of carry, and sideways. */
  readonly courseSpread: number;
  readonly courseSideRad: number;
  /** Carries on the course over those in the field. */
  readonly courseCarry: number;
  /** Carries of one day over those of the card, its standard deviation, and the day; null: no day. */
  readonly today: number;
  readonly todaySd: number;
  readonly todayDay: number | null;
  readonly highestPower: number;
  readonly aimFor: "strokes" | "circle";
  /** How much of the modelled effect of rise and air, headwind and tailwind the player meets, each with its standard deviation. */
  readonly uphillFactor: number;
  readonly uphillSd: number;
  readonly headwindFactor: number;
  readonly headwindSd: number;
  readonly tailwindFactor: number;
  readonly tailwindSd: number;
  readonly putting: readonly PuttingRow[];
}

export type Verdict = "changing" | "steady" | "too few";

/** What is known sideways of one disc. */
export interface SideForm {
  /** Mean sideways angle, right positive: the player aims off by its opposite. 0 where not known. */
  readonly biasRad: number;
  /** Scale of the next throw's sideways angle, rad. */
  readonly scaleRad: number;
  readonly freedom: number;
  /** Effective number of throws whose sideways miss was noted. */
  readonly throws: number;
}

/** What is known of one disc: ln(carry in m) of the next smooth throw ~ t_freedom(mu, scale·√(1 + 1/evidence)). */
export interface CardRow {
  readonly disc: string;
  readonly type: DiscType | null;
  readonly line: string;
  /** Softest throw considered, as a share of smooth: the bag's, else by the type of disc. */
  readonly softest: number;
  readonly inBag: boolean;
  readonly mu: number;
  readonly scale: number;
  readonly freedom: number;
  /** Effective number of throws after ageing and down-weighting. */
  readonly evidence: number;
  readonly side: SideForm;
  /** Rows that counted, and the player's own rows of this disc that did not. */
  readonly throws: number;
  readonly leftOut: number;
  readonly lastDay: number | null;
  readonly verdict: Verdict;
}

export interface Card {
  /** Longest carry first. */
  readonly rows: readonly CardRow[];
  /** Spread of a disc that nothing is known of yet: scale s0 with freedom d0. */
  readonly population: { readonly scale: number; readonly freedom: number };
  readonly leftOut: readonly LeftOut[];
}

/** What the flight needs to know of the throw's task. */
export interface Shot {
  /** Horizontal distance to the target. */
  readonly distanceM: number;
  /** Target above the throwing spot positive. */
  readonly riseM: number;
  /** Wind felt against the throw; tailwind negative. */
  readonly headwindMps: number;
}

/** One row of the course table. Blank trouble: none. */
export interface Hole extends Shot {
  readonly row: number;
  /** Name of the course; "" where not given. */
  readonly course: string;
  readonly hole: string;
  readonly par: number | null;
  /** From the target to trouble behind it and in front of it. */
  readonly longTroubleM: number | null;
  readonly shortTroubleM: number | null;
  /** From the line to the target to trouble at its left and at its right. */
  readonly leftTroubleM: number | null;
  readonly rightTroubleM: number | null;
  /** Where the throw goes, degrees clockwise from north. */
  readonly bearingDegrees: number | null;
  /** Wind across the throw, from the left positive; 0 where not known. */
  readonly crosswindMps: number;
  /** Line asked for; "" for any. */
  readonly line: string;
  readonly note: string;
}

/** A throw that follows: this disc at this power, at what remains to the target. */
export interface NextThrow {
  readonly disc: string;
  readonly power: number;
  readonly distanceM: number;
  /** Chance to finish within the circle. */
  readonly chance: number;
}

/** One way to play a hole: this disc at this power; or, within the circle, to putt. */
export interface Option {
  readonly disc: string;
  /** Whether it is a putt: its chance is then that of holing out. */
  readonly putt: boolean;
  readonly power: number;
  /** Plays-like distance of the hole for this disc. */
  readonly playsLikeM: number;
  /** Chance to finish within the circle. */
  readonly chance: number;
  /** Mean distance from the target afterwards. */
  readonly leavesM: number;
  /** Expected strokes to hole out, this throw included. */
  readonly strokes: number;
  /** Median finish beyond the target along the line, short negative. */
  readonly longM: number;
  /** Sideways aim from the target, right positive: cancels the disc's bias and keeps away from trouble. */
  readonly aimM: number;
  /** What follows where the throw does not end in the circle, as planned; none where it does. */
  readonly then: readonly NextThrow[];
}

/** One throw on the course. What was not noted is null. */
export interface RoundRow extends Shot {
  readonly row: number;
  /** Serial day. */
  readonly day: number | null;
  /** "" where the table names none. */
  readonly course: string;
  readonly hole: string;
  readonly disc: string;
  readonly power: number;
  /** Finish along the line from the target, long positive. */
  readonly finishM: number | null;
  /** Finish sideways from the line, right positive. */
  readonly offlineM: number | null;
  /** Whether it finished within the circle. */
  readonly inCircle: boolean | null;
}

/** Putts from one distance. */
export interface PuttRow {
  readonly row: number;
  /** Serial day; null where not noted. */
  readonly day: number | null;
  readonly distanceM: number;
  readonly made: number;
  readonly tried: number;
}
