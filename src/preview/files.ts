/** Saving the workbook to an .xlsx file and going on with one. What reads and writes files is loaded when it is first needed. */
import { blueprintOf } from "../workbook/blueprint";
import type { EmbeddedWorkbook } from "../workbook/embedded";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Hands bytes to the player as a download. */
function download(name: string, bytes: Uint8Array): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([Uint8Array.from(bytes)], { type: TYPE }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

/** The workbook as a file, its formulas with the values that they have here. */
export async function workbookBytes(
  workbook: EmbeddedWorkbook,
  plain: boolean,
): Promise<Uint8Array> {
  const [{ FilePort }, { calculate }, { withoutUs }, { writeBook }] = await Promise.all([
    import("../workbook/file/filePort"),
    import("../workbook/file/calculate"),
    import("../workbook/file/withoutUs"),
    import("../workbook/file/bookBytes"),
  ]);
  const { book } = FilePort.create({ sheets: workbook.plans() });
  await calculate(book, async () => ({ port: workbook, close: () => undefined }));
  if (plain) withoutUs(book);
  return writeBook(book);
}

export async function saveFile(workbook: EmbeddedWorkbook, plain: boolean): Promise<string> {
  const name = plain ? "carrybook-plain.xlsx" : "carrybook.xlsx";
  download(name, await workbookBytes(workbook, plain));
  return `Saved as ${name}, with the values that stand here now.`;
}

/** Takes throws, bag, course, rounds and settings out of a file; our sheets are made anew from them. */
export async function openFile(workbook: EmbeddedWorkbook, file: File): Promise<string> {
  const { openFile: read } = await import("../workbook/file/openFile");
  const bytes = new Uint8Array(await file.arrayBuffer());
  const { content, leftBehind, counted } = await read(bytes, file.name);
  await workbook.replaceSheets(blueprintOf(content).sheets);
  const left = leftBehind.length === 0 ? "" : ` Left out: ${leftBehind.join(", ")}.`;
  return `Opened ${file.name}: ${counted}${left} Undo brings back what was here.`;
}
