import type { Content } from "./content";
import {
  DISC_NAMES,
  input,
  NOTHING_LOGGED,
  onceLogged,
  SHARE,
  STROKES,
  TEXT,
  text,
  unless,
  WHOLE,
} from "./parts";
import { settingsBlocks } from "./settings";
import type { CellsPlan, ChartPlan, FormulaPlan, NumberFormat, SheetPlan, Style } from "./types";

const SHOT = "$B$12,$B$13,$B$14";
const BAG_SHOT = "$B$12,MyCard,Settings,$B$13,$B$14";

/** Label, answer and hint side by side. */
const answer = (
  row: number,
  label: string,
  formula: string,
  format: NumberFormat,
  hint: string,
  style: Style = "figure",
): readonly (CellsPlan | FormulaPlan)[] => [
  text(`A${row}`, "label", label),
  { kind: "formula", at: `B${row}`, formula, style, format },
  text(`C${row}`, "hint", hint),
];

const whatToDo = [
  text("A4", "heading", "What to do"),
  text(
    "A5",
    "plain",
    "1. Discs: write your discs.",
    "2. Log: one row for each smooth throw.",
    "3. Card: your carries. Holes: the disc for each hole.",
  ),
];

const cautions = [
  text("E4", "heading", "Before you throw"),
  text(
    "E5",
    "caution",
    "Throw only on a clear field, with nobody within range.",
    "Slope and wind figures are estimates. Trust your eyes.",
    "The course's and the event's rules and officials decide.",
  ),
];

const thisThrow = [
  text("A10", "heading", "This throw"),
  text("A11", "hint", "Change the three figures."),
  input("A12", "Distance", 300, "level, to the target"),
  input("A13", "Rise", 6, "target above you plus, below minus"),
  input("A14", "Headwind", 3, "felt against you plus, tailwind minus"),
  ...answer(
    15,
    "Throw",
    onceLogged(`CARRY.BEST(${BAG_SHOT})`),
    TEXT,
    "the best of your bag",
    "answer",
  ),
  ...answer(16, "Second", onceLogged(`CARRY.BEST(${BAG_SHOT},2)`), TEXT, "if you trust it more"),
  ...answer(
    17,
    "Plays like",
    `=CARRY.PLAYSLIKE(${SHOT},,Settings)`,
    WHOLE,
    "the level, calm distance that asks the same",
    "answer",
  ),
  ...answer(
    18,
    "Strokes",
    onceLogged("CARRY.STROKES($B$12,MyCard,Settings)"),
    STROKES,
    "to hole out from that far, level and calm",
  ),
];

const ownDisc = (disc: string, other: string) => [
  text("A20", "heading", "A disc of your choice"),
  input("A21", "Disc", disc, "for the throw above"),
  { kind: "cells", at: "B21", values: [[disc]], style: "input", list: DISC_NAMES } as const,
  ...answer(
    22,
    "Chance",
    onceLogged(`CARRY.CHANCE($B$21,${BAG_SHOT})`),
    SHARE,
    "to finish in the circle",
  ),
  ...answer(
    23,
    "Power",
    onceLogged(`CARRY.ATPOWER($B$21,${BAG_SHOT})`),
    SHARE,
    "of smooth that lands there",
  ),
  input("A24", "Against", other, "another disc, to compare it with"),
  { kind: "cells", at: "B24", values: [[other]], style: "input", list: DISC_NAMES } as const,
];

const NO_OTHER = `OR(${NOTHING_LOGGED},COUNTIF(Throws[Disc],$B$24)=0)`;

const compared: readonly (CellsPlan | FormulaPlan)[] = [
  text("I18", "label", "The disc of your choice against the other"),
  {
    kind: "formula",
    at: "I19",
    formula: unless(
      NO_OTHER,
      "CARRY.COMPARE($B$21,$B$24,$B$12,MyCard,Settings,$B$13,$B$14)",
      "Write another disc that was thrown.",
    ),
    style: "figure",
    spill: { rows: 2, columns: 4, formats: [STROKES, STROKES, STROKES, SHARE] },
  },
];

const rangeFinder = [
  text("A25", "heading", "From a range finder"),
  input("A26", "Range", 301, "line of sight"),
  input("A27", "Angle", 1.1, "degrees, up plus"),
  ...answer(28, "Level", "=CARRY.LEVEL($B$26,$B$27)", WHOLE, "write it under Distance"),
  ...answer(29, "Rise", "=CARRY.RISE($B$26,$B$27)", "0.0", "write it under Rise"),
];

const wind = [
  text("A31", "heading", "From a forecast"),
  input("A32", "Wind speed", 8, "in the unit set"),
  input("A33", "Wind from", "NW", "compass point or degrees"),
  input("A34", "Throwing to", 250, "bearing of the target"),
  ...answer(35, "Headwind", "=CARRY.HEADWIND($B$32,$B$33,$B$34)", "0.0", "write it under Headwind"),
  ...answer(36, "Crosswind", "=CARRY.CROSSWIND($B$32,$B$33,$B$34)", "0.0", "from the left plus"),
  ...answer(
    37,
    "Drift",
    "=CARRY.DRIFT($B$12,$B$36,,Settings)",
    "0",
    "sideways by that wind, right plus",
  ),
  ...answer(38, "Air", "=CARRY.AIR(Settings)", SHARE, "density, of the standard"),
];

const ranked: readonly (CellsPlan | FormulaPlan)[] = [
  text("E10", "heading", "Ranked"),
  {
    kind: "formula",
    at: "E11",
    formula: onceLogged(
      "CARRY.OPTIONS($B$12,MyCard,Settings,$B$13,$B$14,5)",
      "Log a smooth throw first.",
    ),
    style: "figure",
    spill: {
      rows: 6,
      columns: 8,
      formats: [TEXT, SHARE, SHARE, WHOLE, STROKES, "+0;-0;0", "+0;-0;0", TEXT],
      bars: [2],
    },
  },
  text("E18", "label", "Plays like, at least and at most"),
  {
    kind: "formula",
    at: "E19",
    formula: `=CARRY.PLAYSBAND(${SHOT},,Settings)`,
    style: "figure",
    spill: { rows: 2, columns: 3, formats: [WHOLE, WHOLE, WHOLE] },
  },
];

const FLIGHT_ROWS = 120;
const flight = (column: string): string => `Start!$${column}$6:$${column}$${5 + FLIGHT_ROWS}`;

const flightPath: FormulaPlan = {
  kind: "formula",
  at: "N5",
  formula: `=CARRY.FLIGHT(${SHOT},,Settings)`,
  style: "hint",
  spill: { rows: FLIGHT_ROWS + 1, columns: 4, formats: [WHOLE, "0.0", "0.0", "0.0"] },
};

const flightChart: ChartPlan = {
  name: "Flight",
  title: "The flight from the side",
  from: "A41",
  to: "C58",
  xTitle: "Along",
  yTitle: "Height",
  series: [{ name: "Flight", x: flight("N"), y: flight("O"), shape: "line" }],
};

/** What to do, one throw answered, the settings, and the cautions. */
export function startSheet(content: Content): SheetPlan {
  return {
    name: "Start",
    widths: [16, 18, 34, 3, 20, 16, 9, 9, 9, 11, 9, 9, 3, 9, 9, 9, 9],
    blocks: [
      text("A1", "title", "Carrybook"),
      text("A2", "lead", "Which disc from here? Answered from your own smooth throws."),
      ...whatToDo,
      ...cautions,
      ...thisThrow,
      ...ranked,
      ...ownDisc(content.disc, content.otherDisc),
      ...compared,
      ...rangeFinder,
      ...wind,
      ...settingsBlocks(content),
      text("N4", "hint", "Behind the chart"),
      flightPath,
    ],
    charts: [flightChart],
    print: { landscape: false, fitWide: true, area: "A1:K62" },
  };
}
