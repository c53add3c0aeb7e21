import { ask, CellError, loadFunctions } from "../support/customFunctions";

const functions = loadFunctions();
const call = (id: string, ...args: unknown[]): unknown => ask(functions.get(id), ...args);
const LIST = [
  ["Copper mid", 301],
  ["Mint fairway", 352],
];
const LOG = [["Disc", "Carry"], ...LIST];

describe("what a cell shows for bad input", () => {
  const cases: [string, string, unknown[], string, RegExp][] = [
    [
      "text for a distance",
      "PLAYSLIKE",
      ["far"],
      "#VALUE!",
      /^distance must be a number; it is text, 'far'/,
    ],
    ["a distance of nothing", "PLAYSLIKE", [""], "#VALUE!", /^distance is missing/],
    ["a distance below zero", "BEST", [-5, LIST], "#VALUE!", /^distance must be above 0; it is -5/],
    [
      "an error cell for the rise",
      "PLAYSLIKE",
      [300, { code: "#REF!" }],
      "#VALUE!",
      /^rise .*#REF!/,
    ],
    ["TRUE for the headwind", "PLAYSLIKE", [300, 0, true], "#VALUE!", /^headwind .*TRUE/],
    [
      "a disc type that is none",
      "PLAYSLIKE",
      [300, 0, 0, "blimp"],
      "#VALUE!",
      /^type must be putter, midrange/,
    ],
    ["no throws", "SMOOTH", ["Copper mid", null], "#VALUE!", /^throws is missing/],
    ["no disc", "SMOOTH", ["", LIST], "#VALUE!", /^disc is missing/],
    ["a disc that nobody threw", "SMOOTH", ["Slate putter", LIST], "#N/A", /Slate putter/],
    ["a rank beyond the bag", "BEST", [300, LIST, null, 0, 0, 9], "#N/A", /rank 9/],
    [
      "half a rank",
      "BEST",
      [300, LIST, null, 0, 0, 1.5],
      "#VALUE!",
      /^rank must be a whole number/,
    ],
    ["an unknown setting", "AIR", [[["Moon phase", 3]]], "#VALUE!", /Moon phase/],
    ["a unit that is none", "AIR", [[["Distances in", "yd"]]], "#VALUE!", /yd/],
    ["a hole that no disc reaches", "ATPOWER", ["Copper mid", 900, LIST], "#N/A", /%/],
    [
      "a log without a carry column",
      "SMOOTH",
      [
        "Copper mid",
        [
          ["Disc", "Colour"],
          ["Copper mid", "copper"],
        ],
      ],
      "#VALUE!",
      /[Cc]arry/,
    ],
    ["a compass point that is none", "HEADWIND", [10, "up", 0], "#VALUE!", /up/],
  ];

  test.each(cases)("%s", (_name, id, args, code, sentence) => {
    const shown = call(id, ...args);
    expect(shown).toBeInstanceOf(CellError);
    expect((shown as CellError).code).toBe(code);
    expect((shown as CellError).message).toMatch(sentence);
  });
});

describe("optional arguments", () => {
  // A host sends a blank cell as null, as "" or as 0, and a single cell at times as a 1 × 1 array.
  test.each([[undefined], [null], [""], [0], [[[""]]], [[[0]]], [[[null]]]])(
    "%j is not given",
    (blank) => {
      expect(call("BEST", 300, LOG, blank, blank, blank)).toBe(call("BEST", 300, LOG));
      expect(call("PLAYSLIKE", 300, blank, blank, blank, blank)).toBe(call("PLAYSLIKE", 300));
    },
  );

  test("a single cell in an array is that cell", () =>
    expect(call("PLAYSLIKE", [[300]], [[12]])).toBe(call("PLAYSLIKE", 300, 12)));
});
