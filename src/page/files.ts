/** Saving the workbook to an .xlsx file and going on with one. What reads and writes files is loaded when it is first needed. */
import { blueprintOf } from "../workbook/blueprint/index";
import type { EmbeddedWorkbook } from "../workbook/embedded";
import type { Engine } from "../workbook/embedded/engine";

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
    import("../workbook/file/calculate"),
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

/** What came out of a file, and what did not. */
export interface TakenOver {
  /** How many rows of the log count, in words. */
  readonly counted: string;
  /** In a sentence; "" where all came along. */
  readonly leftOut: string;
}

/** Takes throws, bag, course, rounds and settings out of a file; our sheets are made anew from them. */
export async function takeOver(
  workbook: EmbeddedWorkbook,
  bytes: Uint8Array,
  name?: string,
): Promise<TakenOver> {
  const { openFile } = await import("../workbook/file/openFile");
  const { content, leftBehind, counted } = await openFile(bytes, name);
  await workbook.replaceSheets(blueprintOf(content).sheets);
  const leftOut = leftBehind.length === 0 ? "" : ` Left out: ${leftBehind.join(", ")}.`;
  return { counted, leftOut };
}

/** Calls back on each change that a person or the pane makes, not on what the engine works out itself. */
export function whenEdited({ commands }: Engine, listener: () => void): void {
  commands.onMutationExecutedForCollab(({ id }, options) => {
    if (id.startsWith("sheet.") && options?.onlyLocal !== true) listener();
  });
}
