import { callsUs, storedFormula, typedFormula } from "../../src/workbook/file/cellValues";

/** Stored forms: MS-XLSX 2.2.2 (future functions); Office Add-ins documentation (`_xldudf_`). */
const PAIRS: readonly (readonly [typed: string, stored: string])[] = [
  ["=CARRY.AIR(Settings)", "_xldudf_CARRY_AIR(Settings)"],
  ["=1+CARRY.BEST(300,MyCard,,,Settings,2)", "1+_xldudf_CARRY_BEST(300,MyCard,,,Settings,2)"],
  ['=IF(A1="CARRY.AIR(","",CARRY.AIR())', 'IF(A1="CARRY.AIR(","",_xldudf_CARRY_AIR())'],
  ["='CARRY.AIR('!A1", "'CARRY.AIR('!A1"],
  ["=SUM(Throws[FILTER(])", "SUM(Throws[FILTER(])"],
  ["=SEQUENCE(3)", "_xlfn.SEQUENCE(3)"],
  ["=FILTER(A1:A3,A1:A3>0)", "_xlfn._xlws.FILTER(A1:A3,A1:A3>0)"],
  ["=MYFILTER(A1)", "MYFILTER(A1)"],
  ['="say ""CARRY.AIR("" twice"', '"say ""CARRY.AIR("" twice"'],
];

test.each(PAIRS)("%s is stored as %s", (typed, stored) => {
  expect(storedFormula(typed)).toBe(stored);
  expect(typedFormula(stored)).toBe(typed);
});

test("takes our functions in any case", () =>
  expect(storedFormula("=carry.air()")).toBe("_xldudf_CARRY_AIR()"));

test.each([
  ["=CARRY.AIR()", true],
  ["_xldudf_CARRY_AIR()", true],
  ['="CARRY.AIR()"', false],
  ["=AIR()", false],
])("%s calls us: %p", (formula, calls) => expect(callsUs(formula)).toBe(calls));
