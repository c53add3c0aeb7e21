/** Changes of cells. */
import type { ICellData, IObjectMatrixPrimitiveType } from "@univerjs/core";
import {
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";
import { isBlankCell } from "./cells";
import type { Engine } from "./engine";
import { change, type Change } from "./step";

export type Cells = IObjectMatrixPrimitiveType<ICellData>;

export function setCells(engine: Engine, subUnitId: string, cellValue: Cells): Change {
  const params = { unitId: engine.unitId, subUnitId, cellValue };
  const before = SetRangeValuesUndoMutationFactory(engine.injector, params);
  return change(SetRangeValuesMutation.id, params, SetRangeValuesMutation.id, before);
}

/** Writes cells, but of those that were typed already only the style: neither way touches their content. */
export function dressCells(engine: Engine, subUnitId: string, cells: Cells, typed: Cells): Change {
  const styleOnly = (all: Cells): Cells => {
    const kept: Record<number, Record<number, ICellData>> = {};
    for (const [row, line] of Object.entries(all)) {
      const made: Record<number, ICellData> = (kept[Number(row)] = {});
      for (const [column, cell] of Object.entries(line as Record<number, ICellData>)) {
        const isTyped = !isBlankCell(typed[Number(row)]?.[Number(column)]);
        made[Number(column)] = isTyped ? { s: cell.s ?? null } : cell;
      }
    }
    return kept;
  };
  const { redo, undo } = setCells(engine, subUnitId, styleOnly(cells));
  const before = undo.params as ISetRangeValuesMutationParams;
  const cellValue = styleOnly(before.cellValue as Cells);
  return { redo, undo: { ...undo, params: { ...before, cellValue } } };
}
