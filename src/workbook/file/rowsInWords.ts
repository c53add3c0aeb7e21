import { messages } from "../../core/messages";
import { DEFAULT_SETTINGS, readSettings } from "../../core/log/readSettings";
import { readThrows } from "../../core/log/readThrows";
import { isTwofold } from "../../core/notes/noteDate";
import type { LeftOut, Settings } from "../../core/types";
import { readArea } from "../a1";
import { blueprintOf } from "../blueprint";
import type { Content } from "../blueprint/content";
import { DATA_TABLES } from "../blueprint/dataTables";
import type { CellValue } from "../port";

/**
 * How many rows of the log will count and how many will not, with the reason of the first that does
 * not and its row as the sheet numbers it.
 *
 * @example
 * rowsInWords(content) // "3 rows: 2 count, 1 does not. Row 8: carry is blank."
 */
export function rowsInWords(content: Content): string {
  const blocks = blueprintOf(content).sheets.flatMap((sheet) => sheet.blocks);
  const table = blocks.find((block) => block.kind === "table" && block.name === DATA_TABLES.throws);
  const inputs = blocks.find((block) => block.kind === "cells" && block.name === "Settings");
  if (table?.kind !== "table" || inputs?.kind !== "cells") return "";
  const headers = table.columns.map(({ header }) => header);
  const { throws, leftOut } = readThrows([headers, ...table.rows], settingsIn(inputs.values));
  const top = readArea(table.at)!.top;
  return `${countsIn(throws.length, leftOut.length)}${firstReason(leftOut, table.rows, top)}`;
}

function countsIn(counting: number, others: number): string {
  const rows = counting + others;
  if (rows === 0) return "no throws.";
  const all = rows === 1 ? "1 row" : `${rows} rows`;
  if (others === 0) return rows === 1 ? `${all}, and it counts.` : `${all}, all count.`;
  if (counting === 0) return `${all}, none counts yet.`;
  return `${all}: ${counting} ${counting === 1 ? "counts" : "count"}, ${others} ${others === 1 ? "does" : "do"} not.`;
}

/** Rows that the player marked off are as they should be; another reason goes before theirs. */
function firstReason(
  leftOut: readonly LeftOut[],
  rows: readonly (readonly CellValue[])[],
  top: number,
): string {
  const first =
    leftOut.find(({ row, reason }) => reason !== messages.log.markedOff(row)) ?? leftOut[0];
  if (!first) return "";
  const date = String(rows[first.row - 2]?.[0] ?? "");
  const reason =
    isTwofold(date) && first.reason.includes(date)
      ? messages.workbook.twofoldDate(date)
      : first.reason.replace(/^Row \d+: /, "");
  return ` Row ${top + first.row - 1}: ${reason}`;
}

/** Settings that cannot be read say so in the sheet; here the usual ones stand in. */
function settingsIn(values: readonly (readonly CellValue[])[]): Settings {
  try {
    return readSettings(values);
  } catch {
    return DEFAULT_SETTINGS;
  }
}
