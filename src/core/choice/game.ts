/** A player's game: the discs in the bag, ready to be thrown, and the strokes that they take. */
import { conditionsOf } from "../flight/conditions";
import { remember } from "../memory";
import type { Card, Settings } from "../types";
import { bagInHand } from "./bagInHand";
import { levelTargets } from "./levelTarget";
import { powersOf } from "./powers";
import { fullTable, nearTable } from "./strokesTable";
import { throwable, type Throwable } from "./throwable";

export interface Game {
  /** Longest first. */
  readonly discs: readonly Throwable[];
  /** Expected strokes to hole out from 0, 1, 2 … m, far enough for a shot of that distance. */
  readonly strokesFor: (distanceM: number) => Float64Array;
  /** Discs that are the best from some distance up to `nearM`. */
  readonly chosen: ReadonlySet<Throwable>;
  readonly nearM: number;
}

const memory = remember<Game>(16);

/**
 * The game of a card under some settings, worked out once for the same content. Throws `unavailable`
 * where the bag is empty.
 */
export function gameOf(card: Card, settings: Settings): Game {
  const rows = bagInHand(card);
  const { putting, lowestPower, highestPower } = settings;
  const key = JSON.stringify([rows, putting, lowestPower, highestPower, conditionsOf(settings)]);
  return memory(key, () => {
    const powers = powersOf(settings);
    return makeGame(
      rows.map((row) => throwable(row, powers)),
      settings,
    );
  });
}

/** The game with these discs, at least one; `like` is one that differs little, to begin with. */
export function makeGame(discs: readonly Throwable[], settings: Settings, like?: Game): Game {
  const level = levelTargets(conditionsOf(settings));
  const { table, choices } = nearTable(discs, settings.putting, level, like?.strokesFor(0));
  const nearM = table.length - 1;
  let full: Float64Array | null = null;
  return {
    discs,
    strokesFor: (distanceM) =>
      distanceM <= nearM ? table : (full ??= fullTable(table, discs, level)),
    chosen: new Set(choices.flatMap((best) => (best ? [best.thrown] : []))),
    nearM,
  };
}
