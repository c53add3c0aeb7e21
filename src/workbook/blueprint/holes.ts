import type { Content } from "./content";
import { LINES, NOTHING_LOGGED, SHARE, STROKES, TEXT, text, unless, WHOLE } from "./parts";
import type { ColumnPlan, SheetPlan } from "./types";

const NO_HOLE = `OR(${NOTHING_LOGGED},COUNT(Course[Distance])=0)`;
/** What the player knows of a hole; the columns after these look the answers up. */
const COURSE = "Course[[#All],[Hole]:[Note]]";

/** Column of the plan in the row of this hole. Looked up, so that table and plan never disagree. */
const fromPlan = (column: number): string =>
  `=IFERROR(INDEX(MyPlan,MATCH(Course[[#This Row],[Hole]],INDEX(MyPlan,0,1),0),${column}),"")`;

const COLUMNS: readonly ColumnPlan[] = [
  { header: "Hole", width: 7 },
  { header: "Par", width: 6, format: WHOLE },
  { header: "Distance", width: 10, format: WHOLE },
  { header: "Rise", width: 7, format: WHOLE },
  { header: "Headwind", width: 10, format: WHOLE },
  { header: "Long trouble", width: 13, format: WHOLE },
  { header: "Short trouble", width: 13, format: WHOLE },
  { header: "Line", width: 11, list: LINES },
  { header: "Note", width: 22 },
  { header: "Plays like", width: 11, format: WHOLE, formula: fromPlan(2), style: "figure" },
  { header: "Disc", width: 18, formula: fromPlan(5), style: "figure" },
  { header: "Chance", width: 10, format: SHARE, formula: fromPlan(8), bar: true },
];

/** The course: the disc for each hole, the whole plan beside it, and what each disc is worth here. */
export function holesSheet(content: Content): SheetPlan {
  return {
    name: "Holes",
    frozenRows: 5,
    frozenColumns: 1,
    widths: [
      ...COLUMNS.map((column) => column.width),
      ...[3, 7, 11, 9, 9, 18, 9, 9, 10, 9, 30, 10, 18],
      ...[3, 18, 12],
      ...[3, 9, 9, 11, 12],
      ...[3, 18, 10, 10, 10],
    ],
    blocks: [
      text("A1", "title", "Holes"),
      text("A2", "lead", "The disc for each hole. Write the hole; the answer stands on the right."),
      text(
        "A3",
        "hint",
        "Rise and headwind: plus is harder. Trouble: distance from the target to it, behind or in front.",
      ),
      {
        kind: "table",
        name: "Course",
        at: "A5",
        least: 1,
        rows: content.course.map((row) => [...row, "", "", ""]),
        columns: COLUMNS,
      },
      text("N1", "heading", "Plan"),
      text(
        "N2",
        "hint",
        "Low and high: how far the plays-like figure may be off.",
        "The course's and the event's rules and officials decide.",
      ),
      {
        kind: "formula",
        at: "N5",
        name: "MyPlan",
        formula: unless(NO_HOLE, `CARRY.PLAN(${COURSE},MyCard,Settings)`, "Write a hole first."),
        style: "figure",
        spill: {
          rows: 41,
          columns: 12,
          formats: [
            ...[TEXT, WHOLE, WHOLE, WHOLE, TEXT, SHARE, WHOLE, SHARE, WHOLE, TEXT],
            ...[STROKES, TEXT],
          ],
          bars: [7],
        },
      },
      text("AA1", "heading", "Worth"),
      text("AA2", "hint", "Strokes a round lost if", "the disc stays at home."),
      {
        kind: "formula",
        at: "AA5",
        formula: unless(NO_HOLE, `CARRY.WORTH(${COURSE},MyCard,Settings)`),
        style: "figure",
        spill: { rows: 61, columns: 2, formats: [TEXT, STROKES] },
      },
      text("AD1", "heading", "Score"),
      text("AD2", "hint", "Eight rounds in ten lie", "between low and high."),
      {
        kind: "formula",
        at: "AD5",
        formula: unless(NO_HOLE, `CARRY.SCORES(${COURSE},MyCard,Settings)`),
        style: "figure",
        spill: { rows: 41, columns: 4, formats: [STROKES, SHARE, SHARE, "+0;-0;0"] },
      },
      text("AI1", "heading", "Pack"),
      text("AI2", "hint", "The best so many discs to carry here."),
      {
        kind: "cells",
        at: "AI3",
        values: [["Discs to carry", 10]],
        styles: ["label", "input"],
      },
      {
        kind: "formula",
        at: "AI5",
        formula: unless(NO_HOLE, `CARRY.PACK(${COURSE},MyCard,$AJ$3,Settings)`),
        style: "figure",
        spill: { rows: 61, columns: 4, formats: [TEXT, TEXT, STROKES, STROKES] },
      },
    ],
    print: { landscape: true, fitWide: true, titleRows: 5, area: "A1:L45" },
  };
}
