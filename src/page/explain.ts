/** Why a cell shows an error: in the grid's own hint over the cell, and in a line under the grid for the keyboard. */
import {
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { CellAlertManagerService, type ICellAlert } from "@univerjs/sheets-ui";
import type { Calculation } from "../workbook/embedded/calculation";
import type { Engine } from "../workbook/embedded/engine";

/** The grid explains its own error codes; where one of our functions gave a sentence, that is better. */
export function explainInHints({ injector, faults }: Engine): void {
  const alerts = injector.get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert: ICellAlert) => {
    const { subUnitId, row, col } = alert.location;
    const sentence = faults.at({ sheetId: subUnitId, row, column: col });
    show(sentence === undefined ? alert : { ...alert, message: sentence, width: 260, height: 90 });
  };
}

/** Keeps the line at the sentence of the selected cell; hidden where there is none. */
export function explainInLine(engine: Engine, calculation: Calculation, line: HTMLElement): void {
  const { injector, workbook, faults } = engine;
  const selections = injector.get(SheetsSelectionsService);
  const update = (): void => {
    const cell = selections.getCurrentLastSelection()?.primary;
    const sheetId = workbook.getActiveSheet().getSheetId();
    const sentence = cell && faults.at({ sheetId, row: cell.actualRow, column: cell.actualColumn });
    line.textContent = sentence ?? "";
    line.hidden = sentence === undefined;
  };
  selections.selectionMoveEnd$.subscribe(update);
  engine.commands.onCommandExecuted(({ id }) => {
    if (id === SetSelectionsOperation.id || id === SetWorksheetActiveOperation.id) update();
  });
  calculation.onDone(update);
}
