import { DEFAULT_SETTINGS } from "../../src/core/log/readSettings";
import type { Cells } from "../../src/core/types";
import { mergeThrows } from "../../src/workbook/merge";

const HEADER = ["Date", "Disc", "Carry", "Player", "Note"];
const feet = { ...DEFAULT_SETTINGS, player: "Me" };
const ours = (...rows: Cells): { log: Cells; settings: typeof feet } => ({
  log: [HEADER, ...rows],
  settings: feet,
});

test("brings a partner's own rows in under their name", () => {
  const merge = mergeThrows(
    ours(["", "Copper mid", 270, "Me", ""]),
    ours([46000, "Copper mid", 291, "", "calm"], [46000, "Mint fairway", 338, "me", ""]),
    " Partner ",
  );
  expect(merge).toMatchObject({ already: 0, leftOut: [] });
  expect(merge.add).toMatchObject([
    { Date: 46000, Disc: "Copper mid", Carry: 291, Player: "Partner", Note: "calm" },
    { Date: 46000, Disc: "Mint fairway", Carry: 338, Player: "Partner", Note: "" },
  ]);
});

test("adds nothing the second time, whatever the spelling", () => {
  const theirs = ours([46000, "copper  MID", 291, "", "Calm "], [46000, "Copper mid", 291, "", ""]);
  const merged = ours(
    [46000, "Copper mid", 291, "partner", "calm"],
    [46000, "Copper mid", 291, "Partner", ""],
  );
  expect(mergeThrows(merged, theirs, "Partner")).toEqual({ add: [], already: 2, leftOut: [] });
});

test("keeps equal throws as often as they were thrown", () => {
  const twice = ours([46000, "Copper mid", 291, "", ""], [46000, "Copper mid", 291, "", ""]);
  expect(mergeThrows(ours(), twice, "Partner").add).toHaveLength(2);
  const once = ours([46000, "Copper mid", 291, "Partner", ""]);
  expect(mergeThrows(once, twice, "Partner")).toMatchObject({ already: 1, add: [{ Carry: 291 }] });
});

test("does not take our own equal throw for the partner's", () => {
  const mine = ours([46000, "Copper mid", 291, "Me", ""]);
  const theirs = ours([46000, "Copper mid", 291, "", ""]);
  expect(mergeThrows(mine, theirs, "Partner").add).toHaveLength(1);
});

test("lists what it cannot take over, by row", () => {
  const theirs = ours(
    [46000, "Copper mid", "far", "", ""],
    [46000, "Copper mid", 291, "Guest", ""],
    [46000, "", 200, "", ""],
  );
  const { add, leftOut } = mergeThrows(ours(), theirs, "Partner");
  expect(add).toEqual([]);
  expect(leftOut.map(({ row }) => row)).toEqual([2, 3, 4]);
  expect(leftOut[1]!.reason).toContain("Guest");
});

/** 100 m is 328.08 ft, and 5 m/s is 11.18 mph: NIST SP 811 (2008), appendix B.8. */
test("brings metres and metres a second to feet and miles an hour", () => {
  const log = [
    ["Disc", "Carry", "Offline", "Headwind", "Rise"],
    ["Copper mid", 100, -3, 5, 2],
  ];
  const settings = { ...feet, distanceUnit: "m", windUnit: "m/s" } as const;
  expect(mergeThrows(ours(), { log, settings }, "Partner").add).toMatchObject([
    { Carry: 328.08, Offline: -9.84, Headwind: 11.18, Rise: 6.56 },
  ]);
});

test("asks for a name of the partner's own", () => {
  expect(() => mergeThrows(ours(), ours(), " ")).toThrow("name");
  expect(() => mergeThrows(ours(), ours(), "ME")).toThrow("is you");
});
