/**
 * Cures: a sheet whose formulas refer to itself by its name is deleted, but this cannot be undone, and its
 * names and tables stay. Seen in 0.25.1, which writes #REF! into the formulas of the sheet that has just
 * gone, fails at that and stops half-way.
 */
import type { Injector } from "@univerjs/core";
import {
  type IRemoveSheetCommandParams,
  RemoveSheetCommand,
  SetRangeValuesMutation,
  SheetInterceptorService,
} from "@univerjs/sheets";

export function mendDeletedSheets({ injector }: { readonly injector: Injector }): void {
  const interceptors = injector.get(SheetInterceptorService);
  const gather = interceptors.onCommandExecute.bind(interceptors);
  interceptors.onCommandExecute = (command) => {
    const also = gather(command);
    if (command.id !== RemoveSheetCommand.id) return also;
    const { subUnitId } = command.params as IRemoveSheetCommandParams;
    const isThere = ({ id, params }: { id: string; params: unknown }): boolean =>
      id !== SetRangeValuesMutation.id || (params as { subUnitId: string }).subUnitId !== subUnitId;
    return { ...also, redos: also.redos.filter(isThere) };
  };
}
