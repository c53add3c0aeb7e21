/**
 * Remembers the latest answers by a key that says all that the answer depends on, so that a
 * sheet which recalculates with the same content works nothing out twice. When full, it
 * forgets the answer that has gone unused longest.
 *
 * @param limit Most answers kept, 1 or more.
 * @returns A function of key and maker: the answer remembered for that key, else what the
 * maker returns. When the maker throws, nothing is kept and the error goes on to the caller.
 * @example
 * const squareOf = remember<number>(100);
 * squareOf("3", () => 3 * 3) // 9
 */
export function remember<Answer>(limit: number): (key: string, make: () => Answer) => Answer {
  const answers = new Map<string, Answer>();
  return (key, make) => {
    const answer = answers.has(key) ? (answers.get(key) as Answer) : make();
    // A map keeps the order of insertion: entered again, this answer becomes the newest.
    answers.delete(key);
    answers.set(key, answer);
    if (answers.size > limit) answers.delete(answers.keys().next().value!);
    return answer;
  };
}
