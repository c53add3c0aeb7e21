import type { Content } from "./content";
import {
  DAY,
  DISC_NAMES,
  NOTHING_LOGGED,
  SHARE,
  SIGNED,
  TEXT,
  text,
  unless,
  WHOLE,
  YES_NO,
} from "./parts";
import type { SheetPlan } from "./types";

/** What happened on the course and in putting practice, and what it teaches about slope, wind and the player. */
export function roundsSheet(content: Content): SheetPlan {
  return {
    name: "Rounds",
    frozenRows: 5,
    widths: [12, 10, 7, 10, 7, 11, 18, 8, 8, 8, 10, 16, 2, 16, 9, 13, 7],
    blocks: [
      text("A1", "title", "Rounds"),
      text(
        "A2",
        "lead",
        "One row a throw at a target. Finish: long plus, short minus. Offline: right plus.",
      ),
      text(
        "A3",
        "hint",
        "Note what you know: a finish, a miss to the side, or only in or out of the circle.",
      ),
      {
        kind: "table",
        name: "Results",
        at: "A5",
        least: 1,
        rows: content.results,
        columns: [
          { header: "Date", width: 12, format: DAY },
          { header: "Course", width: 10 },
          { header: "Hole", width: 7 },
          { header: "Distance", width: 10, format: WHOLE },
          { header: "Rise", width: 8, format: WHOLE },
          { header: "Headwind", width: 11, format: WHOLE },
          { header: "Disc", width: 18, list: DISC_NAMES },
          { header: "Power", width: 9, format: SHARE },
          { header: "Finish", width: 9, format: SIGNED },
          { header: "Offline", width: 9, format: SIGNED },
          { header: "In circle", width: 9, list: YES_NO },
          { header: "Note", width: 22 },
        ],
      },
      text("N1", "heading", "Learnt"),
      text(
        "N2",
        "hint",
        "Factors: 1 means the model is right for you. Trust a value when its ± is small.",
        "To use them, write them on Start under Settings; the pane does that under Course.",
      ),
      {
        kind: "formula",
        at: "N5",
        formula: unless(
          `OR(${NOTHING_LOGGED},COUNT(Results[Distance])=0)`,
          "CARRY.LEARN(Results[#All],MyCard,Settings)",
        ),
        style: "figure",
        spill: { rows: 7, columns: 4, formats: ["General", "0.00##", "0.00##", "0"] },
      },
      text("N13", "heading", "Did it come true?"),
      text("N14", "hint", "The chances that your settings tell now, against what happened."),
      {
        kind: "formula",
        at: "N15",
        formula: unless(
          `OR(${NOTHING_LOGGED},COUNT(Results[Distance])=0)`,
          "CARRY.CALIBRATION(Results[#All],MyCard,Settings)",
        ),
        style: "figure",
        spill: {
          rows: 8,
          columns: 9,
          formats: [TEXT, SHARE, SHARE, SHARE, SHARE, WHOLE, "0.000", "0.000", TEXT],
        },
      },
      text("N34", "heading", "Putts"),
      text("N35", "hint", "One row a distance: how many you made of how many you tried."),
      {
        kind: "table",
        name: "Putts",
        at: "N36",
        least: 1,
        rows: content.putts,
        columns: [
          { header: "Date", width: 16, format: DAY },
          { header: "Distance", width: 9, format: WHOLE },
          { header: "Made", width: 13, format: WHOLE },
          { header: "Tried", width: 7, format: WHOLE },
        ],
      },
      text("S34", "heading", "Putting learnt"),
      text("S35", "hint", "Share made, with the bounds that hold it eight times in ten."),
      {
        kind: "formula",
        at: "S36",
        formula: unless("SUM(Putts[Tried])=0", "CARRY.PUTTING(Putts[#All],Settings)"),
        style: "figure",
        spill: { rows: 12, columns: 4, formats: [WHOLE, SHARE, SHARE, SHARE] },
      },
    ],
    print: { landscape: true, fitWide: true, titleRows: 5 },
  };
}
