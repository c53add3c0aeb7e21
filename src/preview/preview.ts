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
import { starterBlueprint } from "../workbook/blueprint";
import { openWorkbook } from "../workbook/embedded/open";
import { bundleInPage } from "./bundleInPage";
import { language, screenIn } from "./screen";

const dark = matchMedia("(prefers-color-scheme: dark)");

async function start(): Promise<void> {
  const bundle = await bundleInPage("functions.js", "functions.json");
  const grid = document.querySelector<HTMLElement>("#grid")!;
  const { calculation } = openWorkbook(starterBlueprint(), {
    bundle,
    language,
    dark: dark.matches,
    screen: screenIn(grid),
  });
  await calculation.settled();
  document.body.dataset["ready"] = "";
}

void start();
