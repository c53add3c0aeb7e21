/** The page of the self-test, which the pane shows in place of the product: `npm run excel -- --self-test`. */
import { ExcelWorkbook } from "../../workbook/excel";
import { explainOutside } from "../outside";
import { reportOf, SelfTest } from "./run";

/** Every function's example, put in by the build. */
declare const FUNCTION_EXAMPLES: readonly string[];

function button(words: string, press: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.textContent = words;
  made.addEventListener("click", press);
  return made;
}

/** Where the clipboard is closed to the page, the report is left selected for Ctrl+C. */
async function copy(report: HTMLTextAreaElement): Promise<void> {
  report.select();
  await navigator.clipboard.writeText(report.value).catch(() => document.execCommand("copy"));
}

function show(place: HTMLElement): void {
  const title = document.createElement("h1");
  title.textContent = "Self-test";
  const what = document.createElement("p");
  what.textContent =
    "Fills a new, empty workbook and tries everything in it. Do not type meanwhile. Close the workbook without saving.";
  const report = document.createElement("textarea");
  report.readOnly = true;
  report.rows = 24;
  report.style.width = "100%";
  report.setAttribute("aria-label", "Report");
  const run = button("Run", () => {
    run.disabled = true;
    const test = new SelfTest(new ExcelWorkbook(), FUNCTION_EXAMPLES, (checks) => {
      report.value = `Running …\n${reportOf(checks).replace(/^.*\n/, "")}`;
    });
    void test
      .run()
      .then((checks) => (report.value = reportOf(checks)))
      .catch((error: unknown) => (report.value = `Stopped: ${String(error)}\n${report.value}`));
  });
  place.replaceChildren(
    title,
    what,
    run,
    button("Copy report", () => void copy(report)),
    report,
  );
  place.hidden = false;
}

async function start(): Promise<void> {
  const place = document.getElementById("outside")!;
  if (typeof Office === "undefined") return explainOutside(place, "unreachable");
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) return explainOutside(place, "outside");
  show(place);
}

void start();
