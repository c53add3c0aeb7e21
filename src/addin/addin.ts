/**
 * The add-in's page in Excel. One runtime holds all: the custom functions, which functions.js has
 * registered before this, the task pane, and the buttons of the ribbon.
 */
import { mountPane } from "../pane/mount";
import { ExcelWorkbook } from "../workbook/excel";
import { explainOutside } from "./outside";
import { tooOld } from "./versions";

const element = (id: string): HTMLElement => document.getElementById(id)!;

async function start(): Promise<void> {
  if (typeof Office === "undefined") return explainOutside(element("outside"), "unreachable");
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) return explainOutside(element("outside"), "outside");
  if (tooOld()) return explainOutside(element("outside"), "old");
  const port = new ExcelWorkbook();
  Office.actions.associate("recalculate", (event: Office.AddinCommands.Event) => {
    // The ribbon has no place for words; the pane's own button says why it failed.
    void port
      .recalculate()
      .catch((reason: unknown) => console.warn(reason))
      .finally(() => event.completed());
  });
  mountPane(element("pane"), port);
}

void start();
