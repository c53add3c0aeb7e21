/** Days counted from 30 December 1899 with Python's datetime. */
import { daysInColumn, isTwofold } from "../../../src/core/notes/noteDate";

const JAN_11 = 46033; // 2026-01-11
const NOV_1 = 46327; // 2026-11-01
const NOV_13 = 46339; // 2026-11-13
const DEC_31 = 46387; // 2026-12-31

test.each([
  ["points have the day first", ["01.11.2026", "1.11.26"], [NOV_1, NOV_1]],
  ["the year first", ["2026-11-01", "2026/11/1", "2026.11.01"], [NOV_1, NOV_1, NOV_1]],
  ["months by name", ["1 Nov 2026", "Nov 1, 2026"], [NOV_1, NOV_1]],
  ["a second number above 12", ["11/1/2026", "11/13/2026"], [NOV_1, NOV_13]],
  ["a first number above 12", ["11/1/2026", "31/12/2026"], [JAN_11, DEC_31]],
  ["dashes", ["11-1-2026", "31-12-2026"], [JAN_11, DEC_31]],
  ["spaces and times", [" 11/1/2026 09:30", "11/13/2026"], [NOV_1, NOV_13]],
  ["nothing above 12", ["11/1/2026", "1/11/2026", "5/5/2026"], [null, null, 46147]],
  ["a contradiction", ["11/1/2026", "31/12/2026", "11/13/2026"], [null, DEC_31, NOV_13]],
  ["a year of two digits", ["25/12/26", "26/11/01", "11/13/26"], [null, null, null]],
  ["no such day", ["31/02/2026", "11/1/2026"], [null, JAN_11]],
  ["no date", ["", "soon", "1/11", "12 May", "2026-11-01 x", "46327"], Array(6).fill(null)],
  ["nothing", [], []],
] as [string, string[], (number | null)[]][])("%s", (_, texts, days) => {
  expect(daysInColumn(Object.freeze(texts))).toEqual(days);
});

test.each([
  ["11/1/2026", true],
  ["1-11-2026", true],
  ["5/5/2026", false],
  ["31/12/2026", false],
  ["01.11.2026", false],
  ["soon", false],
])("%s in two ways: %s", (text, expected) => expect(isTwofold(text)).toBe(expected));
