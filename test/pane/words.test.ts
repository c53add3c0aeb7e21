import {
  count,
  distance,
  length,
  list,
  needNumber,
  numberIn,
  plain,
  power,
  share,
  strokes,
} from "../../src/pane/words/figures";

const bare = (text: string): string => text.replaceAll("\u00a0", " ");

test.each([
  [104.5464, "ft", "343 ft"],
  [5.79, "ft", "19 ft"],
  [104.5464, "m", "105 m"],
  [5.79, "m", "5.8 m"],
  [-6.096, "ft", "−20 ft"],
  [-0.01, "ft", "0 ft"],
  [-0.01, "m", "0.0 m"],
] as const)("%p m in %s is %s", (metres, unit, words) => {
  expect(bare(distance(metres, unit))).toBe(words);
});

test("a length is the distance without its unit", () => {
  expect(length(30.48, "ft")).toBe("100");
});

test("shares, powers and strokes read as a player says them", () => {
  expect(bare(share(0.7134))).toBe("71 %");
  expect(power(1)).toBe("smooth");
  expect(power(0.999)).toBe("smooth");
  expect(bare(power(0.86))).toBe("at 86 %");
  expect(strokes(2.4149)).toBe("2.41");
  expect(strokes(-0.001)).toBe("0.00");
  expect(plain(-1.5, 2)).toBe("−1.5");
});

test("words in a row and counts", () => {
  expect([list([]), list(["a"]), list(["a", "b"]), list(["a", "b", "c"])]).toEqual([
    "",
    "a",
    "a and b",
    "a, b and c",
  ]);
  expect([bare(count(1, "throw")), bare(count(0, "throw"))]).toEqual(["1 throw", "0 throws"]);
});

test.each([
  ["12.5", 12.5],
  ["12,5", 12.5],
  [" 301 ", 301],
  ["-6", -6],
  ["−6", -6],
  [".5", 0.5],
  ["7.", 7],
])("%p is the number %p", (text, value) => {
  expect(numberIn(text)).toEqual({ kind: "number", value });
});

test.each(["abc", "1,234", "1.2.3", "12 ft", "1e3", "--2", "=2", "∞", "٣"])(
  "%p is no clear number",
  (text) => {
    expect(numberIn(text).kind).toBe("unclear");
  },
);

test("a blank box is blank, and only that", () => {
  expect(numberIn("  ").kind).toBe("blank");
  expect(needNumber("", "Rise", 0)).toBe(0);
  expect(() => needNumber("", "Carry")).toThrow("Carry is missing.");
  expect(() => needNumber("1,234", "Carry", 0)).toThrow("Carry: type a number, such as 12.5.");
});
