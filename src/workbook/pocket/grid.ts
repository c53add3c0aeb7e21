import { TYPE_DISTANCES_FT } from "../../core/constants";
import type { DiscType, Settings } from "../../core/types";
import { fromMetres, toMetres, type DistanceUnit, type WindUnit } from "../../core/units";

/** Figures of a frozen grid: evenly spaced, or each the same multiple of the one before. */
export interface Axis {
  readonly from: number;
  readonly step: number;
  readonly count: number;
  readonly growing: boolean;
}

export const axisValues = ({ from, step, count, growing }: Axis): number[] =>
  Array.from({ length: count }, (_, index) =>
    growing ? from * step ** index : from + index * step,
  );
export const axisEnd = (axis: Axis): number => axisValues(axis).at(-1)!;

const growing = (from: number, step: number, count: number): Axis => ({
  from,
  step,
  count,
  growing: true,
});
const even = (from: number, step: number, count: number): Axis => ({
  from,
  step,
  count,
  growing: false,
});

/** What the sheet knows, in the player's units, as far apart as a cubic between them allows. */
const DISTANCES: Record<DistanceUnit, Axis> = {
  ft: growing(75, 1.26, 10),
  m: growing(23, 1.26, 10),
};
const RISES: Record<DistanceUnit, Axis> = { ft: even(-42, 14, 7), m: even(-12.6, 4.2, 7) };
const WINDS: Record<WindUnit, Axis> = {
  mph: even(-16, 4, 9),
  "km/h": even(-26, 6.5, 9),
  "m/s": even(-7.2, 1.8, 9),
};

export interface Axes {
  readonly distances: Axis;
  readonly rises: Axis;
  readonly winds: Axis;
}

/** The axes in the units of the settings. */
export const axesOf = ({ distanceUnit, windUnit }: Settings): Axes => ({
  distances: DISTANCES[distanceUnit],
  rises: RISES[distanceUnit],
  winds: WINDS[windUnit],
});

export interface Grid extends Axes {
  /** For each type a row for each wind and, within it, each distance; a figure for each rise. */
  readonly tables: readonly Table[];
  /** The same tables without holes: the figures go on beyond reach, for cubics to run through. */
  readonly filled: readonly (readonly (readonly number[])[])[];
  /**
   * How far a disc of unstated type, half-way between two neighbouring types, plays off the mean of
   * the two: for each pair a row for each wind, a figure for each rise; 0 where it is out of reach.
   */
  readonly bends: readonly (readonly number[])[];
}

export type Figure = number | typeof OUT_OF_REACH;
export type Table = readonly (readonly Figure[])[];

/** Stands where no throw of that type gets there. */
export const OUT_OF_REACH = "far";

/** The distance at which a throw of unstated type is of this type. */
export const usualDistance = (type: DiscType, unit: DistanceUnit): number =>
  fromMetres(toMetres(TYPE_DISTANCES_FT[type], "ft"), unit);

export const tenth = (value: number): number => Math.round(value * 10) / 10;
