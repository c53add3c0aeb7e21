import { discKey } from "../../../src/core/log/names";
import { dayFromIso, serialDay } from "../../../src/core/log/cell";

describe("names", () => {
  test.each([
    ["Copper mid", "  COPPER \t mid "],
    ["Ｃｏｐｐｅｒ", "copper"],
    ["Été", "ÉTÉ"],
    ["Синий драйвер", "СИНИЙ  ДРАЙВЕР"],
    ["藍 ドライバー", "藍　ﾄﾞﾗｲﾊﾞｰ"],
    ["ΣΊΣΥΦΟΣ".toLowerCase(), "Σίσυφος"],
  ])("%s is %s", (one, other) => expect(discKey(one)).toBe(discKey(other)));

  test.each([
    ["Copper mid", "Coppermid"],
    ["Copper mid", "Copper mid 2"],
  ])("%s is not %s", (one, other) => expect(discKey(one)).not.toBe(discKey(other)));

  test.each(["", "   ", "\u00a0"])("%j is no name", (name) => expect(discKey(name)).toBe(""));
});

// The platform's own calendar: Date.UTC counts from 1 January 1970, serial 25569 in spreadsheets.
describe("serial days", () => {
  test("agree with the platform's calendar from 1900 to 2200", () => {
    for (let serial = 61; serial < 110_000; serial += 7) {
      const date = new Date((serial - 25_569) * 86_400_000);
      const found = serialDay(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
      expect(found).toBe(serial);
    }
  });

  test.each([
    [2026, 2, 29],
    [2100, 2, 29],
    [2026, 4, 31],
    [2026, 13, 1],
    [2026, 0, 1],
    [2026, 1, 0],
    [1899, 12, 31],
    [10_000, 1, 1],
    [2026.5, 1, 1],
    [NaN, 1, 1],
  ])("%p-%p-%p is no day", (year, month, day) => expect(serialDay(year, month, day)).toBeNull());

  test("only year-month-day is read from text", () => {
    expect(dayFromIso(" 2026-05-12 ")).toBe(46154);
    expect(["12-05-2026", "2026/05/12", "2026-5", "", "2026-02-30"].map(dayFromIso)).toEqual(
      Array(5).fill(null),
    );
  });
});
