/** What each disc is worth on a course. */
import { answerKey } from "../choice/answerKey";
import { bagInHand } from "../choice/bagInHand";
import { gameOf, makeGame, type Game } from "../choice/game";
import type { Throwable } from "../choice/throwable";
import { unavailable } from "../errors";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, Hole, Settings } from "../types";
import { strokesWithout, teeShots, type TeeShot } from "./teeShot";

export interface Worth {
  readonly disc: string;
  /** Strokes a round lost if it stays at home; 0 or more. */
  readonly strokes: number;
}

const memory = remember<Worth[]>(16);

/**
 * What each disc in the bag is worth on a course, most first: the strokes a round that its owner loses
 * without it, every hole picked again for least strokes and every later throw too. Where no other disc
 * suits the line of a hole, any other is thrown. Holes that have no answer do not count. Throws
 * `unavailable` where no hole has an answer, or fewer than two discs are in the bag.
 *
 * @example
 * worth(holes, card, DEFAULT_SETTINGS)[0] // { disc: "Mint fairway", strokes: 0.6 }
 */
export function worth(holes: readonly Hole[], card: Card, settings: Settings): Worth[] {
  if (bagInHand(card).length < 2) throw unavailable(messages.bag.oneDisc());
  return memory(answerKey(card, settings, holes), () => {
    const game = gameOf(card, settings);
    const shots = teeShots(holes, game, settings);
    return game.discs
      .map((home) => ({ disc: home.row.disc, strokes: worthOf(home, shots, game, settings) }))
      .sort((a, b) => b.strokes - a.strokes);
  });
}

function worthOf(
  home: Throwable,
  shots: readonly TeeShot[],
  game: Game,
  settings: Settings,
): number {
  if (!isNeeded(home, shots, game)) return 0;
  const others = game.discs.filter((thrown) => thrown !== home);
  const without = makeGame(others, settings, game);
  const lost = shots.map(
    (shot) => strokesWithout(shot, home, without, settings) - shot.picks[0]!.cost,
  );
  return Math.max(
    0,
    lost.reduce((sum, strokes) => sum + strokes, 0),
  );
}

/** A disc that no tee and no later throw asks for is not missed. */
const isNeeded = (home: Throwable, shots: readonly TeeShot[], { chosen, nearM }: Game): boolean =>
  chosen.has(home) ||
  shots.some(({ hole, picks }) => hole.distanceM > nearM || picks[0]!.thrown === home);
