/**
 * Cures: an uncaught error after a sheet with lists was replaced. Seen in 0.25.1.
 *
 * Cells with a list are checked a moment after they changed. By then their sheet may be gone; the engine
 * then rejects a promise that nobody waits for.
 */
import type { Injector, Workbook } from "@univerjs/core";
import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";

export function mendLateChecks({
  injector,
  workbook,
}: {
  readonly injector: Injector;
  readonly workbook: Workbook;
}): void {
  const validator = injector.get(SheetsDataValidationValidatorService);
  const validate = validator.validatorRanges.bind(validator);
  validator.validatorRanges = async (unitId, subUnitId, ranges) =>
    workbook.getSheetBySheetId(subUnitId) ? validate(unitId, subUnitId, ranges) : [];
}
