/** A whole course at once. */
import { conditionsOf } from "../flight/air";
import { playsLikeBandM, playsLikeM } from "../flight/playsLike";
import { remember } from "../memory";
import type { Card, Hole, Option, Settings } from "../types";
import { bagInHand } from "./bagInHand";
import { rankOptions } from "./rank";
import { orWhy } from "./target";

/** A key by which answers from a card are remembered: the content of all that they rest on. */
export const answerKey = ({ rows, population }: Card, settings: Settings, asked: unknown): string =>
  JSON.stringify([rows, population, settings, asked]);

export interface PlannedHole {
  /** "" where not given. */
  readonly course: string;
  readonly hole: string;
  /** Plays-like distance for a disc of unstated type, and its band; null where the flight has no answer. */
  readonly playsLikeM: number | null;
  readonly lowM: number | null;
  readonly highM: number | null;
  readonly option: Option | null;
  readonly second: Option | null;
  /** Why there is no option, in a sentence. */
  readonly why: string | null;
}

const memory = remember<PlannedHole[]>(16);

/**
 * The best and the second disc for every hole, in the order given; a hole that has no answer says why.
 * Throws `unavailable` where the bag is empty.
 */
export function planCourse(holes: readonly Hole[], card: Card, settings: Settings): PlannedHole[] {
  bagInHand(card);
  return memory(answerKey(card, settings, holes), () =>
    holes.map((hole) => planHole(hole, card, settings)),
  );
}

function planHole(hole: Hole, card: Card, settings: Settings): PlannedHole {
  const conditions = conditionsOf(settings);
  const band = orWhy(() => playsLikeBandM(hole, conditions)).answer;
  const { answer: options, why } = orWhy(() => rankOptions(hole, card, settings, 2));
  return {
    course: hole.course,
    hole: hole.hole,
    playsLikeM: orWhy(() => playsLikeM(hole, conditions, null)).answer,
    lowM: band?.lowM ?? null,
    highM: band?.highM ?? null,
    option: options?.[0] ?? null,
    second: options?.[1] ?? null,
    why,
  };
}
