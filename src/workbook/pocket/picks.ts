import { byChance, byLeaves, byStrokes, type Criterion, picksBy } from "../../core/choice/rank";
import { type Game, gameOf } from "../../core/choice/strokes";
import type { Card, CardRow, Settings } from "../../core/types";
import { fromMetres, toMetres, type DistanceUnit } from "../../core/units";

/**
 * What each disc costs at its best power, and that power, over the plays-like distance of the hole
 * and how much longer the hole is than that.
 */
export interface PickTable {
  /** A row for each stretch and, within it, each plays-like distance; a figure for each disc. */
  readonly costs: readonly (readonly number[])[];
  readonly powers: readonly (readonly number[])[];
  readonly tie: number;
}

export interface FrozenPicks {
  /** Longest first. */
  readonly discs: readonly CardRow[];
  /** Plays-like distances, in the unit of the settings. */
  readonly playsLike: readonly number[];
  /** Distance of the hole as a share of its plays-like distance. */
  readonly stretches: readonly number[];
  /** What to choose by; of two, the second where the first costs more than `enough` for every disc. */
  readonly tables: readonly PickTable[];
}

const STRETCHES = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.3, 1.6, 2, 3];

/** Fine where one disc hands over to the next, coarse beyond the shortest and the longest. */
const FINE: Record<DistanceUnit, number> = { ft: 4, m: 1.2 };
const COARSE: Record<DistanceUnit, number> = { ft: 12, m: 3.6 };
const NEAREST: Record<DistanceUnit, number> = { ft: 40, m: 12 };

function playsLikeFigures(discs: readonly CardRow[], unit: DistanceUnit): number[] {
  const carry = ({ mu }: CardRow): number => fromMetres(Math.exp(mu), unit);
  const [longest, shortest] = [carry(discs[0]!), carry(discs.at(-1)!)];
  const fineFrom = 0.7 * shortest;
  const fineTo = 1.12 * longest;
  const figures: number[] = [];
  for (let at = NEAREST[unit]; at < 2.5 * longest;) {
    figures.push(at);
    at += at > fineFrom && at < fineTo ? FINE[unit] : COARSE[unit];
  }
  return figures.map((figure) => Math.round(figure * 10) / 10);
}

const rounded = (value: number, places: number): number => Number(value.toFixed(places));

function table(
  game: Game,
  criterionAt: (distanceM: number) => Criterion,
  playsLike: readonly number[],
  unit: DistanceUnit,
): PickTable {
  const rows = STRETCHES.flatMap((stretch) =>
    playsLike.map((figure) => {
      const playsLikeM = toMetres(figure, unit);
      const target = { distanceM: playsLikeM * stretch, playsLikeM };
      const criterion = criterionAt(target.distanceM);
      return game.discs.map((thrown) => picksBy([{ thrown, target }], criterion)[0]!);
    }),
  );
  return {
    costs: rows.map((row) => row.map(({ cost }) => rounded(cost, 5))),
    powers: rows.map((row) => row.map(({ power }) => rounded(power, 3))),
    tie: criterionAt(0).tie,
  };
}

/** The picks of a card, frozen: everything that BEST weighs on a hole without trouble. */
export function frozenPicks(card: Card, settings: Settings): FrozenPicks {
  const { distanceUnit, aimFor, circleM } = settings;
  const game = gameOf(card, settings);
  const discs = game.discs.map(({ row }) => row);
  const playsLike = playsLikeFigures(discs, distanceUnit);
  const noTrouble = { longTroubleM: null, shortTroubleM: null };
  const criteria =
    aimFor === "strokes"
      ? [(distanceM: number) => byStrokes(noTrouble, game.strokesFor(distanceM))]
      : [() => byChance(circleM), () => byLeaves];
  return {
    discs,
    playsLike,
    stretches: STRETCHES,
    tables: criteria.map((criterion) => table(game, criterion, playsLike, distanceUnit)),
  };
}
