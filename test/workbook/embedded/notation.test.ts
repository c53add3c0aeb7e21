import { toEngine } from "../../../src/workbook/embedded/engine";

/**
 * Short and full forms of structured references and the spill operator, as Microsoft's support pages
 * "Using structured references with Excel tables" and "Spilled range operator" describe them.
 */
const throws = { name: "Throws", headers: ["Disc", "Carry", "Long name", "50% [x]"] };
const bag = { name: "Bag", headers: ["Disc", "Type"] };
const typed = (formula: string, own = throws): string => toEngine(formula, [throws, bag], own);

describe("formulas as people type them", () => {
  it.each([
    ["=[@Carry]*2", "=Throws[[#This Row],[Carry]]*2"],
    ["=[@[Long name]]", "=Throws[[#This Row],[Long name]]"],
    [
      "=SUM([@Carry],[@[Long name]])",
      "=SUM(Throws[[#This Row],[Carry]],Throws[[#This Row],[Long name]])",
    ],
    ["=[@[Carry]:[Long name]]", "=Throws[[#This Row],[Carry]:[Long name]]"],
    ["=COUNTA([@])", "=COUNTA(Throws[#This Row])"],
    ["=SUM([Carry])", "=SUM(Throws[Carry])"],
    ["=Throws[@Carry]", "=Throws[[#This Row],[Carry]]"],
    ["=Bag[@Type]", "=Bag[[#This Row],[Type]]"],
    ["=throws[carry]", "=Throws[Carry]"],
    ["=throws[[#All],[disc]:[CARRY]]", "=Throws[[#All],[Disc]:[Carry]]"],
    ["=Throws[#All]", "=Throws[#All]"],
    ["=CARRY.BEST(327, throws[#All])", "=CARRY.BEST(327, Throws[#All])"],
    ["=SUM(A1#)", "=SUM(ANCHORARRAY(A1))"],
    ["=Card!$A$5#", "=ANCHORARRAY(Card!$A$5)"],
    ["='My card'!A5#+1", "=ANCHORARRAY('My card'!A5)+1"],
  ])("%s becomes %s", (formula, full) => expect(typed(formula)).toBe(full));

  it.each([
    '="[@Carry] and A1#"',
    "='[@Carry]'!A1",
    "=SUM({1,2;3,4})",
    "=Unknown[Carry]",
    "=A1:B2",
    '=IF(A1="""",#N/A,1)',
    "=Throws[Carry",
    "",
  ])("%s stays", (formula) => expect(typed(formula)).toBe(formula));

  it("has no table to name outside one", () => {
    expect(toEngine("=[@Carry]", [throws], null)).toBe("=[@Carry]");
  });
});
