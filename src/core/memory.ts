interface Kept<Answer> {
  readonly answer: Answer;
  readonly weight: number;
}

/**
 * Remembers the latest answers by a key that says all that the answer depends on, so that a
 * sheet which recalculates with the same content works nothing out twice. When full, it
 * forgets the answers that have gone unused longest.
 *
 * @param limit Most weight kept, 1 or more; the number of answers where all weigh 1.
 * @param weigh What an answer weighs, 1 or more: say rows held. One that outweighs the limit is
 * not kept.
 * @returns A function of key and maker: the remembered answer for that key, or else what
 * `make` returns. When `make` throws, nothing is kept and the error goes on to the caller.
 * @example
 * const squareOf = remember<number>(100);
 * squareOf("3", () => 3 * 3) // 9
 */
export function remember<Answer>(
  limit: number,
  weigh: (answer: Answer) => number = () => 1,
): <Made extends Answer>(key: string, make: () => Made) => Made {
  const kept = new Map<string, Kept<Answer>>();
  let weight = 0;

  const forget = (key: string): void => {
    weight -= kept.get(key)?.weight ?? 0;
    kept.delete(key);
  };
  const keep = (key: string, entry: Kept<Answer>): void => {
    kept.set(key, entry);
    weight += entry.weight;
  };

  return <Made extends Answer>(key: string, make: () => Made): Made => {
    const known = kept.get(key) as Kept<Made> | undefined;
    if (known) {
      // A map iterates by time of insertion: entered again, the answer becomes the newest.
      kept.delete(key);
      kept.set(key, known);
      return known.answer;
    }
    const answer = make();
    const entry = { answer, weight: weigh(answer) };
    forget(key);
    if (entry.weight > limit) return answer;
    keep(key, entry);
    for (const oldest of kept.keys()) {
      if (weight <= limit) break;
      forget(oldest);
    }
    return answer;
  };
}
