import type { Content } from "./content";
import { DAY, DISC_NAMES, SHARE, SIGNED, TEXT, text, THROW_LINES, unless, WHOLE } from "./parts";
import type { SheetPlan } from "./types";

/** The throw log, one row a throw, and a corner that reads phone notes. */
export function logSheet(content: Content): SheetPlan {
  return {
    name: "Log",
    frozenRows: 5,
    widths: [12, 18, 9, 9, 9, 11, 11, 9, 12, 22, 3, 12, 18, 9, 9, 9, 11, 11, 9, 12, 18, 14, 10],
    blocks: [
      text("A1", "title", "Log"),
      text(
        "A2",
        "lead",
        "One row a throw: the disc and where it stopped. Only smooth throws count.",
      ),
      text(
        "A3",
        "hint",
        "Type under the last row. A bad throw: write off in Line, and it stays but does not count.",
      ),
      {
        kind: "table",
        name: "Throws",
        at: "A5",
        least: 1,
        rows: content.throws,
        columns: [
          { header: "Date", width: 12, format: DAY },
          { header: "Disc", width: 18, list: DISC_NAMES },
          { header: "Carry", width: 9, format: WHOLE },
          { header: "Offline", width: 9, format: SIGNED },
          { header: "Power", width: 9, format: SHARE },
          { header: "Line", width: 11, list: THROW_LINES },
          { header: "Headwind", width: 11, format: WHOLE },
          { header: "Rise", width: 9, format: WHOLE },
          { header: "Player", width: 12 },
          { header: "Note", width: 22 },
        ],
      },
      text("L1", "heading", "Phone notes"),
      text("L2", "hint", "Paste them in the box. What was understood stands below it."),
      { kind: "cells", at: "L3", values: [[content.notes]], style: "input", name: "PhoneNotes" },
      {
        kind: "formula",
        at: "L5",
        formula: unless('PhoneNotes=""', "CARRY.NOTES(PhoneNotes,Bag[#All],Settings)"),
        style: "figure",
        spill: { rows: 30, columns: 13, formats: [DAY, TEXT, WHOLE, SIGNED, SHARE] },
      },
    ],
    print: { landscape: false, fitWide: true, titleRows: 5 },
  };
}
