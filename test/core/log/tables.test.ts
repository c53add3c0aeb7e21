import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readBag } from "../../../src/core/log/readBag";
import { readCourse } from "../../../src/core/log/readCourse";
import { readRounds } from "../../../src/core/log/readRounds";

const FT = 0.3048; // NIST SP 811, exact

describe("the bag", () => {
  test("types by the trade's words, other words not known; in the bag unless it says no", () => {
    const bag = readBag([
      ["In bag", "disc", "TYPE", "Line", "Weight"],
      ["", "Copper  mid", "Mid-range", "straight", 178],
      ["No", "Violet driver", "distance driver", "", ""],
      [false, "Slate putter", "soft", "", ""],
      [0, "Sand approach", { error: "#N/A" }, 0, ""],
      ["yes", "", "putter", "", ""],
      ["no", "COPPER MID", "putter", "", ""],
    ]);
    expect(bag).toEqual([
      {
        row: 2,
        disc: "Copper mid",
        type: "midrange",
        line: "straight",
        softest: null,
        inBag: true,
      },
      { row: 3, disc: "Violet driver", type: "distance", line: "", softest: null, inBag: false },
      { row: 4, disc: "Slate putter", type: null, line: "", softest: null, inBag: false },
      { row: 5, disc: "Sand approach", type: null, line: "", softest: null, inBag: true },
    ]);
  });

  test("the softest throw is a share of smooth, or not known", () => {
    const softest = (cell: unknown) =>
      readBag([
        ["Disc", "Softest"],
        ["Copper mid", cell],
      ])[0]!.softest;
    expect([0.4, "", 0, null].map(softest)).toEqual([0.4, null, null, null]);
    expect(() => softest("soft")).toThrow("Row 2: softest is text, 'soft'");
    expect(() => softest(40)).toThrow("Row 2: power is 40");
  });

  test("blank is empty; without a Disc column it is refused", () => {
    expect(readBag([])).toEqual([]);
    expect(readBag([["", null]])).toEqual([]);
    expect(() => readBag([["Type"], ["putter"]])).toThrow("The bag has no Disc column");
  });
});

describe("the course", () => {
  const header = [
    "Hole",
    "Par",
    "Distance",
    "Rise",
    "Headwind",
    "Long trouble",
    "Short trouble",
    "Line",
  ];

  test("one hole a row; rows without a distance are not filled in yet", () => {
    const holes = readCourse(
      [
        header,
        [1, 3, 300, -12, 5, 40, "", "hyzer"],
        ["", "", "", ""],
        ["", "", 250, "", "", 0, 30, ""],
      ],
      DEFAULT_SETTINGS,
    );
    expect(holes).toEqual([
      {
        row: 2,
        course: "",
        hole: "1",
        par: 3,
        distanceM: 300 * FT,
        riseM: -12 * FT,
        headwindMps: 5 * 0.44704,
        longTroubleM: 40 * FT,
        shortTroubleM: null,
        leftTroubleM: null,
        rightTroubleM: null,
        bearingDegrees: null,
        crosswindMps: 0,
        line: "hyzer",
        note: "",
      },
      expect.objectContaining({ row: 4, hole: "2", par: null, riseM: 0, shortTroubleM: 30 * FT }),
    ]);
  });

  test("bearing and trouble at the sides; a blank headwind comes from the wind of the round", () => {
    const settings = { ...DEFAULT_SETTINGS, windMps: 4, windFromDegrees: 270 };
    const read = (...rows: unknown[][]) =>
      readCourse(
        [["Course", "Distance", "Headwind", "Bearing", "Left trouble", "Right trouble"], ...rows],
        settings,
      );
    const [west, north, own, plain] = read(
      ["Home", 300, "", "W", 20, 0],
      ["Home", 300, "", 0, "", 25],
      ["Home", 300, 5, 270, "", ""],
      ["", 300, "", "", "", ""],
    );
    expect(west).toMatchObject({ course: "Home", leftTroubleM: 20 * FT, rightTroubleM: null });
    expect(west!.headwindMps).toBeCloseTo(4, 12);
    expect(west!.crosswindMps).toBeCloseTo(0, 12);
    // A wind from the west blows from the left over a throw to the north.
    expect(north!.headwindMps).toBeCloseTo(0, 12);
    expect(north!.crosswindMps).toBeCloseTo(4, 12);
    expect(own).toMatchObject({ bearingDegrees: 270, headwindMps: 5 * 0.44704, crosswindMps: 0 });
    expect(plain).toMatchObject({ bearingDegrees: null, headwindMps: 0, crosswindMps: 0 });
    expect(() => read(["", 300, "", "upwards"])).toThrow("Row 2: bearing must be degrees");
  });

  test.each([
    [["1", 3, "3OO"], "Row 2: distance is text, '3OO'. Type it as a number."],
    [["1", 3, -300], "Row 2: distance cannot be below 0."],
    [["1", 3, 300, { error: "#REF!" }], "Row 2: rise is an error, #REF!"],
    [["1", 3, 300, 0, 0, -5], "Row 2: long trouble cannot be below 0."],
  ])("%j stops the reading", (row, message) => {
    expect(() => readCourse([header, row], DEFAULT_SETTINGS)).toThrow(message);
  });

  test("needs a Distance column", () => {
    expect(() => readCourse([["Hole"], [1]], DEFAULT_SETTINGS)).toThrow("no Distance column");
    expect(() => readCourse([], DEFAULT_SETTINGS)).toThrow("no Distance column");
  });
});

describe("the rounds", () => {
  const header = ["Disc", "Distance", "Finish", "Power", "Note"];

  test("filled rows only; a finish of 0 is on the target", () => {
    const rounds = readRounds(
      [
        header,
        ["Copper mid", 300, -12, "", ""],
        ["Copper mid", 280, 0, 0.9, ""],
        ["Copper mid", 280, "", "", "not thrown"],
        ["", 280, 5, "", ""],
      ],
      DEFAULT_SETTINGS,
    );
    expect(rounds.map(({ row, finishM, power }) => [row, finishM! / FT, power])).toEqual([
      [2, -12, 1],
      [3, 0, 0.9],
    ]);
  });

  test("where blanks come as 0, a finish of 0 is a blank", () => {
    const rounds = readRounds([header, ["Copper mid", 300, 0, 0, 0]], DEFAULT_SETTINGS);
    expect(rounds).toEqual([]);
  });

  test.each([
    [["Copper mid", 300, "short", "", ""], "Row 2: finish is text, 'short'"],
    [["Copper mid", 300, 1e308, "", ""], "Row 2: finish is 1e+308, farther off than any throw"],
    [["Copper mid", 300, 5, 95, ""], "Row 2: power is 95"],
  ])("%j stops the reading", (row, message) => {
    expect(() => readRounds([header, row], DEFAULT_SETTINGS)).toThrow(message);
  });

  test.each(["Disc", "Distance", "Finish"])("needs a %s column", (missing) => {
    const rest = header.map((name) => (name === missing ? "Else" : name));
    expect(() => readRounds([rest], DEFAULT_SETTINGS)).toThrow(`no ${missing} column`);
  });
});
