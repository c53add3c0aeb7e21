import { callsUs, storedFormula, typedFormula } from "../../src/workbook/file/formulaText";

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
  [
    "=STDEV.S(A1:A3)+IFNA(A1,T.INV.2T(0.1,3))",
    "_xlfn.STDEV.S(A1:A3)+_xlfn.IFNA(A1,_xlfn.T.INV.2T(0.1,3))",
  ],
  ["=LET(x,2,y,x*2,x+y)", "_xlfn.LET(_xlpm.x,2,_xlpm.y,_xlpm.x*2,_xlpm.x+_xlpm.y)"],
  ['=MAP(A1:A3,LAMBDA(x,x&"x"))+x', '_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.x,_xlpm.x&"x"))+x'],
  ["=SUM(ANCHORARRAY(A5))", "SUM(_xlfn.ANCHORARRAY(A5))"],
  ["=NETWORKDAYS.INTL(A1,A2)", "NETWORKDAYS.INTL(A1,A2)"],
  ['="say ""CARRY.AIR("" twice"', '"say ""CARRY.AIR("" twice"'],
];

test.each(PAIRS)("%s is stored as %s", (typed, stored) => {
  expect(storedFormula(typed)).toBe(stored);
  expect(typedFormula(stored)).toBe(typed);
});

test.each([
  ["=SUM(A5#)", "SUM(_xlfn.ANCHORARRAY(A5))"],
  ["=SUM('My log'!A5#)", "SUM(_xlfn.ANCHORARRAY('My log'!A5))"],
  ["=@A1:A9+1", "_xlfn.SINGLE(A1:A9)+1"],
  ["=_xlfn.LET(_xlpm.x,1,_xlpm.x)", "_xlfn.LET(_xlpm.x,1,_xlpm.x)"],
  ["=Throws[[#This Row],[Carry]]", "Throws[[#This Row],[Carry]]"],
])("%s is written into a file as %s", (typed, stored) => expect(storedFormula(typed)).toBe(stored));

test("takes our functions in any case", () =>
  expect(storedFormula("=carry.air()")).toBe("_xldudf_CARRY_AIR()"));

test.each([
  ["=CARRY.AIR()", true],
  ["_xldudf_CARRY_AIR()", true],
  ['="CARRY.AIR()"', false],
  ["=AIR()", false],
])("%s calls us: %p", (formula, calls) => expect(callsUs(formula)).toBe(calls));
