/** The first throw of a hole, with this disc or that at home. */
import { candidates } from "../choice/candidates";
import { byStrokes } from "../choice/criteria";
import { leastOf } from "../choice/downhill";
import type { Game } from "../choice/game";
import { picksBy, type Pick } from "../choice/picks";
import type { Throwable } from "../choice/throwable";
import { troubleInPlay } from "../choice/trouble";
import { orWhy } from "../choice/orWhy";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/conditions";
import { messages } from "../messages";
import type { Hole, Settings } from "../types";

export interface TeeShot {
  readonly hole: Hole;
  /** Every disc that the hole may be played with, cheapest first: cost in strokes with the whole bag. */
  readonly picks: readonly Pick[];
}

/** The tee shots of the holes that have an answer; throws `unavailable` where none has. */
export function teeShots(holes: readonly Hole[], game: Game, settings: Settings): TeeShot[] {
  const answers = holes.map((hole) => orWhy(() => teeShot(hole, game, settings)));
  const shots = answers.flatMap(({ answer }) => answer ?? []);
  if (shots.length === 0) throw unavailable(answers[0]?.why ?? messages.bag.noHole());
  return shots;
}

function teeShot(hole: Hole, game: Game, settings: Settings): TeeShot {
  const able = candidates(hole, game.discs, conditionsOf(settings));
  const table = game.strokesFor(hole.distanceM);
  const picks = picksBy(able, byStrokes(troubleInPlay(hole, able), table));
  if (picks.length === 0) throw unavailable(messages.choice.onlyTrouble());
  return { hole, picks: picks.sort((a, b) => a.cost - b.cost) };
}

/**
 * Least strokes of a hole with one disc at home, `without` being the game of the others. Losing a disc
 * never makes a later throw cheaper, so what a disc cost with the whole bag is the least that it can
 * cost now, and the search ends at the first that cannot win.
 */
export function strokesWithout(
  { hole, picks }: TeeShot,
  home: Throwable,
  without: Game,
  settings: Settings,
): number {
  const others = picks.filter(({ thrown }) => thrown !== home);
  if (others.length === 0) return teeShot({ ...hole, line: "" }, without, settings).picks[0]!.cost;
  const { costsOf } = byStrokes(troubleInPlay(hole, others), without.strokesFor(hole.distanceM));
  let least = Infinity;
  for (const pick of others) {
    if (pick.cost >= least) break;
    const { cost } = leastOf(pick.thrown.powers.length, costsOf(pick));
    least = Math.min(least, cost);
  }
  return least;
}
