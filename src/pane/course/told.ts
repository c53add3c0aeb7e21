/** What happened against what was told: chances, finishes, putts. */
import { type Calibration, calibration } from "../../core/learn/calibration";
import { finishScatter, type Scatter } from "../../core/learn/finishes";
import { learnPutting, type LearntPutt } from "../../core/learn/learnPutting";
import { discKey } from "../../core/log/names";
import { type Book, oncePer, oncePerPair } from "../book/book";
import { type Answer, attempt } from "../controller";

export const calibrationOf = oncePer(({ rounds, card, settings }: Book): Answer<Calibration> =>
  attempt(() => calibration(rounds, card, settings)),
);

/** Discs with a finish that can be drawn, in the order of the rounds. */
export const discsWithFinishes = oncePer(({ rounds }: Book): readonly string[] => {
  const names = new Map<string, string>();
  for (const { disc, finishM, offlineM } of rounds)
    if (finishM !== null && offlineM !== null && !names.has(discKey(disc)))
      names.set(discKey(disc), disc);
  return [...names.values()];
});

/** Finishes of one disc; of all discs for "". */
export const scatterOf = (book: Book, disc: string): Answer<Scatter> =>
  attempt(() =>
    finishScatter(
      disc === "" ? book.rounds : book.rounds.filter((row) => discKey(row.disc) === discKey(disc)),
    ),
  );

/** Putts of one distance together. */
export interface PuttsAt {
  readonly distanceM: number;
  readonly made: number;
  readonly tried: number;
}

export const puttsByDistance = oncePer(({ putts }: Book): readonly PuttsAt[] => {
  const found = new Map<number, PuttsAt>();
  for (const { distanceM, made, tried } of putts) {
    const key = Math.round(distanceM * 100);
    const before = found.get(key) ?? { distanceM, made: 0, tried: 0 };
    found.set(key, { ...before, made: before.made + made, tried: before.tried + tried });
  }
  return [...found.values()].sort((one, other) => one.distanceM - other.distanceM);
});

/** Distances of the curve, m: from the basket to twice the circle. */
const CURVE_M = Array.from({ length: 38 }, (_, at) => 1.5 + at * 0.5);

export const puttingCurveOf = oncePer(({ putts }: Book): Answer<readonly LearntPutt[]> =>
  attempt(() => learnPutting(putts, CURVE_M)),
);

/** The learnt table at given distances. */
export const learntPuttsOf = oncePerPair(
  ({ putts }: Book, distancesM: readonly number[]): Answer<readonly LearntPutt[]> =>
    attempt(() => learnPutting(putts, distancesM)),
);
