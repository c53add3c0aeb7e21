/** The embedded workbook page: the grid with the starter workbook, and the pane beside it. */
import "@univerjs/design/lib/index.css";
import "@univerjs/ui/lib/index.css";
import "@univerjs/docs-ui/lib/index.css";
import "@univerjs/sheets-ui/lib/index.css";
import "@univerjs/sheets-formula-ui/lib/index.css";
import "@univerjs/sheets-numfmt-ui/lib/index.css";
import "@univerjs/sheets-data-validation-ui/lib/index.css";
import "@univerjs/sheets-conditional-formatting-ui/lib/index.css";
import "@univerjs/sheets-table-ui/lib/index.css";
import "./preview.css";
import { ThemeService } from "@univerjs/core";
import { mountPane } from "../pane/mount";
import { starterBlueprint } from "../workbook/blueprint";
import { EmbeddedWorkbook } from "../workbook/embedded";
import { openWorkbook } from "../workbook/embedded/open";
import { bundleInPage } from "./bundleInPage";
import { explainInHints, explainInLine } from "./explain";
import { openFile, saveFile } from "./files";
import { followPasting } from "./followPasting";
import { look } from "./look";
import { language, screenIn } from "./screen";

const element = (id: string): HTMLElement => document.getElementById(id)!;

async function start(): Promise<void> {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const { engine, calculation } = openWorkbook(starterBlueprint(), {
    bundle: await bundleInPage("functions.js", "functions.json"),
    screen: screenIn(element("grid")),
    language,
    theme: look,
    dark: dark.matches,
  });
  dark.addEventListener("change", ({ matches }) =>
    engine.injector.get(ThemeService).setDarkMode(matches),
  );
  const port = new EmbeddedWorkbook(engine, calculation);
  followPasting(engine, port);
  explainInHints(engine);
  explainInLine(engine, calculation, element("why"));
  const ready = calculation.settled();
  Object.assign(window, { carrybook: { port, ready, calculated: () => calculation.settled() } });
  mountPane(element("pane"), port, {
    saveFile: (plain) => saveFile(port, plain),
    openFile: (file) => openFile(port, file),
  });
  await ready;
  document.body.dataset["ready"] = "";
}

start().catch((reason: unknown) => {
  element("wait").textContent = `The workbook could not be opened: ${String(reason)}`;
});
