/**
 * LibreOffice as an outside judge: opens a file, types into cells, and tells what other cells then
 * show. Driven by a macro in a profile of its own, without a window.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";

const MINUTES = 60_000;

/** Whether this machine has it. */
export function hasLibreOffice(): boolean {
  try {
    execFileSync("soffice", ["--version"], { stdio: "ignore", timeout: MINUTES });
    return true;
  } catch {
    return false;
  }
}

const library = (name: string, inside: string): string =>
  `<?xml version="1.0" encoding="UTF-8"?><library:${name} xmlns:library="http://openoffice.org/2000/library" xmlns:xlink="http://www.w3.org/1999/xlink"${inside}</library:${name}>`;

function install(profile: string, code: string): void {
  const basic = join(profile, "user", "basic");
  mkdirSync(join(basic, "Standard"), { recursive: true });
  writeFileSync(
    join(basic, "script.xlc"),
    library(
      "libraries",
      '><library:library library:name="Standard" xlink:href="$(USER)/basic/Standard/script.xlb/" xlink:type="simple" library:link="false"/>',
    ),
  );
  writeFileSync(
    join(basic, "Standard", "script.xlb"),
    library(
      "library",
      ' library:name="Standard" library:readonly="false" library:passwordprotected="false"><library:element library:name="Judge"/>',
    ),
  );
  const text = code.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  writeFileSync(
    join(basic, "Standard", "Judge.xba"),
    `<?xml version="1.0" encoding="UTF-8"?><script:module xmlns:script="http://openoffice.org/2000/script" script:name="Judge" script:language="StarBasic">${text}</script:module>`,
  );
}

const start = (profile: string, task: string): void =>
  void execFileSync(
    "soffice",
    [`-env:UserInstallation=${pathToFileURL(profile).href}`, "--headless", "--norestore", task],
    { stdio: "ignore", timeout: 5 * MINUTES },
  );

/** A file as LibreOffice reads it, as flat OpenDocument XML: all that it took in, in words. */
export function readByLibreOffice(file: string): string {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  try {
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
    const convert = ["--headless", "--convert-to", "fods", "--outdir", folder, file];
    execFileSync("soffice", [profile, ...convert], { stdio: "ignore", timeout: 5 * MINUTES });
    return readFileSync(join(folder, basename(file).replace(/xlsx$/, "fods")), "utf8");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A workbook as LibreOffice writes it after reading it. */
export function savedByLibreOffice(bytes: Uint8Array): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  try {
    const file = join(folder, "book.xlsx");
    writeFileSync(file, bytes);
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
    const out = join(folder, "out");
    const convert = ["--headless", "--convert-to", "xlsx", "--outdir", out, file];
    execFileSync("soffice", [profile, ...convert], { stdio: "ignore", timeout: 5 * MINUTES });
    return readFileSync(join(out, "book.xlsx"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Question {
  readonly file: string;
  readonly sheet: string;
  /** Cells typed into, and cells read, as "B5". */
  readonly inputs: readonly string[];
  readonly outputs: readonly string[];
}

/** Text of a cell with a letter before it for its kind: v a number, t text, e an error. */
const macro = ({ file, sheet, inputs, outputs }: Question, from: string, to: string): string => `
Function Shown(cell) As String
  If cell.getError() <> 0 Then
    Shown = "e" & cell.getError()
  ElseIf cell.Type = com.sun.star.table.CellContentType.VALUE Then
    Shown = "v" & Trim(Str(cell.getValue()))
  ElseIf cell.FormulaResultType2 = com.sun.star.sheet.FormulaResult.VALUE Then
    Shown = "v" & Trim(Str(cell.getValue()))
  Else
    Shown = "t" & cell.getString()
  End If
End Function
Sub Run
  Dim hidden(0) As New com.sun.star.beans.PropertyValue
  hidden(0).Name = "Hidden"
  hidden(0).Value = True
  book = StarDesktop.loadComponentFromURL("${pathToFileURL(file).href}", "_blank", 0, hidden())
  book.calculateAll()
  cells = book.Sheets.getByName("${sheet}")
  source = FreeFile
  Open "${from}" For Input As #source
  target = FreeFile
  Open "${to}" For Output As #target
  Do While Not EOF(source)
    Line Input #source, typed
    parts = Split(typed, " ")
${inputs.map((cell, index) => `    cells.getCellRangeByName("${cell}").setValue(Val(parts(${index})))`).join("\n")}
    shown_line = ""
${outputs.map((cell) => `    shown_line = shown_line & Shown(cells.getCellRangeByName("${cell}")) & Chr(9)`).join("\n")}
    Print #target, shown_line
  Loop
  Close #source
  Close #target
  book.close(True)
  StarDesktop.terminate()
End Sub
`;

const valueOf = (shown: string): string | number =>
  shown.startsWith("v")
    ? Number(shown.slice(1))
    : shown.startsWith("t")
      ? shown.slice(1)
      : `error ${shown.slice(1)}`;

/** Types each row of numbers into the inputs, and answers with what the outputs then show. */
export function askLibreOffice(
  question: Question,
  rows: readonly (readonly number[])[],
): (string | number)[][] {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  try {
    const [from, to] = [join(folder, "in.txt"), join(folder, "out.txt")];
    writeFileSync(from, rows.map((row) => row.join(" ")).join("\n"));
    const profile = join(folder, "profile");
    // The first start makes the profile, and would write over a macro that is there already.
    start(profile, "--terminate_after_init");
    install(profile, macro(question, from, to));
    start(profile, "macro:///Standard.Judge.Run");
    return readFileSync(to, "utf8")
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => line.split("\t").slice(0, question.outputs.length).map(valueOf));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
