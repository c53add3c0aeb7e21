/** Throws on their way into the sheet, under whatever headers and units its table has. */
import { THROW_HEADERS, throwLayout, type ThrowField } from "../../core/log/throwColumns";
import type { Settings, Throw } from "../../core/types";
import type { CellValue, Row, TableData } from "../../workbook/port";

export type NewThrow = Omit<Throw, "row">;

/** Digits that survive the way through metres and back. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** Rows for `addRows`: blanks stay blank, a smooth power is not written. */
export function rowsFor(table: TableData, throws: readonly NewThrow[], settings: Settings): Row[] {
  const layout = throwLayout([table.headers], "log", settings);
  return throws.map((thrown) => {
    const cells: Record<ThrowField, CellValue> = {
      date: thrown.day ?? "",
      disc: thrown.disc,
      carry: tidy(thrown.carryM / layout.metresPerCarry),
      offline: thrown.offlineM === null ? "" : tidy(thrown.offlineM / layout.metresPerOffline),
      power: thrown.power === 1 ? "" : thrown.power,
      line: thrown.line,
      headwind: tidy(thrown.headwindMps / layout.mpsPerHeadwind) || "",
      rise: tidy(thrown.riseM / layout.metresPerRise) || "",
      player: thrown.player,
      note: thrown.note,
    };
    const named = (Object.keys(cells) as ThrowField[])
      .filter((field) => cells[field] !== "")
      .map((field) => [headerOf(table, field, settings), cells[field]] as const);
    return Object.fromEntries(named);
  });
}

/** The table's own header for a field; ours where it has none, so that the workbook can say so. */
export function headerOf(table: TableData, field: ThrowField, settings: Settings): string {
  const at = throwLayout([table.headers], "log", settings).at[field];
  const ours = THROW_HEADERS[field][0];
  return table.headers[at] ?? ours[0]!.toUpperCase() + ours.slice(1);
}
