/** Throws are levelled in the air of the field, holes are answered in the air of the course. */
import { gaps, coverage } from "../../../src/core/bag/coverage";
import { worth } from "../../../src/core/bag/worth";
import { makeCard } from "../../../src/core/carry/card";
import { planCourse } from "../../../src/core/choice/plan";
import { rankOptions } from "../../../src/core/choice/rank";
import { strokesToHoleOut } from "../../../src/core/choice/strokes";
import { levelTargets, targetsOf } from "../../../src/core/choice/target";
import { conditionsOf } from "../../../src/core/flight/air";
import { readSettings } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import type { Cells } from "../../../src/core/types";
import { toMetres } from "../../../src/core/units";
import { cardOf, disc, holeOf, settingsWith } from "../../support/cards";

const LOG: Cells = [
  ["Disc", "Carry"],
  ["Long driver", 420],
  ["Middle", 290],
  ["Middle", 300],
  ["Short", 205],
  ["Tap", 90],
];
const feet = (distance: number): number => toMetres(distance, "ft");
const cardWith = (rows: Cells) => {
  const settings = readSettings(rows);
  return { settings, card: makeCard(readThrows(LOG, settings), null, settings) };
};
const shotAt = (distance: number) => ({ distanceM: feet(distance), riseM: 0, headwindMps: 0 });

describe.each<[string, Cells]>([
  ["Altitude 100", [["Altitude", 100]]],
  ["Temperature 60", [["Temperature", 60]]],
  [
    "both",
    [
      ["Altitude", 100],
      ["Temperature", 60],
    ],
  ],
  ["Altitude 9000", [["Altitude", 9000]]],
  ["Temperature -20", [["Temperature", -20]]],
])("with %s", (_, rows) => {
  const { settings, card } = cardWith(rows);

  test("every distance up to the longest disc has a pick", () => {
    for (let distance = 15; distance <= 420; distance += 15) {
      const [best] = rankOptions(shotAt(distance), card, settings);
      expect(best!.chance).toBeGreaterThan(0);
      expect(best!.strokes).toBeGreaterThan(1);
    }
  });

  test("strokes, plan, cover and worth have answers", () => {
    const holes = [150, 262, 340, 505].map((distance) => holeOf(feet(distance)));
    for (const { option, playsLikeM } of planCourse(holes, card, settings)) {
      expect(option).not.toBeNull();
      expect(playsLikeM).toBeGreaterThan(0);
    }
    expect(strokesToHoleOut(feet(300), card, settings)).toBeGreaterThan(2);
    for (const { chance, ideal } of coverage(card, settings, { stepM: 10 })) {
      expect(chance).toBeGreaterThan(0);
      expect(ideal).toBeGreaterThan(0);
    }
    expect(() => gaps(card, settings)).not.toThrow();
    for (const { strokes } of worth(holes, card, settings))
      expect(strokes).toBeGreaterThanOrEqual(0);
  });
});

test("a disc without an answer at one distance is left out of that distance alone", () => {
  const card = cardOf(
    disc("soft", 62, { type: "putter", softest: 0.15 }),
    disc("far", 120, { type: "distance" }),
  );
  const settings = settingsWith({});
  const ranked = (distanceM: number, riseM: number, headwindMps: number) =>
    rankOptions({ distanceM, riseM, headwindMps }, card, settings).map((option) => option.disc);
  // Into a gale a putter has no flight that gets there at all; the driver still has.
  expect(ranked(75, 0, 10)).toEqual(["far"]);
  expect(ranked(60, 0, 0)).toHaveLength(2);
});

test("a disc far too short is thrown towards the target, as slope, wind and air meet it on its way", () => {
  const row = disc("soft", 60, { type: "putter" });
  const conditions = { ...conditionsOf(settingsWith({})), densityKgM3: 1.15 };
  const target = (distanceM: number, riseM: number) =>
    targetsOf({ distanceM, riseM, headwindMps: 3 }, conditions)(row);
  const [near, far] = [target(75, 4)!, target(300, 16)!];
  expect(far.distanceM).toBe(300);
  expect(far.playsLikeM / 300).toBeCloseTo(near.playsLikeM / 75, 9);
  expect(far.playsLikeSdM / 300).toBeCloseTo(near.playsLikeSdM / 75, 9);

  const level = levelTargets(conditions);
  expect(level(row, 400)!.playsLikeM / 400).toBeCloseTo(level(row, 75)!.playsLikeM / 75, 9);
});

test("the field's air changes the card, the course's air the holes, and neither the other", () => {
  const plain = cardWith([]);
  const mountain = cardWith([["Field altitude", 5000]]);
  const course = cardWith([
    ["Altitude", 5000],
    ["Field altitude", 0],
  ]);
  const carry = ({ card }: typeof plain, name: string) =>
    Math.exp(card.rows.find((row) => row.disc === name)!.mu);
  for (const { disc: name } of plain.card.rows) {
    expect(carry(course, name)).toBeCloseTo(carry(plain, name), 9);
    expect(carry(mountain, name)).not.toBeCloseTo(carry(plain, name), 1);
  }
  const played = ({ settings }: typeof plain) =>
    planCourse([holeOf(feet(300))], plain.card, settings)[0]!.playsLikeM!;
  expect(played(mountain)).toBeCloseTo(feet(300), 9);
  expect(played(course)).not.toBeCloseTo(feet(300), 1);
});

test("where field and course share an air, a level hole at a disc's own carry asks for a smooth throw", () => {
  const { card, settings } = cardWith([
    ["Altitude", 5000],
    ["Temperature", 80],
  ]);
  for (const distance of [205, 295, 420]) {
    const option = rankOptions(
      shotAt(distance),
      card,
      settingsWith({ ...settings, aimFor: "circle" }),
    )[0]!;
    expect(option.power).toBeGreaterThanOrEqual(0.97);
  }
});
