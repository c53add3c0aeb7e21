/**
 * Cures: figures that do not follow inserted, removed, moved and sorted rows and columns, replaced
 * sheets, and tables or names that were changed or removed. Seen in 0.25.1, which works out only what it
 * finds to hang on the cells of such a change, and finds too little: nothing for an inserted row, nor for
 * a table or name that is gone.
 *
 * After any of these every formula is worked out. They are rare beside changed cells.
 */
import type { Injector } from "@univerjs/core";
import {
  IActiveDirtyManagerService,
  RemoveDefinedNameMutation,
  RemoveSuperTableMutation,
  SetDefinedNameMutation,
  SetSuperTableMutation,
} from "@univerjs/engine-formula";
import {
  InsertColMutation,
  InsertRowMutation,
  InsertSheetMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  ReorderRangeMutation,
  SetWorksheetColumnCountMutation,
  SetWorksheetNameMutation,
  SetWorksheetRowCountMutation,
} from "@univerjs/sheets";
import { SetSheetTableFilterMutation } from "@univerjs/sheets-table";
import { forgetFormulas } from "./rememberedTables";

const STRUCTURAL = [
  InsertRowMutation,
  InsertColMutation,
  RemoveRowMutation,
  RemoveColMutation,
  MoveRowsMutation,
  MoveColsMutation,
  MoveRangeMutation,
  ReorderRangeMutation,
  InsertSheetMutation,
  RemoveSheetMutation,
  SetWorksheetNameMutation,
  SetWorksheetRowCountMutation,
  SetWorksheetColumnCountMutation,
  SetSuperTableMutation,
  RemoveSuperTableMutation,
  SetSheetTableFilterMutation,
  SetDefinedNameMutation,
  RemoveDefinedNameMutation,
];

export function mendStructuralChanges({ injector }: { readonly injector: Injector }): void {
  const whatIsDirty = injector.get(IActiveDirtyManagerService);
  for (const { id } of STRUCTURAL) {
    const known = whatIsDirty.get(id);
    whatIsDirty.register(id, {
      commandId: id,
      getDirtyData: (command) => {
        // Formulas that were read are remembered with the ranges of names and tables in them.
        forgetFormulas({ injector });
        return { ...known?.getDirtyData(command), forceCalculation: true };
      },
    });
  }
}
