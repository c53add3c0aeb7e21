/** Which discs to carry. */
import { bagInHand, type Throwable } from "../choice/bagInHand";
import { answerKey } from "../choice/plan";
import { type Game, gameOf, makeGame } from "../choice/strokes";
import { HOLES_A_ROUND } from "../constants";
import { unusable } from "../errors";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, Hole, Settings } from "../types";
import { isNeeded, strokesWith, teeShots } from "./worth";

/** A disc left at home, and the strokes a round that it would save as one more. */
export interface FurtherDisc {
  readonly disc: string;
  readonly saves: number;
}

export interface Packed {
  /** Longest first. */
  readonly discs: readonly string[];
  /** Expected strokes a round of 18 holes like these with these discs alone. */
  readonly strokes: number;
  /** Most first. */
  readonly further: readonly FurtherDisc[];
}

/** Some of the discs, and the strokes of a round with them. */
interface Selection {
  readonly game: Game;
  readonly strokes: number;
}

const memory = remember<Packed>(16);
/** Exchanges that save less are none, strokes. */
const WORTH_EXCHANGING = 1e-6;

/**
 * The best `count` discs for a course or several: dropped one at a time, always the one whose absence
 * costs least, then each disc that is left tried against those that are out, until no exchange saves
 * anything. All discs where there are no more. Throws `unusable` for a count below 1, `unavailable` where
 * no hole has an answer or the bag is empty.
 *
 * @example
 * pack(holes, card, settings, 5).discs.length // 5
 */
export function pack(
  holes: readonly Hole[],
  card: Card,
  settings: Settings,
  count: number,
): Packed {
  if (!(count >= 1)) throw unusable(messages.bag.badCount());
  bagInHand(card);
  return memory(answerKey(card, settings, [holes, count]), () => {
    const whole = gameOf(card, settings);
    const shots = teeShots(holes, whole, settings);
    const strokesOf = (game: Game): number => {
      const sum = shots.reduce((total, shot) => total + strokesWith(shot, game, settings), 0);
      return (sum / shots.length) * HOLES_A_ROUND;
    };
    const known = new Map<string, Selection>();
    const select = (discs: readonly Throwable[], like: Game): Selection => {
      const key = JSON.stringify(discs.map(({ row }) => row.disc).sort());
      let found = known.get(key);
      if (!found) {
        const game = makeGame(discs, settings, like);
        known.set(key, (found = { game, strokes: strokesOf(game) }));
      }
      return found;
    };
    const less = ({ game }: Selection, out: Throwable): Selection =>
      select(
        game.discs.filter((thrown) => thrown !== out),
        game,
      );

    let best: Selection = { game: whole, strokes: strokesOf(whole) };
    while (best.game.discs.length > count) {
      const { discs } = best.game;
      // One that no throw asks for costs nothing to leave, and there is no need to look further.
      const spare = discs.find((thrown) => !isNeeded(thrown, shots, best.game));
      best = spare ? less(best, spare) : fewest(discs.map((out) => less(best, out)));
    }
    const outside = (): Throwable[] =>
      whole.discs.filter((thrown) => !best.game.discs.includes(thrown));
    const more = (thrown: Throwable): Selection =>
      select(inOrder([...best.game.discs, thrown]), whole);
    for (let exchanged = true; exchanged;) {
      exchanged = false;
      for (const one of outside()) {
        const larger = more(one);
        if (best.strokes - larger.strokes < WORTH_EXCHANGING) continue;
        const other = fewest(best.game.discs.map((out) => less(larger, out)));
        if (best.strokes - other.strokes < WORTH_EXCHANGING) continue;
        best = other;
        exchanged = true;
        break;
      }
    }
    return {
      discs: best.game.discs.map(({ row }) => row.disc),
      strokes: best.strokes,
      further: outside()
        .map((thrown) => ({
          disc: thrown.row.disc,
          saves: Math.max(0, best.strokes - more(thrown).strokes),
        }))
        .sort((one, other) => other.saves - one.saves),
    };
  });
}

const fewest = (selections: readonly Selection[]): Selection =>
  selections.reduce((best, other) => (other.strokes < best.strokes ? other : best));

const inOrder = (discs: readonly Throwable[]): Throwable[] =>
  [...discs].sort((one, other) => other.row.mu - one.row.mu);
