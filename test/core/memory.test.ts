import { remember } from "../../src/core/memory";

describe("remember", () => {
  const spell = (word: string) => jest.fn(() => word);

  test("works an answer out once for each key", () => {
    const memory = remember<string>(2);
    const make = spell("one");
    expect([memory("1", make), memory("1", make)]).toEqual(["one", "one"]);
    expect(make).toHaveBeenCalledTimes(1);
    expect(memory("2", spell("two"))).toBe("two");
  });

  test("keeps an answer that is undefined, null or NaN", () => {
    const memory = remember<unknown>(3);
    for (const answer of [undefined, null, NaN]) {
      const make = jest.fn(() => answer);
      memory(String(answer), make);
      expect(memory(String(answer), make)).toBe(answer);
      expect(make).toHaveBeenCalledTimes(1);
    }
  });

  test("forgets the answer unused longest, and no other", () => {
    const memory = remember<string>(2);
    memory("1", spell("one"));
    memory("2", spell("two"));
    memory("1", spell("not asked"));
    memory("3", spell("three"));
    expect(memory("1", spell("again"))).toBe("one");
    expect(memory("2", spell("again"))).toBe("again");
  });

  test("keeps no more than its limit over 100,000 keys", () => {
    const memory = remember<number>(16);
    for (let key = 0; key < 100_000; key++) memory(String(key), () => key);
    const kept = Array.from({ length: 100_000 }, (_, age) => 99_999 - age).filter(
      (key) => memory(String(key), () => -1) === key,
    );
    expect(kept.length).toBeLessThanOrEqual(16);
  });

  test("keeps nothing of a maker that fails", () => {
    const memory = remember<string>(2);
    const fail = () => {
      throw new Error("no answer");
    };
    expect(() => memory("1", fail)).toThrow("no answer");
    expect(memory("1", spell("one"))).toBe("one");
  });

  test("keeps heavy answers only as far as the limit goes", () => {
    const memory = remember<string>(10, (word) => word.length);
    const isKept = (key: string): boolean => memory(key, () => "?") !== "?";
    memory("1", spell("four"));
    memory("2", spell("fives"));
    memory("3", spell("six"));
    expect(["1", "2", "3"].map(isKept)).toEqual([false, true, true]);
    memory("4", spell("heavier than all"));
    expect(isKept("2")).toBe(true);
    expect(isKept("4")).toBe(false);
  });

  test("a maker that asks for its own key is answered, and counted once", () => {
    const memory = remember<string>(1);
    expect(memory("1", () => memory("1", spell("inner")))).toBe("inner");
    expect(memory("1", spell("again"))).toBe("inner");
  });

  test("takes keys that are words of the language", () => {
    const memory = remember<string>(4);
    expect(memory("__proto__", spell("a"))).toBe("a");
    expect(memory("constructor", spell("b"))).toBe("b");
  });
});
