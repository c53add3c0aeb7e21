/** The learnt putting table, and how it gets into the settings. */
import type { CellValue, WorkbookPort } from "../../workbook/port";
import { PortError } from "../../workbook/port";
import { type Book, oncePer, SETTINGS } from "../book/book";
import type { Change } from "../undo/takeBack";
import { learntPuttsOf } from "./told";

/** Shares as the settings take them: whole per cent. */
const rounded = (share: number): number => Number(share.toFixed(2));

const distancesOf = oncePer(({ settings }: Book): readonly number[] =>
  settings.putting.map(({ distanceM }) => distanceM),
);

/** The learnt share at each distance of the settings' table; null while there are no putts. */
function learntShares(book: Book): readonly number[] | null {
  const learnt = learntPuttsOf(book, distancesOf(book));
  return learnt.ok ? learnt.value.map(({ share }) => rounded(share)) : null;
}

/** Whether the settings hold what was learnt; null where nothing was. */
export function puttingInUse(book: Book): boolean | null {
  const shares = learntShares(book);
  return shares && shares.every((share, at) => share === book.settings.putting[at]!.share);
}

/** Writes the learnt shares beside the distances that stand under Putting in the range Settings. */
export async function writePutting(port: WorkbookPort, book: Book): Promise<Change> {
  const shares = learntShares(book);
  const range = await port.readRange(SETTINGS);
  if (!range || !shares)
    throw new PortError("missing", "There is no range Settings. Make it in Set-up.");
  const rows = range.flatMap(([label], row) => (typeof label === "number" ? [row] : []));
  if (rows.length !== shares.length)
    throw new PortError("missing", "Settings has no putting table. Write distances under Putting.");
  const cells = rows.map((row, at) => ({
    row,
    column: 1,
    before: range[row]![1]!,
    now: shares[at] as CellValue,
  }));
  for (const { row, column, now } of cells) range[row]![column] = now;
  await port.writeRange(SETTINGS, range);
  return { kind: "wrote", ref: SETTINGS, cells };
}
