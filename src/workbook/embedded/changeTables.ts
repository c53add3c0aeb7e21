/** Changes of tables. */
import { generateRandomId, type IRange } from "@univerjs/core";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  SetSheetTableMutation,
  TableManager,
} from "@univerjs/sheets-table";
import type { Engine } from "./engine";
import type { RenderedTable } from "./sketch";
import { change, type Change } from "./step";
import { TABLE_LOOK } from "./tableLook";

export function addTable({ unitId }: Engine, subUnitId: string, table: RenderedTable): Change {
  const tableId = generateRandomId();
  const options = { tableStyleId: TABLE_LOOK, showHeader: true };
  return change(
    AddSheetTableMutation.id,
    { unitId, subUnitId, tableId, ...table, options },
    DeleteSheetTableMutation.id,
    { unitId, subUnitId, tableId },
  );
}

export function removeTable({ unitId, injector }: Engine, tableId: string): Change {
  const { id, name, range, subUnitId, columns } = injector
    .get(TableManager)
    .getTableById(unitId, tableId)!
    .getTableInfo();
  const again = {
    ...{ unitId, subUnitId, tableId: id, name, range },
    header: columns.map((column) => column.displayName),
    options: { tableStyleId: TABLE_LOOK, showHeader: true },
  };
  const gone = { unitId, subUnitId, tableId };
  return change(DeleteSheetTableMutation.id, gone, AddSheetTableMutation.id, again);
}

export function resizeTable(
  { unitId }: Engine,
  subUnitId: string,
  tableId: string,
  before: IRange,
  newRange: IRange,
): Change {
  const id = SetSheetTableMutation.id;
  const at = { unitId, subUnitId, tableId };
  return change(id, { ...at, config: { updateRange: { newRange } } }, id, {
    ...at,
    config: { updateRange: { newRange: before } },
  });
}
