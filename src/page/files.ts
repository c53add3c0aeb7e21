/** Saving the workbook to an .xlsx file and going on with one. What reads and writes files is loaded when it is first needed. */
import { blueprintOf } from "../workbook/blueprint/index";
import type { EmbeddedWorkbook } from "../workbook/embedded";
import type { Engine } from "../workbook/embedded/engine";
import type { OpenedFile } from "../workbook/file/openFile";
import { PortError } from "../workbook/port";

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
  workbook: Pick<EmbeddedWorkbook, "whole">,
  plain: boolean,
): Promise<Uint8Array> {
  const { fileOf, withoutOurs } = await import("../workbook/file/writeBook");
  const book = workbook.whole();
  return fileOf(plain ? withoutOurs(book) : book);
}

export async function saveFile(workbook: EmbeddedWorkbook, plain: boolean): Promise<string> {
  const name = plain ? "carrybook-plain.xlsx" : "carrybook.xlsx";
  download(name, await workbookBytes(workbook, plain));
  return `Saved as ${name}, with the values that stand here now.`;
}

/** A question with its answers; resolves to the one that was chosen. */
export type Ask = (question: string, answers: readonly string[]) => Promise<string>;

const OPEN = "Open it";
const TAKE = "Take the throws";
const WHOLE = "Open it whole";
const LEAVE = "Leave it";

/** Takes throws, bag, course, rounds and settings out of a file; our sheets are made anew from them. */
async function takeThrows(
  workbook: EmbeddedWorkbook,
  name: string,
  { content, leftBehind, counted }: OpenedFile,
): Promise<string> {
  await workbook.replaceSheets(blueprintOf(content).sheets);
  const leftOut = leftBehind.length === 0 ? "" : ` Left out: ${leftBehind.join(", ")}.`;
  return `Opened ${name}: ${counted}${leftOut}`;
}

/** What a file would lose, in a sentence with a blank before it; "" where nothing. */
const lossOf = (beyond: readonly string[]): string =>
  beyond.length === 0
    ? ""
    : ` This page cannot keep: ${beyond.join("; ")}. A file saved here would be without ${beyond.length === 1 ? "it" : "them"}.`;

/**
 * Goes on with a file. A workbook of ours is opened as it is; of another one the player says whether
 * to take its throws or to open it whole. What the page could not keep is named before anything is done.
 *
 * @returns what happened, in a sentence
 */
export async function goOnWith(
  workbook: EmbeddedWorkbook,
  bytes: Uint8Array,
  name: string,
  ask: Ask,
): Promise<string> {
  const [{ contentOf, isPacked, openFile }, { isOurs, readWhole }, { WorkbookPackage }] =
    await Promise.all([
      import("../workbook/file/openFile"),
      import("../workbook/file/readWhole"),
      import("../workbook/package/workbookPackage"),
    ]);
  if (!isPacked(bytes)) return takeThrows(workbook, name, await openFile(bytes, name));
  const { book, beyond } = readWhole(WorkbookPackage.read(bytes), (word) =>
    workbook.knowsFunction(word),
  );
  const ours = isOurs(book);
  const throws = ours ? null : contentOf(book);
  let answer = ours ? OPEN : WHOLE;
  if (!ours || beyond.length > 0) {
    const what = ours ? `${name} is a workbook of ours.` : `${name} is another kind of workbook.`;
    const answers = [...(throws ? [TAKE] : []), ours ? OPEN : WHOLE, LEAVE];
    answer = await ask(`${what}${lossOf(beyond)}`, answers);
  }
  if (answer === TAKE && throws) return takeThrows(workbook, name, throws);
  if (answer === LEAVE)
    throw new PortError("invalid", `${name} was not opened. The workbook is as it was.`);
  await workbook.replaceWhole(book);
  return `Opened ${name}${ours ? "" : " whole"}: ${book.sheets.length} ${book.sheets.length === 1 ? "sheet" : "sheets"}.`;
}

/** Calls back on each change that a person or the pane makes, not on what the engine works out itself. */
export function whenEdited({ commands }: Engine, listener: () => void): void {
  commands.onMutationExecutedForCollab(({ id }, options) => {
    if (id.startsWith("sheet.") && options?.onlyLocal !== true) listener();
  });
}
