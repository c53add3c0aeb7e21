/** Throws on their way into the sheet, under whatever headers and units its table has. */
import { THROW_HEADERS, type ThrowField, throwLayout } from "../../core/log/readThrows";
import type { Settings, Throw } from "../../core/types";
import type { CellValue, Row, TableData } from "../../workbook/port";

export type NewThrow = Omit<Throw, "row">;

/** Digits that survive the way through metres and back. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** Rows for `addRows`: blanks stay blank, a smooth power is not written. */
export function rowsFor(table: TableData, throws: readonly NewThrow[], settings: Settings): Row[] {
  const layout = throwLayout([table.headers], "log", settings);
  const headers = headersOf(table, settings);
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
    return Object.fromEntries(
      FIELDS.filter((field) => cells[field] !== "").map((field) => [headers[field], cells[field]]),
    );
  });
}

const FIELDS = Object.keys(THROW_HEADERS) as ThrowField[];

/** The table's own header of each field; ours where it has none, so that the workbook can say so. */
export function headersOf(table: TableData, settings: Settings): Record<ThrowField, string> {
  const { at } = throwLayout([table.headers], "log", settings);
  const ours = (field: ThrowField): string => field[0]!.toUpperCase() + field.slice(1);
  return Object.fromEntries(
    FIELDS.map((field) => [field, table.headers[at[field]] ?? ours(field)]),
  ) as Record<ThrowField, string>;
}
