import { addRows, bookOf, readRawBook, writeSettings } from "../book/book";
import type { Desk, Done } from "../controller";
import type { Change } from "../undo/takeBack";
import { count, list } from "../words/figures";
import { STARTER } from "../../workbook/blueprint/content";
import { DATA_PARTS, DATA_TABLES } from "../../workbook/blueprint/dataTables";
import { emptyBlueprint } from "../../workbook/blueprint";
import type { BuildReport, WorkbookPort } from "../../workbook/port";
import { healed } from "./heal";
import { starterRows } from "./model";

/** Makes what is missing; what is there stays as it is. */
export const build = (desk: Desk): Promise<boolean> =>
  desk.work("setup", "Building the sheets", async (port, progress, stop) => {
    const report = await port.build(emptyBlueprint());
    const repaired = await healed(port, progress, stop);
    return { said: `${reportSentence(report)} ${undoSentence(port, report)} ${repaired}`.trim() };
  });

export function reportSentence({ made, kept, lacking = [] }: BuildReport): string {
  if (made.length === 0) return "Everything was there already. Nothing was changed.";
  const left = kept.length === 0 ? "" : ` Left as it was: ${list(kept)}.`;
  return [`Made ${list(made)}.${left}`, ...lacking].join(" ");
}

const undoSentence = (port: WorkbookPort, { made }: BuildReport): string => {
  if (made.length === 0) return "";
  return port.undoable
    ? "The spreadsheet's own Undo takes it back."
    : "This cannot be undone here; delete what you do not want.";
};

/** Builds what is missing and puts invented rows into the tables that are empty; their log is of two players, so one is chosen. */
export const fillWithStarter = (desk: Desk): Promise<boolean> =>
  desk.work("setup", "Filling the tables", async (port, report): Promise<Done> => {
    await port.build(emptyBlueprint());
    const raw = await readRawBook(port);
    const fills = starterRows(DATA_PARTS.map((part) => raw[part]));
    const changes: Change[] = [];
    const throwsToo = fills.some(({ table }) => table === DATA_TABLES.throws);
    if (throwsToo && bookOf(raw).settings.player === null)
      changes.push(await writeSettings(port, { player: STARTER.settings.get("player")! }));
    for (const { table, rows } of fills) {
      report(changes.length, fills.length);
      changes.push(await addRows(port, table, rows));
    }
    if (fills.length === 0) return { said: "Every table has rows already. Nothing was added." };
    const what = `invented rows in ${list(fills.map(({ table }) => table))}`;
    return { said: `Put ${what}.`, step: { place: "setup", what, changes } };
  });

export const repair = (desk: Desk): Promise<boolean> =>
  desk.work("setup", "Repairing formulas", async (port, report, stop) => {
    const repaired = await port.repairFormulas(report, stop);
    if (stop.aborted) return { said: `Stopped after ${count(repaired, "formula")}.` };
    return { said: `Wrote ${count(repaired, "formula")} again.` };
  });

export const recalculate = (desk: Desk): Promise<boolean> =>
  desk.work("setup", "Recalculating", async (port) => {
    await port.recalculate();
    return { said: "Recalculated." };
  });
