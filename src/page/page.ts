/** The embedded workbook page: the grid with the starter workbook, and the pane beside it. */
import { ThemeService } from "@univerjs/core";
import "@univerjs/design/lib/index.css";
import "@univerjs/docs-ui/lib/index.css";
import "@univerjs/sheets-conditional-formatting-ui/lib/index.css";
import "@univerjs/sheets-data-validation-ui/lib/index.css";
import "@univerjs/sheets-formula-ui/lib/index.css";
import "@univerjs/sheets-numfmt-ui/lib/index.css";
import "@univerjs/sheets-table-ui/lib/index.css";
import "@univerjs/sheets-ui/lib/index.css";
import "@univerjs/ui/lib/index.css";
import { mountPane } from "../pane/mount";
import "./page.css";
import { starterBlueprint } from "../workbook/blueprint/index";
import { EmbeddedWorkbook } from "../workbook/embedded";
import { openWorkbook } from "../workbook/embedded/open";
import type { WorkbookPort } from "../workbook/port";
import { bundleInPage } from "./bundleInPage";
import { crossWithF6 } from "./crossing";
import { explainInHints, explainInLine } from "./explain";
import { type Ask, goOnWith, saveFile } from "./files";
import { foldSheets } from "./fold";
import { followPasting } from "./followPasting";
import { keepSafe } from "./keep/index";
import { Line } from "./line";
import { look } from "./look";
import { language, screenIn } from "./screen";
import { takingBack } from "./takingBack";
import { mendColouredFormulas } from "./workarounds/colouredFormulas";
import { mendSuggestedFunctions } from "./workarounds/suggestedFunctions";

const element = (id: string): HTMLElement => document.getElementById(id)!;

/** The pane leads to cells that may be folded away. */
const shownWhenUsed = (port: EmbeddedWorkbook, unfold: () => void): WorkbookPort =>
  Object.assign(Object.create(port) as WorkbookPort, {
    show: (ref: string) => {
      unfold();
      return port.show(ref);
    },
  });

async function start(): Promise<void> {
  const unfold = foldSheets({
    sheets: document.querySelector("main")!,
    pane: document.querySelector("aside")!,
    button: element("fold") as HTMLButtonElement,
  });
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
  mendColouredFormulas(engine);
  mendSuggestedFunctions(engine);
  const port = new EmbeddedWorkbook(engine, calculation);
  followPasting(engine, port);
  explainInHints(engine);
  explainInLine(engine, calculation, element("why"));
  const ready = calculation.settled();
  Object.assign(window, { carrybook: { port, ready, calculated: () => calculation.settled() } });
  const line = new Line(element("top-line"));
  const leaving = keepSafe(engine, port, line);
  const ask: Ask = (text, answers) =>
    new Promise((resolve) => {
      const press = (label: string): void => {
        line.clear("question");
        resolve(label);
      };
      const buttons = answers.map((label) => ({ label, press: () => press(label) }));
      line.say("question", { text, buttons });
    });
  mountPane(element("pane"), shownWhenUsed(port, unfold), {
    saveFile: async (plain) => {
      const said = await saveFile(port, plain);
      if (!plain) leaving.safe();
      return said;
    },
    openFile: async (file) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const said = await goOnWith(port, bytes, file.name, ask);
      leaving.safe();
      return { said, undo: takingBack(engine) };
    },
  });
  crossWithF6(engine, {
    sheets: element("grid"),
    pane: element("pane"),
    hint: element("cross"),
    unfold,
  });
  await ready;
  document.body.dataset["ready"] = "";
}

start().catch((reason: unknown) => {
  element("wait").textContent = `The workbook could not be opened: ${String(reason)}`;
});
