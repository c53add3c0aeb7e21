/** openpyxl as an outside judge: makes a workbook, and reads those that we write. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const MINUTE = 60_000;
/** Packages of the system are known to the system's own interpreter. */
const INTERPRETERS = ["/usr/bin/python3", "python3", "python"];

const has = (python: string): boolean => {
  try {
    execFileSync(python, ["-c", "import openpyxl"], { stdio: "ignore", timeout: MINUTE });
    return true;
  } catch {
    return false;
  }
};

let found: string | null | undefined;
const interpreter = (): string | null => (found ??= INTERPRETERS.find(has) ?? null);

/** Whether this machine has it; where not, tests with it are skipped. */
export const hasOpenpyxl = (): boolean => interpreter() !== null;

function run(script: string, file: string): string {
  return execFileSync(interpreter()!, ["-c", script, file], { timeout: MINUTE, encoding: "utf8" });
}

function inFolder<Result>(work: (file: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  try {
    return work(join(folder, "book.xlsx"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const MAKE = `
import sys, datetime
from openpyxl import Workbook
from openpyxl.chart import LineChart, Reference
from openpyxl.comments import Comment
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.table import Table, TableStyleInfo
book = Workbook()
field = book.active
field.title = "Field"
field.append(["Day", "Disc", "Carry", "Shoes"])
for n in range(9):
    field.append([datetime.date(2026, 5, 1 + n), "Copper mid", 301.5 + n, "old & <worn>"])
for cell in field["A"][1:]:
    cell.number_format = "yyyy-mm-dd"
field["C12"] = "=C2*2"
field["C13"] = "=ROUND(SUM(C2:C10)/9,2)"
field["C14"] = '=IF(C2>300,"far ""and"" wide","near")'
field["B1"].font = Font(name="Georgia", size=14, bold=True, color="FF336699")
field["B1"].fill = PatternFill("solid", fgColor="FFDDEEFF")
field["B1"].border = Border(bottom=Side(style="double", color="FF112233"))
field["B2"].alignment = Alignment(horizontal="center", vertical="top", wrap_text=True)
field["B3"].comment = Comment("windy", "me")
field.column_dimensions["B"].width = 22.5
field.row_dimensions[3].hidden = True
field.freeze_panes = "B2"
table = Table(displayName="Practice", ref="A1:D10")
table.tableStyleInfo = TableStyleInfo(name="TableStyleMedium9")
field.add_table(table)
rule = DataValidation(type="list", formula1='"straight,hyzer"', allow_blank=True)
rule.add("F2:F9")
field.add_data_validation(rule)
sums = book.create_sheet("Sums")
sums["A1"] = "='Field'!C2+Share"
sums["B1"] = True
sums["A3"] = "0042"
sums.merge_cells("A5:B6")
chart = LineChart()
chart.add_data(Reference(field, min_col=3, min_row=1, max_row=10), titles_from_data=True)
sums.add_chart(chart, "E5")
book.create_sheet("O'Neil log")["A1"] = "=Field!B2"
book["O'Neil log"].sheet_state = "hidden"
for name in (DefinedName("Share", attr_text="0.25"), DefinedName("Carries", attr_text="Field!$C$2:$C$10")):
    # Up to openpyxl 3.0 the names are a list, since 3.1 a dictionary.
    book.defined_names.append(name) if hasattr(book.defined_names, "append") else book.defined_names.add(name)
book.save(sys.argv[1])
`;

/** A log as somebody else might keep it. */
export const madeByOpenpyxl = (): Uint8Array =>
  inFolder((file) => {
    run(MAKE, file);
    return readFileSync(file);
  });

const READ = `
import sys, json, warnings
warnings.simplefilter("error")
from openpyxl import load_workbook
book = load_workbook(sys.argv[1])
names = book.defined_names
names = [each.name for each in names.definedName] if hasattr(names, "definedName") else list(names)
formulas = {}
for sheet in book.worksheets:
    for row in sheet.iter_rows():
        for cell in row:
            value = getattr(cell.value, "text", cell.value)
            if cell.data_type == "f":
                formulas[sheet.title + "!" + cell.coordinate] = value if value.startswith("=") else "=" + value
print(json.dumps({
    "sheets": book.sheetnames,
    "tables": sorted(name for sheet in book.worksheets for name in sheet.tables),
    "names": sorted(name for name in names if not name.startswith("_xlnm")),
    "formulas": formulas,
}))
`;

export interface FoundByOpenpyxl {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
  readonly names: readonly string[];
  readonly formulas: Readonly<Record<string, string>>;
}

/** What openpyxl finds in a file; a warning of it is an error. */
export const readByOpenpyxl = (bytes: Uint8Array): FoundByOpenpyxl =>
  inFolder((file) => {
    writeFileSync(file, bytes);
    return JSON.parse(run(READ, file)) as FoundByOpenpyxl;
  });
