/** A player's game: the discs in the bag, ready to be thrown, and the strokes that they take. */
import { LONGEST_HOLE_M } from "../constants";
import { conditionsOf } from "../flight/conditions";
import { remember } from "../memory";
import type { Card, CardRow, Settings } from "../types";
import { bagInHand } from "./bagInHand";
import { levelTargets } from "./levelTarget";
import { powersOf } from "./powers";
import { strokesTable, type StrokesTable } from "./strokesTable";
import { throwable, type Throwable } from "./throwable";

export interface Game {
  /** Longest first. */
  readonly discs: readonly Throwable[];
  /** Expected strokes to hole out from 0, 1, 2 … m, far enough for a shot of that distance. */
  readonly strokesFor: (distanceM: number) => Float64Array;
  /** Discs that are the best from some distance up to `nearM`. */
  readonly chosen: ReadonlySet<Throwable>;
  readonly nearM: number;
  /** Strokes and throws to half a longest carry beyond `nearM`. */
  readonly near: StrokesTable;
}

const memory = remember<Game>(16);
/** The game last worked out for a card that is asked again and again: one look instead of a long key. */
const latest = new WeakMap<Card, { readonly settings: Settings; readonly game: Game }>();

/**
 * The game of a card under some settings, worked out once for the same content. Throws `unavailable`
 * where the bag is empty.
 */
export function gameOf(card: Card, settings: Settings): Game {
  const known = latest.get(card);
  if (known?.settings === settings) return known.game;
  const game = gameByContent(bagInHand(card), settings);
  latest.set(card, { settings, game });
  return game;
}

function gameByContent(rows: readonly CardRow[], settings: Settings): Game {
  const { putting, highestPower } = settings;
  const key = JSON.stringify([rows, putting, highestPower, conditionsOf(settings)]);
  return memory(key, () => {
    const discs = rows.map((row) => throwable(row, powersOf(row, settings)));
    return makeGame(discs, settings);
  });
}

/** Longest carries that a table reaches, and within which it is used: see `strokesTable`. */
const REACH_CARRIES = 2;
const USED_CARRIES = 1.5;

/** The game with these discs, at least one; `like` is one that differs little, to begin with. */
export function makeGame(discs: readonly Throwable[], settings: Settings, like?: Game): Game {
  const level = levelTargets(conditionsOf(settings));
  const longestM = Math.exp(Math.max(...discs.map(({ row }) => row.mu)));
  const upTo = (reachM: number, known?: StrokesTable) =>
    strokesTable(discs, settings.putting, level, reachM, known);
  const near = upTo(Math.ceil(REACH_CARRIES * longestM), like?.near);
  const nearM = Math.floor(USED_CARRIES * longestM);
  let far: Float64Array | null = null;
  return {
    discs,
    strokesFor: (distanceM) =>
      distanceM <= nearM
        ? near.strokes
        : (far ??= upTo(LONGEST_HOLE_M + Math.ceil(longestM), used(near, nearM)).strokes),
    chosen: new Set(near.choices.flatMap((best) => (best ? [best.thrown] : []))),
    nearM,
    near,
  };
}

const used = ({ strokes, choices }: StrokesTable, reachM: number): StrokesTable => ({
  strokes: strokes.subarray(0, reachM + 1),
  choices: choices.slice(0, reachM + 1),
});
