/** What Hole says, in words. */
import { rankOptions } from "../../core/choice/rank";
import { FLIGHT_WIND_SHARE } from "../../core/constants";
import { conditionsOf } from "../../core/flight/air";
import { flightPath, windDriftM } from "../../core/flight/path";
import { playsLikeBandM, playsLikeParts } from "../../core/flight/playsLike";
import {
  BEAUFORT,
  crosswindMps,
  headwindMps,
  levelM,
  parseDirection,
  riseM,
} from "../../core/flight/wind";
import type { Card, Hole, NextThrow, Option, Settings, Shot } from "../../core/types";
import { fromMetres, fromMps, toMetres, toMps, toRadians } from "../../core/units";
import { type Answer, attempt } from "../controller";
import { pathThrough, scale } from "../plots/scale";
import { count, distance, list, needNumber, numberIn, power, share } from "../words/figures";

/** What stands in the boxes of Hole, as typed. */
export interface HoleForm {
  /** Row of the course that filled the boxes; "" for none. */
  readonly from: string;
  readonly sight: "level" | "line";
  readonly distance: string;
  readonly rise: string;
  readonly range: string;
  readonly angle: string;
  readonly windBy: "felt" | "forecast" | "eye";
  readonly headwind: string;
  readonly speed: string;
  readonly windFrom: string;
  readonly bearing: string;
  /** Force of the Beaufort scale, as text. */
  readonly force: string;
  /** Where the seen wind comes from: degrees to the right of the target, as text. */
  readonly side: string;
  readonly longTrouble: string;
  readonly shortTrouble: string;
  readonly line: string;
}

export const EMPTY_HOLE: HoleForm = {
  from: "",
  sight: "level",
  distance: "",
  rise: "",
  range: "",
  angle: "",
  windBy: "felt",
  headwind: "",
  speed: "",
  windFrom: "",
  bearing: "",
  force: "0",
  side: "0",
  longTrouble: "",
  shortTrouble: "",
  line: "",
};

// The wind of a hole, by whichever way the player knows it.

export interface Wind {
  readonly headwindMps: number;
  /** From the left positive; 0 where only the headwind is known. */
  readonly crosswindMps: number;
}

/** Where a wind comes from, for someone who faces the target: words and degrees to the right. */
export const SIDES = [
  ["0", "ahead"],
  ["45", "ahead right"],
  ["90", "the right"],
  ["135", "behind right"],
  ["180", "behind"],
  ["225", "behind left"],
  ["270", "the left"],
  ["315", "ahead left"],
] as const;

/** What each force looks like. */
export const FORCES = BEAUFORT.map(
  ({ force, name, sight }) => [String(force), `${sight} (${name})`] as const,
);

export function windOf(form: HoleForm, settings: Settings): Wind {
  if (form.windBy === "felt") {
    const felt = needNumber(form.headwind, "Headwind", 0);
    return { headwindMps: toMps(felt, settings.windUnit), crosswindMps: 0 };
  }
  return form.windBy === "forecast" ? byForecast(form, settings) : byEye(form);
}

function byForecast(form: HoleForm, settings: Settings): Wind {
  const speedMps =
    toMps(needNumber(form.speed, "Wind speed", 0), settings.windUnit) * FLIGHT_WIND_SHARE;
  if (speedMps === 0) return { headwindMps: 0, crosswindMps: 0 };
  const from = parseDirection(form.windFrom);
  const bearing = parseDirection(form.bearing);
  return {
    headwindMps: headwindMps(speedMps, from, bearing),
    crosswindMps: crosswindMps(speedMps, from, bearing),
  };
}

function byEye(form: HoleForm): Wind {
  const seen = BEAUFORT.find(({ force }) => String(force) === form.force);
  const speedMps = (seen?.usualMps ?? 0) * FLIGHT_WIND_SHARE;
  const from = Number(form.side);
  return {
    headwindMps: headwindMps(speedMps, from, 0),
    crosswindMps: crosswindMps(speedMps, from, 0),
  };
}

// From what was typed to the throw's task, in SI. What is missing or unclear is thrown as a sentence.

export type Task = Shot & Pick<Hole, "longTroubleM" | "shortTroubleM" | "line"> & Wind;

/** Whether there is nothing to answer yet, rather than something wrong. */
export const isBlankForm = (form: HoleForm): boolean =>
  numberIn(form.sight === "level" ? form.distance : form.range).kind === "blank";

export function taskOf(form: HoleForm, settings: Settings): Task {
  const metres = (text: string, name: string, blank: number | null = null): number =>
    toMetres(needNumber(text, name, blank), settings.distanceUnit);
  const trouble = (text: string, name: string): number | null =>
    numberIn(text).kind === "blank" ? null : metres(text, name);
  return {
    ...seen(form, metres),
    ...windOf(form, settings),
    longTroubleM: trouble(form.longTrouble, "Trouble behind"),
    shortTroubleM: trouble(form.shortTrouble, "Trouble in front"),
    line: form.line,
  };
}

type Metres = (text: string, name: string, blank?: number | null) => number;

function seen(form: HoleForm, metres: Metres): { distanceM: number; riseM: number } {
  if (form.sight === "level") {
    const distanceM = metres(form.distance, "Distance");
    if (distanceM <= 0) throw new Error("Distance must be above 0.");
    return { distanceM, riseM: metres(form.rise, "Rise", 0) };
  }
  const rangeM = metres(form.range, "Range");
  if (rangeM <= 0) throw new Error("Range must be above 0.");
  const angle = toRadians(needNumber(form.angle, "Angle", 0));
  return { distanceM: levelM(rangeM, angle), riseM: riseM(rangeM, angle) };
}

// Everything that Hole says about one task.

type Parts = ReturnType<typeof playsLikeParts>;
type Band = ReturnType<typeof playsLikeBandM>;
type Path = ReturnType<typeof flightPath>;

export interface HoleAnswer {
  readonly task: Task;
  readonly plays: Answer<{ readonly parts: Parts; readonly band: Band }>;
  readonly options: Answer<readonly Option[]>;
  readonly path: Answer<Path>;
  /** Sideways carry by the crosswind, right positive. */
  readonly drift: Answer<number>;
}

/** The parts fail each for itself: a hole out of everyone's reach still has a plays-like distance. */
export function answerHole(task: Task, card: Card, settings: Settings): HoleAnswer {
  const conditions = conditionsOf(settings);
  return {
    task,
    plays: attempt(() => ({
      parts: playsLikeParts(task, conditions, null),
      band: playsLikeBandM(task, conditions),
    })),
    options: attempt(() => rankOptions(task, card, settings)),
    path: attempt(() => flightPath(task, conditions, null)),
    drift: attempt(() => windDriftM(task.distanceM, task.crosswindMps, conditions, null)),
  };
}

// Filling the boxes of Hole from a row of the course.

/** A number for a box: short, and blank for none. */
const typed = (value: number | null): string =>
  value === null ? "" : String(Number(value.toFixed(1)));

export function fillFrom(hole: Hole, settings: Settings): HoleForm {
  const metres = (value: number | null): string =>
    typed(value === null ? null : fromMetres(value, settings.distanceUnit));
  return {
    ...EMPTY_HOLE,
    from: String(hole.row),
    distance: metres(hole.distanceM),
    rise: metres(hole.riseM),
    headwind: typed(fromMps(hole.headwindMps, settings.windUnit)),
    longTrouble: metres(hole.longTroubleM),
    shortTrouble: metres(hole.shortTroubleM),
    line: hole.line,
  };
}

// Where the flight, the slope, the target and the circle stand on the plot.

type PathPoint = ReturnType<typeof flightPath>[number];

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface FlightSide {
  readonly width: number;
  readonly height: number;
  readonly points: readonly (PathPoint & Spot)[];
  readonly apex: PathPoint & Spot;
  /** Near and far edge of the circle on the slope. */
  readonly circle: readonly [Spot, Spot];
  /** The slope down to the plot's foot, as a path. */
  readonly ground: string;
  /** How many times heights are drawn. */
  readonly stretch: number;
  /** Which points the table shows: each so manieth. */
  readonly everyRow: number;
}

const STRETCH = 3;
const HEAD_ROOM = 22;
const FOOT = 30;
const TABLE_ROWS = 12;

export function flightSide(
  shot: Shot,
  path: readonly PathPoint[],
  circleM: number,
  width: number,
): FlightSide {
  const { distanceM, riseM } = shot;
  const farM = distanceM + circleM * 1.2;
  const x = scale([0, farM], [0, width]);
  const perM = (width / farM) * STRETCH;
  const slope = (alongM: number): number => (riseM * alongM) / distanceM;
  const heights = [...path.map(({ heightM }) => heightM), 0, slope(farM)];
  const highM = Math.max(...heights);
  const lowM = Math.min(...heights);
  const height = Math.round((highM - lowM) * perM) + HEAD_ROOM + FOOT;
  const y = (heightM: number): number => HEAD_ROOM + (highM - heightM) * perM;
  const onSlope = (alongM: number): Spot => ({ x: x(alongM), y: y(slope(alongM)) });
  const points = path.map((point) => ({ ...point, x: x(point.alongM), y: y(point.heightM) }));
  const corners = [onSlope(0), onSlope(farM), { x: width, y: height }, { x: 0, y: height }];
  return {
    width,
    height,
    points,
    apex: points.reduce((top, point) => (point.heightM > top.heightM ? point : top)),
    circle: [onSlope(distanceM - circleM), onSlope(distanceM + circleM)],
    ground: `${pathThrough(corners.map((corner) => [corner.x, corner.y]))}Z`,
    stretch: STRETCH,
    everyRow: Math.max(1, Math.ceil(points.length / TABLE_ROWS)),
  };
}

type SentencesParts = ReturnType<typeof playsLikeParts>;

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
  if (best.putt) return `You hole ${share(best.chance)} of putts from here.`;
  if (best.then.length > 0) return `${throwsWords(best)}: this one ${leaves}`;
  if (unfitSentence(best, settings) !== "")
    return unfitPick(best, options, settings) + ` It ${leaves}`;
  const first = `${share(best.chance)} in the circle, ${leaves}`;
  const next = second ? ` Second: ${second.disc}${joined(second)}.` : "";
  return first + next;
}

const throwsWords = ({ then }: Option): string => `Played with ${count(then.length + 1, "throw")}`;

/** A throw of the plan, in words: what is thrown, from how far, and how often it ends in the circle. */
export const thenSentence = (next: NextThrow, { distanceUnit }: Settings): string =>
  `${next.disc}, ${power(next.power)}, from ${distance(next.distanceM, distanceUnit)}: ${share(next.chance)} in the circle.`;

/** The hole before or after the one in the boxes, in the order of the course; null at its ends. */
export function holeBeside(holes: readonly Hole[], from: string, step: 1 | -1): Hole | null {
  const now = holes.findIndex(({ row }) => String(row) === from);
  return now < 0 ? null : (holes[now + step] ?? null);
}

/** Where the pick does not fit: whether none does, or it only costs the fewest strokes. */
function unfitPick(best: Option, options: readonly Option[], settings: Settings): string {
  const miss = distance(Math.abs(best.longM), settings.distanceUnit);
  if (options.some((option) => unfitSentence(option, settings) === ""))
    return `${best.longM < 0 ? `Stops ${miss} short` : `Goes ${miss} past`}, and still costs the fewest strokes.`;
  if (best.longM > 0) return `Your softest throw goes ${miss} past.`;
  const smooth = power(settings.highestPower) === "smooth" ? "smooth throw" : "throw";
  return `Your longest ${smooth} stops ${miss} short.`;
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
export function whySentence(parts: SentencesParts, { distanceUnit }: Settings): string {
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
export function oddWindSentence({ windM }: SentencesParts, headwindMps: number): string {
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
