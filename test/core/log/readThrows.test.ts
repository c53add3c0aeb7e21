import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import type { Settings } from "../../../src/core/types";

const HEADER = ["Date", "Disc", "Carry", "Offline", "Power", "Line", "Headwind", "Rise", "Player"];
const FT = 0.3048; // NIST SP 811, exact
const read = (cells: unknown[][], settings: Settings = DEFAULT_SETTINGS) =>
  readThrows(cells, settings);
const reasons = (...rows: unknown[][]): string[] =>
  read([HEADER, ...rows]).leftOut.map(({ reason }) => reason);

describe("a row of the log", () => {
  test("in SI, with every column", () => {
    const { throws, leftOut } = read([
      [...HEADER, "Note"],
      [46154, " Copper mid ", 301, -10, 0.9, "hyzer", 5, 12, "Ana", "new disc"],
    ]);
    expect(leftOut).toEqual([]);
    expect(throws).toEqual([
      {
        row: 2,
        disc: "Copper mid",
        carryM: 301 * FT,
        offlineM: -10 * FT,
        power: 0.9,
        line: "hyzer",
        headwindMps: 5 * 0.44704,
        riseM: 12 * FT,
        player: "Ana",
        day: 46154,
        note: "new disc",
      },
    ]);
  });

  test("blanks: no date, offline not noted, smooth, level, calm", () => {
    for (const blank of ["", null, undefined, " "]) {
      const { throws } = read([
        HEADER,
        [blank, "Copper mid", 301, blank, blank, blank, blank, blank],
      ]);
      expect(throws).toEqual([
        expect.objectContaining({ day: null, offlineM: null, power: 1, riseM: 0, headwindMps: 0 }),
      ]);
    }
  });

  test("columns in any order and case, by other words, with units, among unknown ones", () => {
    const { throws } = read([
      ["Weather", "DISTANCE (m)", "Wind (m/s)", "disc  name", "day"],
      [{ error: "#REF!" }, 90, 3, "Copper mid", 46154],
    ]);
    expect(throws[0]).toMatchObject({ carryM: 90, headwindMps: 3, disc: "Copper mid", day: 46154 });
  });

  test("cells as hosts send them: rich values, one-cell arrays, names as numbers", () => {
    const { throws } = read([
      ["Disc", "Carry"],
      [[["Copper mid"]], [[301]]],
      [
        { basicType: "String", basicValue: "Copper mid" },
        { basicType: "Double", basicValue: 287 },
      ],
      [7, 250],
    ]);
    expect(throws.map(({ disc, carryM }) => [disc, Math.round(carryM / FT)])).toEqual([
      ["Copper mid", 301],
      ["Copper mid", 287],
      ["7", 250],
    ]);
  });

  test("a date as ISO 8601 text is that day", () => {
    expect(read([HEADER, ["2026-05-12", "Copper mid", 301]]).throws[0]?.day).toBe(46154);
  });

  test("an error in the note, or in the player where none is chosen, does no harm", () => {
    const cells = [
      ["Disc", "Carry", "Note", "Player"],
      ["Copper mid", 301, { error: "#N/A" }, { error: "#N/A" }],
    ];
    expect(read(cells).throws).toHaveLength(1);
    expect(read(cells, { ...DEFAULT_SETTINGS, player: "Ana" }).leftOut[0]?.reason).toBe(
      "Row 2: player is an error, #N/A",
    );
  });
});

describe("a row that does not count says why", () => {
  test.each([
    [["", "Copper mid", "301"], "Row 2: carry is text, '301'. Type it as a number."],
    [["", "Copper mid", "3,5"], "Row 2: carry is text, '3,5'. Type it as a number."],
    [["", "Copper mid", ""], "Row 2: carry is blank."],
    [["", "Copper mid", { error: "#REF!" }], "Row 2: carry is an error, #REF!"],
    [["", "Copper mid", { code: "#DIV/0!", message: "" }], "Row 2: carry is an error, #DIV/0!"],
    [["", "Copper mid", NaN], "Row 2: carry is an error, #NUM!"],
    [["", "Copper mid", true], "Row 2: carry is TRUE. Type it as a number."],
    [["", "Copper mid", 0], "Row 2: carry must be above 0; it is 0."],
    [["", "Copper mid", -5], "Row 2: carry must be above 0; it is -5."],
    [["", "Copper mid", 3010], /Row 2: carry is 3010, farther than any throw/],
    [["", "", 301], "Row 2: disc is blank."],
    [["", { error: "#N/A" }, 301], "Row 2: disc is an error, #N/A"],
    [["12/5/26", "Copper mid", 301], /Row 2: the date is text, '12\/5\/26'. Type it again/],
    [[-4, "Copper mid", 301], /Row 2: the date is -4/],
    [[{ error: "#VALUE!" }, "Copper mid", 301], "Row 2: date is an error, #VALUE!"],
    [["", "Copper mid", 301, "10 left"], "Row 2: offline is text, '10 left'. Type it as a number."],
    [["", "Copper mid", 301, "", 90], /Row 2: power is 90. Give it as a share/],
    [["", "Copper mid", 301, "", -0.9], /Row 2: power is -0.9/],
    [["", "Copper mid", 301, "", "90%"], "Row 2: power is text, '90%'. Type it as a number."],
    [["", "Copper mid", 301, "", "", { error: "#REF!" }], "Row 2: line is an error, #REF!"],
    [
      ["", "Copper mid", 301, "", "", "", "SW"],
      "Row 2: headwind is text, 'SW'. Type it as a number.",
    ],
    [
      ["", "Copper mid", 301, "", "", "", "", "up"],
      "Row 2: rise is text, 'up'. Type it as a number.",
    ],
  ] as [unknown[], string | RegExp][])("%j", (row, reason) => {
    expect(reasons(row)).toEqual([
      typeof reason === "string" ? reason : expect.stringMatching(reason),
    ]);
  });

  test.each(["off", " OFF ", "Off  line", "off-line", "bad", "x", "X", "?"])(
    "a line of '%s' marks it off, whatever its carry",
    (line) => {
      expect(reasons(["", "Copper mid", "", "", "", line])).toEqual(["Row 2: marked off."]);
    },
  );

  test.each(["hyzer", "office", "straight", ""])("a line of '%s' does not", (line) => {
    expect(reasons(["", "Copper mid", 301, "", "", line])).toEqual([]);
  });

  test("another player's row, where a player is chosen; a blank player is the chosen one", () => {
    const cells = [
      ["Disc", "Carry", "Player"],
      ["Copper mid", 301, "ANA "],
      ["Copper mid", 302, "Ben"],
      ["Copper mid", 303, ""],
    ];
    const { throws, leftOut } = read(cells, { ...DEFAULT_SETTINGS, player: "Ana" });
    expect(throws.map(({ row }) => row)).toEqual([2, 4]);
    expect(leftOut).toEqual([
      { row: 3, disc: "Copper mid", reason: "Row 3: thrown by Ben.", otherPlayer: "Ben" },
    ]);
  });

  test("another player's row is theirs before it is marked off", () => {
    const cells = [
      ["Disc", "Carry", "Player", "Line"],
      ["Copper mid", 302, "Ben", "off"],
    ];
    expect(read(cells, { ...DEFAULT_SETTINGS, player: "Ana" }).leftOut[0]?.otherPlayer).toBe("Ben");
  });

  test("one bad row never spoils the rest", () => {
    const { throws, leftOut } = read([
      ["Disc", "Carry"],
      ["Copper mid", 301],
      ["Copper mid", "abc"],
      ["", ""],
      ["Copper mid", 287],
    ]);
    expect(throws.map(({ row }) => row)).toEqual([2, 5]);
    expect(leftOut.map(({ row }) => row)).toEqual([3]);
  });
});

describe("throws of several players", () => {
  const logOf = (...players: string[]): unknown[][] => [
    ["Disc", "Carry", "Player", "Line"],
    ...players.map((player) => ["Copper mid", 301, player, ""]),
  ];
  const CHOOSE = "Choose one by the setting Player: write the name beside it.";

  test.each([
    [["Ana", "", "Ben", "ana "], "Ana and Ben"],
    [["Ben", "Ana", "Cem"], "Ben, Ana and Cem"],
    [["A", "B", "C", "D", "E"], "A, B, C, D and E"],
    [["A", "B", "C", "D", "E", "F", "G"], "A, B, C, D, E and others"],
  ])("%j without a choice are refused by name", (players, names) => {
    const message = `The log holds throws of ${names}. ${CHOOSE}`;
    expect(() => read(logOf(...players))).toThrow(
      expect.objectContaining({ code: "unusable", message }),
    );
  });

  test("one name, in whatever spelling, beside rows without is read", () => {
    expect(read(logOf("Ana", "", " ANA")).throws).toHaveLength(3);
  });

  test("a name that only rows that do not count bear is no second player", () => {
    const cells = [...logOf("Ana"), ["Copper mid", 280, "Ben", "off"]];
    expect(read(cells).throws).toHaveLength(1);
  });

  test("a choice, or asking for everyone, reads them", () => {
    const cells = logOf("Ana", "Ben", "");
    const settings = { ...DEFAULT_SETTINGS, player: "ben" };
    expect(read(cells, settings).throws.map(({ row }) => row)).toEqual([3, 4]);
    for (const everyone of [settings, DEFAULT_SETTINGS])
      expect(readThrows(cells, everyone, "everyone").throws.map(({ player }) => player)).toEqual([
        "Ana",
        "Ben",
        "",
      ]);
  });
});

describe("a host that sends blanks as 0", () => {
  test("rows of zeros are blank, and an offline of 0 was not noted", () => {
    const { throws, leftOut } = read([
      HEADER,
      [0, "Copper mid", 301, 0, 0, 0, 0, 0, 0],
      [0, 0, 0, 0, 0, 0, 0, 0, 0],
    ]);
    expect(leftOut).toEqual([]);
    expect(throws).toEqual([
      expect.objectContaining({ offlineM: null, day: null, power: 1, line: "" }),
    ]);
  });

  test("elsewhere an offline of 0 is dead straight", () => {
    const { throws } = read([HEADER, ["", "Copper mid", 301, 0, "", "", "", "", ""]]);
    expect(throws[0]?.offlineM).toBe(0);
  });
});

describe("the range as a whole", () => {
  test.each([
    [
      [
        ["Copper mid", 301],
        ["Mint fairway", 352],
      ],
    ],
    [
      [
        ["", ""],
        ["Copper mid", 301],
      ],
    ],
  ])("a bare list needs no header: %j", (cells) => {
    const { throws } = read(cells);
    expect(throws.map(({ row }) => cells[row - 1]?.[0])).toEqual(throws.map(({ disc }) => disc));
    expect(throws.length).toBeGreaterThan(0);
  });

  test.each([[[]], [[["", null]]], [[["Disc", "Carry"]]]])("%j is an empty log", (cells) => {
    expect(read(cells)).toEqual({ throws: [], leftOut: [] });
  });

  test.each([
    [
      [
        ["Date", "Carry"],
        [46000, 301],
      ],
      /no Disc column/,
    ],
    [
      [
        ["Disc", "Length"],
        ["Copper mid", 301],
      ],
      /no Carry column/,
    ],
    [[["My throws of May"], ["Copper mid"]], /no Disc column/],
    [
      [
        ["Disc", "Carry", "Low", "High"],
        ["Copper mid", 301, 280, 320],
      ],
      /needs the throw log/,
    ],
  ])("%j is refused as a whole", (cells, message) => {
    expect(() => read(cells)).toThrow(message);
  });

  test("names that are words of the language are names", () => {
    const names = ["__proto__", "constructor", "toString", "hasOwnProperty"];
    const { throws } = read([["Disc", "Carry"], ...names.map((name) => [name, 301])]);
    expect(throws.map(({ disc }) => disc)).toEqual(names);
  });
});
