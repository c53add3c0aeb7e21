import type { Content } from "./content";
import { DAY, DISC_NAMES, NOTHING_LOGGED, SHARE, SIGNED, text, unless, WHOLE } from "./parts";
import type { SheetPlan } from "./types";

/** What happened on the course, and what it teaches about slope, wind and the player. */
export function roundsSheet(content: Content): SheetPlan {
  return {
    name: "Rounds",
    frozenRows: 5,
    widths: [12, 8, 10, 8, 11, 18, 9, 9, 22, 3, 16, 10, 14, 9],
    blocks: [
      text("A1", "title", "Rounds"),
      text("A2", "lead", "One row a throw at a target: where it finished, long plus, short minus."),
      text("A3", "hint", "After some rounds your own slope and wind factors stand on the right."),
      {
        kind: "table",
        name: "Results",
        at: "A5",
        least: 1,
        rows: content.results,
        columns: [
          { header: "Date", width: 12, format: DAY },
          { header: "Hole", width: 8 },
          { header: "Distance", width: 10, format: WHOLE },
          { header: "Rise", width: 8, format: WHOLE },
          { header: "Headwind", width: 11, format: WHOLE },
          { header: "Disc", width: 18, list: DISC_NAMES },
          { header: "Power", width: 9, format: SHARE },
          { header: "Finish", width: 9, format: SIGNED },
          { header: "Note", width: 22 },
        ],
      },
      text("K1", "heading", "Learnt"),
      text(
        "K2",
        "hint",
        "1 means the model is right for you. Trust it when ± is small.",
        "To use a factor, write it on Start under Settings.",
      ),
      {
        kind: "formula",
        at: "K5",
        formula: unless(
          `OR(${NOTHING_LOGGED},COUNT(Results[Finish])=0)`,
          "CARRY.LEARN(Results[#All],MyCard,Settings)",
        ),
        style: "figure",
        spill: { rows: 5, columns: 4, formats: ["General", "0.00", "0.00", "0"] },
      },
    ],
    print: { landscape: true, fitWide: true, titleRows: 5 },
  };
}
