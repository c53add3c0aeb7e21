import type { Content } from "./content";
import { DAY, DISC_NAMES, onceLogged, SHARE, SIGNED, TEXT, text, WHOLE } from "./parts";
import type { CellsPlan, ChartPlan, FormulaPlan, SeriesPlan, SheetPlan } from "./types";

/** Discs that the card has room for, and the rows under its header. */
const ROOM = 60;
const FIRST = 6;
const LAST = FIRST + ROOM - 1;
const rows = (column: string): string => `Card!$${column}$${FIRST}:$${column}$${LAST}`;
const CURVE_ROWS = 100;
const SERIES_ROWS = 500;
const curve = (column: string): string =>
  `Card!$${column}$${FIRST}:$${column}$${FIRST + CURVE_ROWS - 1}`;

const card: FormulaPlan = {
  kind: "formula",
  at: "A5",
  name: "MyCard",
  formula: onceLogged("CARRY.CARD(Throws[#All],Settings,Bag[#All])", "Log a smooth throw first."),
  style: "figure",
  spill: {
    rows: ROOM + 1,
    columns: 15,
    formats: [
      ...[TEXT, TEXT, TEXT, WHOLE, WHOLE, WHOLE, WHOLE],
      ...[WHOLE, SIGNED, WHOLE, WHOLE, WHOLE, DAY, TEXT, WHOLE],
    ],
  },
};

/** More discs than room would leave the shortest out of every pick; then it must be said. */
const roomWarning: FormulaPlan = {
  kind: "formula",
  at: "A4",
  formula: `=IF(COUNTA(A${LAST + 1}:A${LAST + 200})=0,"","The picks see the ${ROOM} longest discs only.")`,
  style: "caution",
};

const oneDisc = (disc: string): readonly (CellsPlan | FormulaPlan)[] => [
  text("Q1", "heading", "One disc"),
  { kind: "cells", at: "Q2", values: [["Disc", disc]], styles: ["label", "input"] },
  { kind: "cells", at: "R2", values: [[disc]], style: "input", list: DISC_NAMES },
  { kind: "cells", at: "Q3", values: [["Within ±", 10]], styles: ["label", "input"] },
  text("Q4", "label", "Smooth"),
  {
    kind: "formula",
    at: "R4",
    formula: onceLogged("CARRY.SMOOTH(R2,Throws[#All],Settings)"),
    style: "answer",
    format: WHOLE,
  },
  text("T2", "label", "Throws still needed"),
  {
    kind: "formula",
    at: "V2",
    formula: onceLogged("CARRY.NEEDED(R2,R3,Throws[#All],Settings)"),
    style: "figure",
    format: WHOLE,
  },
  text("T3", "label", "Trend"),
  {
    kind: "formula",
    at: "V3",
    formula: onceLogged("CARRY.WEAR(R2,Throws[#All],Settings,Bag[#All])"),
    style: "figure",
    spill: { rows: 2, columns: 4, formats: [TEXT, "+0.0;-0.0;0", "0.000", WHOLE] },
  },
  text("T5", "label", "Newest day"),
  {
    kind: "formula",
    at: "V5",
    formula: onceLogged("CARRY.FORM(Throws[#All],Settings)"),
    style: "figure",
    spill: { rows: 2, columns: 5, formats: [DAY, "0.0%", "0.0%", WHOLE, WHOLE] },
  },
];

/** One dynamic array for each column of the ladder, so that no cell below the last disc is drawn. */
const ladderColumn = (at: string, formula: string): FormulaPlan => ({
  kind: "formula",
  at,
  formula: `=IFERROR(${formula},NA())`,
  style: "hint",
  spill: { rows: ROOM, columns: 1, formats: [WHOLE], header: false },
});

/** The longest disc stands highest. */
const place = `COUNT(${rows("D")})+1-SEQUENCE(COUNT(${rows("D")}))`;

const chartData: readonly (CellsPlan | FormulaPlan)[] = [
  text("AB1", "heading", "Behind the charts"),
  { kind: "cells", at: "AB5", values: [["Place", "Place", "Below", "Above"]], style: "hint" },
  // The place twice, as the two ends of an interval need one each.
  ladderColumn("AB6", place),
  ladderColumn("AC6", place),
  ladderColumn("AD6", `FILTER(${rows("D")}-${rows("E")},ISNUMBER(${rows("D")}))`),
  ladderColumn("AE6", `FILTER(${rows("F")}-${rows("D")},ISNUMBER(${rows("D")}))`),
  {
    kind: "formula",
    at: "AG5",
    formula: onceLogged("CARRY.COVERAGE(MyCard,Settings,,,5)"),
    style: "hint",
    spill: { rows: CURVE_ROWS + 1, columns: 4, formats: [WHOLE, SHARE, SHARE, TEXT] },
  },
  {
    kind: "formula",
    at: "AL5",
    formula: onceLogged("CARRY.SERIES(R2,Throws[#All],Settings,Bag[#All])"),
    style: "hint",
    spill: { rows: SERIES_ROWS + 1, columns: 4, formats: [DAY, WHOLE, WHOLE, SIGNED] },
  },
];

/** Each disc is a series of one dot, because only a series' name can stand beside it in any program. */
function ladderDisc(row: number): SeriesPlan {
  const cell = (column: string): string => `Card!$${column}$${row}`;
  return {
    name: `=${cell("A")}`,
    x: cell("D"),
    y: cell("AC"),
    minus: cell("AD"),
    plus: cell("AE"),
    ends: { x: `Card!$E$${row}:$F$${row}`, y: `Card!$AB$${row}:$AC$${row}` },
    labelled: true,
    shape: "dots",
  };
}

const charts: readonly ChartPlan[] = [
  {
    name: "Ladder",
    title: "Smooth carry, eight throws in ten",
    from: "Q7",
    to: "AA29",
    xTitle: "Carry",
    yTitle: "",
    series: Array.from({ length: ROOM }, (_, index) => ladderDisc(FIRST + index)),
  },
  {
    name: "Coverage",
    title: "Chance to finish in the circle",
    from: "Q31",
    to: "AA51",
    xTitle: "Plays-like distance",
    yTitle: "Chance",
    yFormat: SHARE,
    series: [
      { name: "Your bag", x: curve("AG"), y: curve("AH"), shape: "line" },
      { name: "A disc made for it", x: curve("AG"), y: curve("AI"), shape: "line" },
    ],
  },
];

/** The card: what each disc does when thrown smooth, with the ladder and the coverage plots. */
export function cardSheet(content: Content): SheetPlan {
  return {
    name: "Card",
    frozenRows: 5,
    frozenColumns: 1,
    widths: [
      ...[18, 11, 10, 8, 8, 8, 8, 8, 8, 10, 8, 9, 12, 11, 12, 3],
      ...[11, 18, 3, 11, 11, 11, 11, 11, 11, 11, 11, 9, 9, 9, 9, 3, 9, 9, 9, 18, 3, 12, 9, 9, 9],
    ],
    blocks: [
      text("A1", "title", "Card"),
      text("A2", "lead", "Smooth carry of each disc. Eight throws in ten land from low to high."),
      text(
        "A3",
        "hint",
        "Side: how far it strays sideways. Aim: where to aim for it to end on line, right plus.",
      ),
      roomWarning,
      card,
      ...oneDisc(content.disc),
      ...chartData,
    ],
    charts,
    print: { landscape: true, fitWide: true, titleRows: 5, area: `A1:AA${LAST}` },
  };
}
