/** What is pasted right below a table becomes part of the table, as what is typed there does. */
import { SheetsSelectionsService } from "@univerjs/sheets";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { EmbeddedWorkbook } from "../workbook/embedded";
import type { Engine } from "../workbook/embedded/engine";

export function followPasting({ injector, workbook }: Engine, port: EmbeddedWorkbook): void {
  injector.get(ISheetClipboardService).addClipboardHook({
    id: "carrybook.grow-tables",
    onAfterPaste: (success) => {
      if (!success) return;
      for (const { range } of injector.get(SheetsSelectionsService).getCurrentSelections())
        port.takeIn(workbook.getActiveSheet(), range);
    },
  });
}
