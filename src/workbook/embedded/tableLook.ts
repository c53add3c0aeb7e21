/** Our look for tables: a grey header and thin lines, no stripes that shout. */
import { BorderStyleTypes } from "@univerjs/core";
import { RangeThemeStyle, SheetRangeThemeModel } from "@univerjs/sheets";
import type { Engine } from "./engine";

export const TABLE_LOOK = "carrybook-table";

const line = { s: BorderStyleTypes.THIN, cl: { rgb: "#c9d1d4" } };

/** Makes the look known to the engine, which finds a table's look by its name. */
export function registerTableLook({ injector }: Pick<Engine, "injector">): void {
  const look = new RangeThemeStyle(TABLE_LOOK, {
    headerRowStyle: { bd: { t: line, b: line } },
    secondRowStyle: { bg: { rgb: "#f6f8f8" } },
    lastRowStyle: { bd: { b: line } },
  });
  injector.get(SheetRangeThemeModel).registerDefaultRangeTheme(look);
}
