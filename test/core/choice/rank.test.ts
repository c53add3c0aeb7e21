import { bestFirst, powerFor, powersOf } from "../../../src/core/choice/power";
import { planCourse } from "../../../src/core/choice/plan";
import { rankOptions } from "../../../src/core/choice/rank";
import { strokesToHoleOut } from "../../../src/core/choice/strokes";
import { conditionsOf } from "../../../src/core/flight/air";
import { windDriftM } from "../../../src/core/flight/path";
import { kindOf } from "../../../src/core/flight/polar";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { cardOf, disc, holeOf, settingsWith } from "../../support/cards";

const settings = DEFAULT_SETTINGS;
const short = disc("Sand approach", 60);
const middle = disc("Copper mid", 90);
const long = disc("Violet driver", 120);
const card = cardOf(short, middle, long);
const names = (distanceM: number, change = {}, known = settings) =>
  rankOptions(holeOf(distanceM, change), card, known).map((option) => option.disc);

describe("options", () => {
  test("one row a disc, the one that carries there first", () => {
    expect(names(90)).toHaveLength(3);
    expect(names(60)[0]).toBe("Sand approach");
    expect(names(90)[0]).toBe("Copper mid");
    expect(names(150)[0]).toBe("Violet driver");
    expect(rankOptions(holeOf(90), card, settings)[0]!.power).toBe(1);
  });

  test("the best takes what is expected from there, level and calm", () => {
    for (const distanceM of [60, 88, 120, 150]) {
      const least = Math.min(
        ...rankOptions(holeOf(distanceM), card, settings).map(({ strokes }) => strokes),
      );
      expect(least).toBeCloseTo(strokesToHoleOut(distanceM, card, settings), 2);
    }
  });

  test("finish, aim and what a throw leaves", () => {
    const biased = disc("biased", 100, {
      side: { biasRad: 0.1, scaleRad: 0.05, freedom: 6, throws: 4 },
    });
    const [option] = rankOptions(holeOf(105), cardOf(biased), settings);
    expect(option!.longM).toBeCloseTo(-5, 9);
    expect(option!.aimM).toBeCloseTo(-105 * Math.tan(0.1), 9);
    expect(option!.leavesM).toBeGreaterThan(5);
    expect(option!.leavesM).toBeLessThan(15);
  });

  test("what a throw leaves, against a plain mean over draws of known shape", () => {
    // No sideways spread to speak of and a narrow carry that is t with 30 degrees of freedom, the most on
    // a course: the mean of |t| is √(30/π)·Γ(14.5)/Γ(15) = 0.81855 scales.
    const side = { biasRad: 0, scaleRad: 1e-9, freedom: 50, throws: 9 };
    const tight = disc("tight", 100, { scale: 0.02, freedom: 1e6, side });
    const field = settingsWith({ courseSpread: 0, courseSideRad: 0 });
    const [option] = rankOptions(holeOf(100), cardOf(tight), field);
    expect(Math.abs(option!.leavesM - 2 * 0.81855)).toBeLessThan(0.02);
  });

  test("discs at home are not offered", () => {
    const home = cardOf(short, { ...middle, inBag: false });
    expect(rankOptions(holeOf(90), home, settings).map((option) => option.disc)).toEqual([
      "Sand approach",
    ]);
  });

  test("a line leaves out discs of another line, and says so when none remains", () => {
    const lined = cardOf({ ...middle, line: "Hyzer" }, { ...long, line: "anhyzer" });
    const onLine = (line: string) =>
      rankOptions(holeOf(90, { line }), lined, settings).map((option) => option.disc);
    expect(onLine(" hyzer ")).toEqual(["Copper mid"]);
    expect(onLine("")).toHaveLength(2);
    expect(() => onLine("straight")).toThrow("line 'straight'");
  });

  test("aiming for the circle takes the greatest chance, or what is left where there is none", () => {
    const circle = settingsWith({ aimFor: "circle" });
    const options = rankOptions(holeOf(85), card, circle);
    const chances = options.map(({ chance }) => chance);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    const far = rankOptions(holeOf(230), card, circle);
    expect(Math.max(...far.map(({ chance }) => chance))).toBeLessThan(0.02);
    const left = far.map(({ leavesM }) => leavesM);
    expect(left).toEqual([...left].sort((a, b) => a - b));
  });

  test("trouble never makes an option cheaper", () => {
    for (const distanceM of [60, 85, 110]) {
      const plain = rankOptions(holeOf(distanceM), card, settings);
      for (const trouble of [
        { longTroubleM: 5 },
        { longTroubleM: 20 },
        { shortTroubleM: 8 },
        { longTroubleM: 12, shortTroubleM: 12 },
      ]) {
        for (const option of rankOptions(holeOf(distanceM, trouble), card, settings)) {
          const without = plain.find((other) => other.disc === option.disc)!;
          expect(option.strokes).toBeGreaterThan(without.strokes - 0.005);
        }
      }
    }
  });

  test("trouble behind is played short of, trouble in front past", () => {
    const longM = (trouble: object) =>
      rankOptions(holeOf(85, trouble), cardOf(middle), settings)[0]!.longM;
    expect(longM({ longTroubleM: 6 })).toBeLessThan(longM({}));
    expect(longM({ shortTroubleM: 6 })).toBeGreaterThan(longM({}));
  });

  test("trouble in front that hardly a throw gets to hardly counts, and before it is room to lay up", () => {
    const strokes = (trouble: object) =>
      rankOptions(holeOf(200, trouble), card, settings)[0]!.strokes;
    expect(strokes({ shortTroubleM: 15 }) - strokes({})).toBeLessThan(0.03);
    // 40 m of trouble would catch most throws of 120 m; the answer is to stay before it, or to clear it.
    const cautious = rankOptions(holeOf(130, { shortTroubleM: 8 }), card, settings)[0]!;
    expect(Math.abs(cautious.longM + 18)).toBeGreaterThan(10);
    expect(cautious.strokes).toBeLessThan(1 + strokesToHoleOut(50, card, settings) + 0.1);
  });

  test("what goes too far is thrown from inside the edge with a penalty, and told last", () => {
    const far = disc("Violet driver", 400, { scale: 0.02, freedom: 40 });
    const options = rankOptions(holeOf(60, { longTroubleM: 6 }), cardOf(short, far), settings);
    expect(options.map((option) => option.disc)).toEqual(["Sand approach", "Violet driver"]);
    // This throw, the penalty, and what it takes from 5 m or a little more.
    expect(options[1]!.strokes).toBeGreaterThan(2 + strokesToHoleOut(5, card, settings));
    expect(options[1]!.strokes).toBeLessThan(2 + strokesToHoleOut(20, card, settings));
  });

  test.each(["strokes", "circle"] as const)(
    "by %s, where every throw ends in trouble",
    (aimFor) => {
      const pond = holeOf(25, { shortTroubleM: 5 });
      const tiny = cardOf(disc("Sand approach", 10, { softest: 0.98, scale: 0.01 }));
      const known = settingsWith({ aimFor, courseSpread: 0.01 });
      expect(() => rankOptions(pond, tiny, known)).toThrow(/out of the trouble/);
    },
  );

  test("within the circle the answer is to putt", () => {
    const [option, ...others] = rankOptions(holeOf(25 * 0.3048), card, settings);
    expect(others).toEqual([]);
    // Default table: 0.55 made from 25 ft.
    expect(option).toMatchObject({ disc: "Putt", putt: true, then: [] });
    expect(option!.chance).toBeCloseTo(0.55, 9);
    expect(option!.strokes).toBeCloseTo(1.45, 9);
  });

  test("beyond reach the throws that follow are told, until the circle", () => {
    const soft = disc("Slate putter", 60, { softest: 0.15 });
    const bag = cardOf(soft, middle, long);
    const [best] = rankOptions(holeOf(270, { riseM: 27 }), bag, settings);
    expect(best!.disc).toBe("Violet driver");
    expect(best!.then[0]!.distanceM).toBeCloseTo(-best!.longM, 9);
    expect(best!.then.length).toBeGreaterThanOrEqual(2);
    const last = best!.then.at(-1)!;
    expect(last.chance).toBeGreaterThan(0.3);
    const [reached] = rankOptions(holeOf(60), bag, settings);
    expect(reached!.then).toEqual([]);
  });

  test("aims away from trouble at one side, and from neither of two alike", () => {
    const best = (trouble: object) =>
      rankOptions(holeOf(90, trouble), cardOf(middle), settings)[0]!;
    const plain = best({});
    expect(plain.aimM).toBe(0);
    expect(best({ leftTroubleM: 6 }).aimM).toBeGreaterThan(1);
    expect(best({ rightTroubleM: 6 }).aimM).toBeLessThan(-1);
    expect(best({ leftTroubleM: 6, rightTroubleM: 6 }).aimM).toBe(0);
    expect(best({ leftTroubleM: 6 }).strokes).toBeCloseTo(best({ rightTroubleM: 6 }).strokes, 9);
    expect(best({ leftTroubleM: 300 }).strokes).toBeCloseTo(plain.strokes, 2);
    expect(best({ leftTroubleM: 6 }).strokes).toBeGreaterThan(plain.strokes);
  });

  test("a crosswind is aimed off, and half of it is doubted", () => {
    const [calm] = rankOptions(holeOf(90), cardOf(middle), settings);
    const [blown] = rankOptions(holeOf(90, { crosswindMps: 4 }), cardOf(middle), settings);
    const drift = windDriftM(90, 4, conditionsOf(settings), kindOf(middle));
    expect(drift).toBeGreaterThan(1);
    expect(blown!.aimM).toBeCloseTo(-drift, 9);
    const scaleRad = Math.hypot(middle.side.scaleRad, (0.5 * drift) / 90);
    const wider = disc("wider", 90, { side: { ...middle.side, scaleRad } });
    const [same] = rankOptions(holeOf(90), cardOf(wider), settings);
    expect(blown!.chance).toBeCloseTo(same!.chance, 9);
    expect(blown!.chance).toBeLessThan(calm!.chance);
  });

  test("a sentence where there is no answer", () => {
    expect(() => rankOptions(holeOf(90), cardOf(), settings)).toThrow("no throws");
    expect(() => rankOptions(holeOf(90, { riseM: 300 }), card, settings)).toThrow("Violet driver");
    expect(() => rankOptions(holeOf(600), card, settings)).toThrow("500 m");
  });
});

describe("an order with ties", () => {
  const item = (power: number, cost: number) => ({ power, cost });

  test("near-equals go to the power nearest smooth, then the cheaper, then the earlier", () => {
    const ranked = bestFirst(
      [item(0.85, 2.3), item(0.97, 2.304), item(0.97, 2.302), item(1, 2.306), item(1, 2.5)],
      0.005,
    );
    expect(ranked.map(({ cost }) => cost)).toEqual([2.302, 2.304, 2.3, 2.306, 2.5]);
    const [first, second] = [item(0.9, 2), item(0.9, 2)];
    expect(bestFirst([first, second], 0.005)[0]).toBe(first);
    expect(bestFirst([], 0.005)).toEqual([]);
  });
});

test("powers by hundredths, both ends included", () => {
  const powers = (softest: number, highestPower = 1) => powersOf({ softest }, { highestPower });
  expect(powers(0.95)).toEqual([0.95, 0.96, 0.97, 0.98, 0.99, 1]);
  expect(powers(0.985)).toEqual([0.985, 0.995, 1]);
  expect(powers(1)).toEqual([1]);
  expect(powers(0.8)).toHaveLength(21);
  expect(powers(0.8, 0.7)).toEqual([0.7]);
});

describe("the power for a distance", () => {
  const at = (distanceM: number) =>
    powerFor({ distanceM, riseM: 0, headwindMps: 0 }, disc("Copper mid", 100), settings);

  test("is the share of smooth that lands there", () => {
    expect(at(90)).toBeCloseTo(0.9, 12);
    expect(at(100)).toBeCloseTo(1, 12);
  });

  test("too soft and too far are said, with the share that it would take", () => {
    expect(() => at(70)).toThrow("70 %");
    expect(() => at(70)).toThrow("shorter disc");
    expect(() => at(112)).toThrow("112 %");
    expect(() => at(112)).toThrow("longer disc");
  });
});

describe("a plan", () => {
  test("says for each hole what to throw, or why not", () => {
    const holes = [
      holeOf(88, { hole: "1" }),
      holeOf(88, { hole: "2", line: "hyzer" }),
      holeOf(88, { hole: "3", riseM: 300 }),
    ];
    const plan = planCourse(
      holes,
      cardOf({ ...short, line: "flat" }, { ...middle, line: "flat" }),
      settings,
    );
    expect(plan.map(({ hole }) => hole)).toEqual(["1", "2", "3"]);
    expect(plan[0]).toMatchObject({ playsLikeM: 88, lowM: 88, highM: 88, why: null });
    expect(plan[0]!.option!.disc).toBe("Copper mid");
    expect(plan[0]!.second!.disc).toBe("Sand approach");
    expect(plan[1]).toMatchObject({ option: null, second: null, playsLikeM: 88 });
    expect(plan[1]!.why).toContain("hyzer");
    expect(plan[2]).toMatchObject({ option: null, playsLikeM: null, lowM: null, highM: null });
    expect(plan[2]!.why).toContain("Copper mid");
  });

  test("no holes, no throws", () => {
    expect(planCourse([], card, settings)).toEqual([]);
    expect(() => planCourse([holeOf(90)], cardOf(), settings)).toThrow("no throws");
  });
});
