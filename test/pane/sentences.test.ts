import {
  aimSentence,
  doubtSentence,
  driftSentence,
  oddWindSentence,
  pickOf,
  pickSentence,
  unfitSentence,
  holeBeside,
  thenSentence,
  whySentence,
} from "../../src/pane/hole/model";
import { DEFAULT_SETTINGS } from "../../src/core/log/readSettings";
import type { Hole, Option } from "../../src/core/types";
import { toMetres } from "../../src/core/units";

const feet = (value: number): number => toMetres(value, "ft");
const option = (part: Partial<Option>): Option => ({
  disc: "Copper mid",
  putt: false,
  power: 1,
  playsLikeM: feet(300),
  chance: 0.713,
  leavesM: feet(19),
  strokes: 2.4,
  longM: 0,
  aimM: 0,
  then: [],
  ...part,
});
const bare = (text: string): string => text.replaceAll("\u00a0", " ");

test("the pick, then what it does, then the second choice", () => {
  const options = [option({}), option({ disc: "Mint fairway", power: 0.86 })];
  expect(bare(`${pickOf(options[0]!)}. ${pickSentence(options, DEFAULT_SETTINGS)}`)).toBe(
    "Copper mid, smooth. 71 % in the circle, leaves 19 ft. Second: Mint fairway at 86 %.",
  );
  expect(bare(pickSentence([option({})], DEFAULT_SETTINGS))).toBe(
    "71 % in the circle, leaves 19 ft.",
  );
  expect(pickSentence([], DEFAULT_SETTINGS)).toBe("");
});

test("why it plays as it does names only what matters", () => {
  const parts = { distanceM: 90, slopeM: feet(42), windM: feet(-3), airM: 0.01, totalM: 100 };
  expect(bare(whySentence(parts, DEFAULT_SETTINGS))).toBe(
    "42 ft more for the slope and 3 ft less for the wind.",
  );
  expect(whySentence({ ...parts, slopeM: 0, windM: 0 }, DEFAULT_SETTINGS)).toContain("add nothing");
});

test("a best disc that does not get there is said not to", () => {
  const short = option({ power: 1, longM: feet(-162), chance: 0, leavesM: feet(166) });
  expect(bare(pickSentence([short], DEFAULT_SETTINGS))).toBe(
    "Your longest smooth throw stops 162 ft short. It leaves 166 ft.",
  );
});

test("no pick is called the only one that misses while others get there", () => {
  const short = option({ power: 1, longM: feet(-62), chance: 0, leavesM: feet(66) });
  expect(bare(pickSentence([short, option({})], DEFAULT_SETTINGS))).toBe(
    "Stops 62 ft short, and still costs the fewest strokes. It leaves 66 ft.",
  );
});

test("an odd wind and a wide doubt are explained, usual ones are not", () => {
  const parts = { distanceM: 30, slopeM: 0, windM: -1, airM: 0, totalM: 29 };
  expect(oddWindSentence(parts, 3)).toContain("floats");
  expect(oddWindSentence(parts, -3)).toBe("");
  expect(oddWindSentence({ ...parts, windM: 1 }, -3)).toContain("less lift");
  expect(oddWindSentence({ ...parts, windM: 0.01 }, -3)).toBe("");
  expect(doubtSentence({ lowM: 80, highM: 101 }, DEFAULT_SETTINGS)).toContain("wider");
  expect(doubtSentence({ lowM: 80, highM: 99 }, DEFAULT_SETTINGS)).toBe("");
});

test("aim and drift say the side in words", () => {
  expect(bare(aimSentence(option({ aimM: feet(-8) }), DEFAULT_SETTINGS))).toBe(
    "Aim 8 ft left of the target.",
  );
  expect(aimSentence(option({ aimM: 0.2 }), DEFAULT_SETTINGS)).toBe("");
  expect(bare(driftSentence(feet(12), DEFAULT_SETTINGS))).toBe("The wind carries it 12 ft right.");
});

test("a disc that stops short at its hardest, or flies past at its softest, is said to be unfit", () => {
  const words = (part: Partial<Option>) => bare(unfitSentence(option(part), DEFAULT_SETTINGS));
  expect(words({ power: 1, longM: feet(-60) })).toBe("even smooth it stops 60 ft short");
  expect(words({ power: 0.8, longM: feet(60) })).toBe("even at 80 % it goes 60 ft past");
  expect(words({ power: 0.9, longM: feet(-60) })).toBe("");
  expect(words({ power: 1, longM: feet(-20) })).toBe("");
});

test("a hole beyond reach is a plan of throws, never a chance of nothing", () => {
  const next = { disc: "Mint fairway", power: 0.9, distanceM: feet(210), chance: 0.62 };
  const first = option({ longM: feet(-210), chance: 0, leavesM: feet(212), then: [next] });
  const said = bare(pickSentence([first], DEFAULT_SETTINGS));
  expect(said).toBe("Played with 2 throws: this one leaves 212 ft.");
  expect(bare(thenSentence(next, DEFAULT_SETTINGS))).toBe(
    "Mint fairway, at 90 %, from 210 ft: 62 % in the circle.",
  );
});

test("inside the circle the chance is that of the putt", () => {
  const putt = option({ disc: "Putt", putt: true, chance: 0.82, leavesM: 0 });
  expect(bare(pickSentence([putt], DEFAULT_SETTINGS))).toBe("You hole 82 % of putts from here.");
});

test("previous and next follow the course, and end with it", () => {
  const holes = [{ row: 2 }, { row: 3 }] as Hole[];
  expect(holeBeside(holes, "2", 1)?.row).toBe(3);
  expect(holeBeside(holes, "3", -1)?.row).toBe(2);
  expect([holeBeside(holes, "3", 1), holeBeside(holes, "", 1)]).toEqual([null, null]);
});
