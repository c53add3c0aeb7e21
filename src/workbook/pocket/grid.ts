import { TYPE_DISTANCES_FT } from "../../core/constants";
import { DomainError } from "../../core/errors";
import { conditionsOf } from "../../core/flight/air";
import { playsLikeEvenBlownBackM, playsLikeM, playsLikeSdM } from "../../core/flight/playsLike";
import { DISC_TYPES, type DiscType, type Settings } from "../../core/types";
import { type DistanceUnit, fromMetres, toMetres, toMps, type WindUnit } from "../../core/units";

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
  /** For each type, and where it is not known, the square of the doubt in the layout of `filled`. */
  readonly variances: readonly (readonly (readonly number[])[])[];
}

export type Figure = number | typeof OUT_OF_REACH;
export type Table = readonly (readonly Figure[])[];

/** Stands where no throw of that type gets there. */
export const OUT_OF_REACH = "far";

/** The distance at which a throw of unstated type is of this type. */
export const usualDistance = (type: DiscType, unit: DistanceUnit): number =>
  fromMetres(toMetres(TYPE_DISTANCES_FT[type], "ft"), unit);

export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** The parabola through three evenly spaced values, one step on. */
const onward = (a: Figure, b: Figure, c: Figure): Figure =>
  typeof a === "number" && typeof b === "number" && typeof c === "number"
    ? a - 3 * b + 3 * c
    : OUT_OF_REACH;

/**
 * A table without holes: where no figure is known they go on as parabolas, first along the wind,
 * then along the rise, so that cubics run smoothly through those that are known.
 */
export function withoutHoles(table: Table, { distances, rises }: Axes): number[][] {
  const filled = table.map((row) => [...row]);
  const fill = (row: number, column: number, rowStep: number, columnStep: number): void => {
    const back = (steps: number): Figure =>
      filled[row - steps * rowStep]?.[column - steps * columnStep] ?? OUT_OF_REACH;
    if (filled[row]![column] === OUT_OF_REACH)
      filled[row]![column] = onward(back(3), back(2), back(1));
  };
  const sweep = (rowStep: number, columnStep: number): void => {
    const rows = [...filled.keys()];
    const columns = Array.from({ length: rises.count }, (_, column) => column);
    if (rowStep < 0) rows.reverse();
    if (columnStep < 0) columns.reverse();
    for (const row of rows) for (const column of columns) fill(row, column, rowStep, columnStep);
  };
  for (const [rowStep, columnStep] of [
    [distances.count, 0],
    [-distances.count, 0],
    [0, 1],
    [0, -1],
    [1, 0],
    [-1, 0],
  ] as const)
    sweep(rowStep, columnStep);
  return filled.map((row) => row.map((figure) => (figure === OUT_OF_REACH ? 0 : tenth(figure))));
}

type FigureAt = (distance: number, rise: number, wind: number, type: DiscType | null) => Figure;

/** Plays-like distance to a tenth, all in the units of the settings. */
function figuresBy(playsLike: typeof playsLikeM, settings: Settings): FigureAt {
  const { distanceUnit, windUnit } = settings;
  const conditions = conditionsOf(settings);
  return (distance, rise, wind, type) => {
    const shot = {
      distanceM: toMetres(distance, distanceUnit),
      riseM: toMetres(rise, distanceUnit),
      headwindMps: toMps(wind, windUnit),
    };
    try {
      return tenth(fromMetres(playsLike(shot, conditions, type), distanceUnit));
    } catch (error) {
      if (error instanceof DomainError && error.code === "unavailable") return OUT_OF_REACH;
      throw error;
    }
  };
}

/**
 * Plays-like distances of each disc type over distance, rise and headwind, in the units of the
 * settings, to a tenth. Yields the share done after each type and wind, since the flights take
 * seconds.
 */
export function* playsLikeGrid(settings: Settings): Generator<number, Grid> {
  const axes = axesOf(settings);
  const [distances, rises, winds] = [axes.distances, axes.rises, axes.winds].map(axisValues) as [
    number[],
    number[],
    number[],
  ];
  let done = 0;
  /** Plays-like and doubt of each type and wind, and the doubt where the type is not known. */
  const share = (): number => ++done / ((2 * DISC_TYPES.length + 1) * winds.length);
  const reached = figuresBy(playsLikeM, settings);
  const beyond = figuresBy(playsLikeEvenBlownBackM, settings);
  const tables: Figure[][][] = [];
  const filled: number[][][] = [];
  for (const type of DISC_TYPES) {
    const table: Figure[][] = [];
    const onward: Figure[][] = [];
    for (const wind of winds) {
      for (const distance of distances) {
        const row = rises.map((rise) => reached(distance, rise, wind, type));
        table.push(row);
        onward.push(
          row.map((figure, place) =>
            figure === OUT_OF_REACH ? beyond(distance, rises[place]!, wind, type) : figure,
          ),
        );
      }
      yield share();
    }
    tables.push(table);
    filled.push(withoutHoles(onward, axes));
  }
  const bend = (pair: number, rise: number, wind: number): number => {
    const types = [DISC_TYPES[pair]!, DISC_TYPES[pair + 1]!] as const;
    const [from, to] = types.map((type) => usualDistance(type, settings.distanceUnit)) as [
      number,
      number,
    ];
    const halfWay = (type: DiscType | null): Figure => beyond((from + to) / 2, rise, wind, type);
    const [own, one, other] = [halfWay(null), halfWay(types[0]), halfWay(types[1])];
    return typeof own === "number" && typeof one === "number" && typeof other === "number"
      ? tenth(own - (one + other) / 2)
      : 0;
  };
  const bends = DISC_TYPES.slice(1).flatMap((_, pair) =>
    winds.map((wind) => rises.map((rise) => bend(pair, rise, wind))),
  );
  const squared: typeof playsLikeM = (shot, conditions, type) => {
    const sdM = playsLikeSdM(shot, conditions, type);
    return sdM * fromMetres(sdM, settings.distanceUnit);
  };
  const varianceAt = figuresBy(squared, settings);
  const variances: number[][][] = [];
  for (const type of [...DISC_TYPES, null]) {
    const table: Figure[][] = [];
    for (const wind of winds) {
      for (const distance of distances)
        table.push(rises.map((rise) => varianceAt(distance, rise, wind, type)));
      yield share();
    }
    variances.push(withoutHoles(table, axes));
  }
  return { ...axes, tables, filled, bends, variances };
}
