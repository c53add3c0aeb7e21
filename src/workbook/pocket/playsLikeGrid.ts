import { DomainError } from "../../core/errors";
import { conditionsOf } from "../../core/flight/air";
import { playsLikeEvenBlownBackM, playsLikeM } from "../../core/flight/playsLike";
import { DISC_TYPES, type DiscType, type Settings } from "../../core/types";
import { fromMetres, toMetres, toMps } from "../../core/units";
import {
  axesOf,
  axisValues,
  OUT_OF_REACH,
  tenth,
  usualDistance,
  type Figure,
  type Grid,
} from "./grid";
import { withoutHoles } from "./withoutHoles";

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
  const reached = figuresBy(playsLikeM, settings);
  const beyond = figuresBy(playsLikeEvenBlownBackM, settings);
  const tables: Figure[][][] = [];
  const filled: number[][][] = [];
  for (const [index, type] of DISC_TYPES.entries()) {
    const table: Figure[][] = [];
    const onward: Figure[][] = [];
    for (const [at, wind] of winds.entries()) {
      for (const distance of distances) {
        const row = rises.map((rise) => reached(distance, rise, wind, type));
        table.push(row);
        onward.push(
          row.map((figure, place) =>
            figure === OUT_OF_REACH ? beyond(distance, rises[place]!, wind, type) : figure,
          ),
        );
      }
      yield (index + (at + 1) / winds.length) / DISC_TYPES.length;
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
  return { ...axes, tables, filled, bends };
}
