/** Notes as people type them on a phone. Discs are invented; so is every line. */
import { readNotes } from "../../../src/core/notes/readNotes";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import type { BagDisc } from "../../../src/core/types";

const FT = 0.3048; // NIST SP 811, exact
const bag: BagDisc[] = [
  "Slate putter",
  "Copper mid",
  "Copper mid 2",
  "Mint fairway",
  "Violet driver",
  "Sand approach",
].map((disc, index) => ({
  row: index + 2,
  disc,
  type: null,
  line: "",
  softest: null,
  inBag: true,
}));

/**
 * One throw in short: "Copper mid 301", then what else was read: "L10" or "R5" in ft, "p0.9", "off" or
 * a line of flight, "d46154" for the day, "~Mint fairway" for a suggestion, "(note)".
 */
function inShort(text: string, today: number | null = null): { rows: string[]; unread: string[] } {
  const { rows, unread } = readNotes(text, bag, DEFAULT_SETTINGS, today);
  return {
    rows: rows.map((row) => {
      const feet = (metres: number): number => Math.round((metres / FT) * 10) / 10;
      const side =
        row.offlineM === null
          ? ""
          : `${row.offlineM < 0 ? "L" : "R"}${feet(Math.abs(row.offlineM))}`;
      const parts = [
        row.disc,
        feet(row.carryM),
        side,
        row.power === 1 ? "" : `p${row.power}`,
        row.line,
        row.day === null ? "" : `d${row.day}`,
        row.suggestion === null ? "" : `~${row.suggestion}`,
        row.note === "" ? "" : `(${row.note})`,
      ];
      return parts.filter((part) => part !== "").join(" ");
    }),
    unread: unread.map(({ fromLine, text: piece }) => `${fromLine}: ${piece}`),
  };
}

const TABLE: [text: string, rows: string[], unread?: string[]][] = [
  // Several carries, several discs
  ["mint fairway 352, 344 x 290", ["Mint fairway 352", "Mint fairway 344", "Mint fairway 290 off"]],
  ["Copper mid: 301 287 315", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  ["copper mid - 301, 287", ["Copper mid 301", "Copper mid 287"]],
  ["COPPER MID 301/287/315", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  ["copper mid = 301 + 287", ["Copper mid 301", "Copper mid 287"]],
  ["copper mid 301; 287 | 315", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  ["copper mid 301. 287. 315", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  ["copper mid 301-287-315", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  ["copper mid 301 then 287 and 315", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  [
    "copper mid 301 287, mint fairway 352",
    ["Copper mid 301", "Copper mid 287", "Mint fairway 352"],
  ],
  ["copper mid 2 301 287", ["Copper mid 2 301", "Copper mid 2 287"]],
  ["copper mid 352,344", ["Copper mid 352", "Copper mid 344"]],
  ["301 copper mid", ["Copper mid 301"]],
  ["301 copper mid, 352 mint fairway", ["Copper mid 301", "Mint fairway 352"]],
  // A name before lines of carries
  ["copper mid\n301\n287 x\n\n315", ["Copper mid 301", "Copper mid 287 off", "Copper mid 315"]],
  ["copper mid\nmint fairway\n352", ["Mint fairway 352"], ["1: Copper mid"]],
  ["copper mid 301\n287", ["Copper mid 301", "Copper mid 287"]],
  // Throws that should not count
  ["copper mid 301x 287", ["Copper mid 301 off", "Copper mid 287"]],
  ["copper mid x301 287?", ["Copper mid 301 off", "Copper mid 287 off"]],
  ["copper mid 301 x, 287", ["Copper mid 301 off", "Copper mid 287"]],
  ["copper mid 301 off 287", ["Copper mid 301 off", "Copper mid 287"]],
  ["copper mid 301 287 bad", ["Copper mid 301", "Copper mid 287 off"]],
  ["copper mid 301 10 left x", ["Copper mid 301 L10 off"]],
  ["copper mid 301 ❌ 287 👎", ["Copper mid 301 off", "Copper mid 287 off"]],
  ["copper mid 344 x 290 x", ["Copper mid 344 off", "Copper mid 290 off"]],
  ["copper mid 344x 290", ["Copper mid 344 off", "Copper mid 290"]],
  ["copper mid 344 x, 290", ["Copper mid 344 off", "Copper mid 290"]],
  ["copper mid 344, x 290", ["Copper mid 344", "Copper mid 290 off"]],
  ["copper mid x 290", ["Copper mid 290 off"]],
  ["copper mid 290 x", ["Copper mid 290 off"]],
  ["copper mid 301 -10 x 287", ["Copper mid 301 L10", "Copper mid 287 off"]],
  ["copper mid 301 -10 x", ["Copper mid 301 L10 off"]],
  ["copper mid 301 x -10", ["Copper mid 301 L10 off"]],
  ["copper mid 301 (tree) x", ["Copper mid 301 off (tree)"]],
  ["copper mid 301, x, 287", ["Copper mid 301", "Copper mid 287"], ["1: x"]],
  // Units
  ["copper mid 301ft 287 ft 315'", ["Copper mid 301", "Copper mid 287", "Copper mid 315"]],
  ["copper mid 91,5 m", ["Copper mid 300.2"]],
  ["copper mid 91.5m", ["Copper mid 300.2"]],
  ["copper mid 91 92 93 m", ["Copper mid 298.6", "Copper mid 301.8", "Copper mid 305.1"]],
  ["copper mid 91,95,88 m", ["Copper mid 298.6", "Copper mid 311.7", "Copper mid 288.7"]],
  ["in metres\ncopper mid 91", ["Copper mid 298.6"]],
  ["copper mid 91,95", [], ["1: 91,95", "1: Copper mid"]],
  ["copper mid 301 yd", [], ["1: 301 yd", "1: Copper mid"]],
  // Sideways
  ["copper mid 271 10 left", ["Copper mid 271 L10"]],
  ["copper mid 301 L10 287 R5", ["Copper mid 301 L10", "Copper mid 287 R5"]],
  ["copper mid 301 10L, 287 5r", ["Copper mid 301 L10", "Copper mid 287 R5"]],
  ["copper mid 301 left 10, 287 right 5", ["Copper mid 301 L10", "Copper mid 287 R5"]],
  ["copper mid L10 301", ["Copper mid 301 L10"]],
  ["copper mid 10 left 301", ["Copper mid 301 L10"]],
  ["copper mid 301 -10 287 +5", ["Copper mid 301 L10", "Copper mid 287 R5"]],
  ["copper mid 301 10 ft left", ["Copper mid 301 L10"]],
  ["copper mid 90m 3m right", ["Copper mid 295.3 R9.8"]],
  ["copper mid 301 320 left", ["Copper mid 301", "Copper mid 320"], ["1: left"]],
  // Power, lines of flight, remarks
  ["copper mid 271 @90%", ["Copper mid 271 p0.9"]],
  ["copper mid 90% 271", ["Copper mid 271 p0.9"]],
  ["copper mid 301 hyzer, 287", ["Copper mid 301 hyzer", "Copper mid 287"]],
  ["copper mid 301 (into the wind) 287", ["Copper mid 301 (into the wind)", "Copper mid 287"]],
  ["copper mid 301 skipped, 287", ["Copper mid 301 (skipped)", "Copper mid 287"]],
  ["copper mid backhand 301 287", ["Copper mid 301 (backhand)", "Copper mid 287 (backhand)"]],
  ["copper mid 175g 301", ["Copper mid 301 (175g)"]],
  ["first throw copper mid 301", ["Copper mid 301 (first throw)"]],
  // Names that the bag does not have
  ["violet 402 415", ["violet 402 ~Violet driver", "violet 415 ~Violet driver"]],
  ["coper mid 301", ["coper mid 301 ~Copper mid"]],
  ["mint farway 352", ["mint farway 352 ~Mint fairway"]],
  ["ruby putter 210 220", ["ruby putter 210", "ruby putter 220"]],
  ["__proto__ 301", ["__proto__ 301"]],
  ["Синий драйвер 301", ["Синий драйвер 301"]],
  // Dates
  ["2026-05-12\ncopper mid 301", ["Copper mid 301 d46154"]],
  ["2026-05-12 copper mid 301", ["Copper mid 301 d46154"]],
  ["12 May 2026: copper mid 301", ["Copper mid 301 d46154"]],
  ["Tue, May 12th, 2026\ncopper mid 301", ["Copper mid 301 d46154"]],
  ["12.05.26\ncopper mid 301", ["Copper mid 301 d46154"]],
  ["5/25/2026\ncopper mid 301", ["Copper mid 301 d46167"]],
  ["25/5/2026 18:30\ncopper mid 301", ["Copper mid 301 d46167"]],
  ["5/12/2026\ncopper mid 301", ["Copper mid 301"], ["1: 5/12/2026"]],
  ["5/12\ncopper mid 301", ["Copper mid 301"], ["1: 5/12"]],
  ["31 Feb 2026\ncopper mid 301", ["Copper mid 301"], ["1: 31 Feb 2026"]],
  ["12 May\ncopper mid 301", ["Copper mid 301"], ["1: 12 May"]],
  ["2026\n12 May\ncopper mid 301", ["Copper mid 301 d46154"]],
  [
    "2026-05-10\ncopper mid 301\n12 May\ncopper mid 287",
    ["Copper mid 301 d46152", "Copper mid 287 d46154"],
  ],
  [
    "28 Dec 2025\ncopper mid 301\n3 Jan\ncopper mid 287",
    ["Copper mid 301 d46019", "Copper mid 287 d46025"],
  ],
  // Dates that do not head their line
  ["copper mid 300 31 May", ["Copper mid 300"], ["1: 31 May"]],
  ["copper mid 300, 31 May 2026", ["Copper mid 300"], ["1: 31 May 2026"]],
  ["copper mid 300 May 31st", ["Copper mid 300"], ["1: May 31st"]],
  ["copper mid 300 31.5.2026", ["Copper mid 300"], ["1: 31.5.2026"]],
  ["copper mid 300 2026-05-31", ["Copper mid 300"], ["1: 2026-05-31"]],
  ["copper mid 300 11/12/26", ["Copper mid 300"], ["1: 11/12/26"]],
  ["copper mid 300 11/12", ["Copper mid 300"], ["1: 11/12"]],
  ["copper mid 300 31 May, 10 short", ["Copper mid 300"], ["1: 31 May", "1: 10 short"]],
  ["301 copper mid 31 May", ["Copper mid 301"], ["1: 31 May"]],
  ["in metres\ncopper mid 91/95", ["Copper mid 298.6", "Copper mid 311.7"]],
  ["copper mid 91/95/88 m", ["Copper mid 298.6", "Copper mid 311.7", "Copper mid 288.7"]],
  // Misses along the line
  ["copper mid 300 10 short", ["Copper mid 300"], ["1: 10 short"]],
  ["copper mid 300, 10 ft long, 287", ["Copper mid 300", "Copper mid 287"], ["1: 10 ft long"]],
  ["copper mid 300 too short by 20", ["Copper mid 300"], ["1: too short by 20"]],
  ["copper mid 10 short", [], ["1: 10 short", "1: Copper mid"]],
  ["copper mid 287 short, 300", ["Copper mid 287 (short)", "Copper mid 300"]],
  ["copper mid 300 short 287", ["Copper mid 300 (short)", "Copper mid 287"]],
  // Phones, lists, sheets
  ["🥏 copper mid 301 🔥 287", ["Copper mid 301", "Copper mid 287"]],
  ["• Copper mid 301", ["Copper mid 301"]],
  ["1. copper mid 301\n2) mint fairway 352", ["Copper mid 301", "Mint fairway 352"]],
  ["- [x] copper mid 301", ["Copper mid 301"]],
  ["Copper mid　３０１", ["Copper mid 301"]],
  ["copper mid\t301\t-10", ["Copper mid 301 L10"]],
  ["Disc,Carry\nCopper mid,301\n\nmint fairway 352", ["Copper mid 301", "Mint fairway 352"]],
  [
    "Date\tDisc\tCarry\tLine\n2026-05-12\tCopper mid\t301,5\t\n\tmint farway\t290\toff\n\tCopper mid\tabc\t",
    ["Copper mid 301.5 d46154", "mint farway 290 off ~Mint fairway"],
    ["4: Copper mid\tabc"],
  ],
  [
    "Date;Disc;Carry\n5/12/2026;Copper mid;301\n5/25/2026;Copper mid;287",
    ["Copper mid 301 d46154", "Copper mid 287 d46167"],
  ],
  // Not understood, and said so
  ["301", [], ["1: 301"]],
  ["x", [], ["1: x"]],
  ["windy today\ncopper mid 301", ["Copper mid 301"], ["1: windy today"]],
  ["copper mid 301, mint fairway", ["Copper mid 301"], ["1: Mint fairway"]],
  ["copper mid 300-310", [], ["1: 300-310", "1: Copper mid"]],
  ["copper mid 301 5mph headwind", ["Copper mid 301"], ["1: 5mph headwind"]],
  ["copper mid 301 x2", ["Copper mid 301"], ["1: x2"]],
  ["copper mid 301 left", ["Copper mid 301"], ["1: left"]],
  ["copper mid 3 throws", [], ["1: 3", "1: throws", "1: Copper mid"]],
  ["copper mid 46154", [], ["1: 46154", "1: Copper mid"]],
];

test("the table has at least 60 lines", () => expect(TABLE.length).toBeGreaterThanOrEqual(60));

test.each(TABLE)("%j", (text, rows, unread = []) => {
  expect(inShort(text)).toEqual({ rows, unread });
});

describe("around the lines", () => {
  test.each(["", "  \n\t\n", "🥏🔥"])("%j is nothing", (text) => {
    expect(inShort(text)).toEqual({ rows: [], unread: [] });
  });

  test("today tells the year of a date: the latest such day that is not to come", () => {
    expect(inShort("12 May\ncopper mid 301", 46160).rows).toEqual(["Copper mid 301 d46154"]);
    expect(inShort("12 May\ncopper mid 301", 46150).rows).toEqual(["Copper mid 301 d45789"]);
  });

  test("rows and unread pieces know their line, whatever ends the lines", () => {
    const { rows, unread } = readNotes(
      "copper mid 301\r\n\r\n5/12/2026\rmint fairway 352",
      bag,
      DEFAULT_SETTINGS,
    );
    expect(rows.map(({ fromLine }) => fromLine)).toEqual([1, 4]);
    expect(unread).toEqual([
      { fromLine: 3, text: "5/12/2026", reason: "Day or month first? Write it as year-month-day." },
    ]);
  });

  test("distances are in the unit of the settings", () => {
    const { rows } = readNotes("copper mid 91", bag, { ...DEFAULT_SETTINGS, distanceUnit: "m" });
    expect(rows[0]?.carryM).toBe(91);
  });

  test("without a bag names stay as they are written", () => {
    const { rows } = readNotes("Ruby putter 210\ncoper mid 301 287", [], DEFAULT_SETTINGS);
    expect(rows.map(({ disc, suggestion }) => [disc, suggestion])).toEqual([
      ["Ruby putter", null],
      ["coper mid", null],
      ["coper mid", null],
    ]);
  });

  test("names with signs of pattern language are names", () => {
    const odd = [
      { row: 2, disc: "C++ (v2) [.*]", type: null, line: "", softest: null, inBag: true },
    ];
    expect(readNotes("c++ (V2) [.*] 301", odd, DEFAULT_SETTINGS).rows[0]?.disc).toBe(
      "C++ (v2) [.*]",
    );
  });
});

describe("what the rule alone tells", () => {
  const said = (text: string): (string | null)[] =>
    readNotes(text, bag, DEFAULT_SETTINGS).rows.map(({ readAs }) => readAs);

  test("of an x between two carries is said in words, at the carry it marks", () => {
    const words = "The x between 344 and 290 marks 290; for 344 write 344x.";
    expect(said("mint fairway 352, 344 x 290")).toEqual([null, null, words]);
    expect(said("mint fairway 344 10 left x 290")).toEqual([null, words]);
    expect(said("mint fairway 344 ?? 290")).toEqual([
      null,
      "The ? between 344 and 290 marks 290; for 344 write 344?.",
    ]);
  });

  test.each(["344x 290", "344 x, 290", "344, x 290", "344 x 290 x", "344 off 290"])(
    "%s needs no words",
    (text) => expect(said(`mint fairway ${text}`)).toEqual([null, null]),
  );
});

describe("a throw whose date was not read", () => {
  const doubts = (text: string): boolean[] =>
    readNotes(text, bag, DEFAULT_SETTINGS).rows.map(({ doubt }) => doubt !== null);

  test.each([
    ["copper mid 300 31 May\nmint fairway 352", [true, false]],
    [
      "5/12/2026\ncopper mid 300\nmint fairway 352\n2026-05-13\nmint fairway 344",
      [true, true, false],
    ],
    ["copper mid 31 May\n300\n301", [true, true]],
    ["copper mid 300", [false]],
  ])("%j", (text, expected) => expect(doubts(text)).toEqual(expected));
});
