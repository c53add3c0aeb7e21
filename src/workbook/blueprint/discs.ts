import type { Content } from "./content";
import { LINES, onceLogged, SHARE, STROKES, TEXT, text, TYPES, WHOLE, YES_NO } from "./parts";
import type { SheetPlan } from "./types";

/** The bag: what each disc is, and where the bag has holes or doubles. */
export function discsSheet(content: Content): SheetPlan {
  return {
    name: "Discs",
    frozenRows: 5,
    widths: [18, 12, 11, 9, 9, 26, 3, 12, 18, 18, 12, 12, 3, 18, 9, 9, 10, 26],
    blocks: [
      text("A1", "title", "Discs"),
      text("A2", "lead", "One row a disc. Type and line sharpen the picks; blanks are fine."),
      text("A3", "hint", "Set In bag to no to leave a disc at home."),
      {
        kind: "table",
        name: "Bag",
        at: "A5",
        least: 1,
        rows: content.bag,
        columns: [
          { header: "Disc", width: 18 },
          { header: "Type", width: 12, list: TYPES },
          { header: "Line", width: 11, list: LINES },
          { header: "Weight", width: 9, format: WHOLE },
          { header: "In bag", width: 9, list: YES_NO },
          { header: "Note", width: 26 },
        ],
      },
      text("H1", "heading", "Gaps and twins"),
      text(
        "H2",
        "hint",
        "A gap: distances where the bag gives away chance.",
        "Twins: two discs that do the same work.",
        "Only a header below: your bag has neither.",
      ),
      {
        kind: "formula",
        at: "H5",
        formula: onceLogged("CARRY.GAPS(MyCard,Settings)"),
        style: "figure",
        spill: { rows: 41, columns: 5, formats: [TEXT, WHOLE, WHOLE, SHARE, STROKES] },
      },
      text("N1", "heading", "Worth throwing next"),
      text(
        "N2",
        "hint",
        "Throws to add, and the chance in the circle that they gain at the disc's own carry.",
        "Only a header below: you know every disc well enough.",
      ),
      {
        kind: "formula",
        at: "N5",
        formula: onceLogged("CARRY.PRACTICE(Throws[#All],Settings,Bag[#All])"),
        style: "figure",
        spill: { rows: 61, columns: 5, formats: [TEXT, WHOLE, "0.0%", WHOLE, TEXT] },
      },
    ],
    print: { landscape: true, fitWide: true, titleRows: 5 },
  };
}
