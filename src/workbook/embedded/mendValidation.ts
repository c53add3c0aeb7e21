import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";
import type { Engine } from "./engine";

/**
 * Cells with a list are checked a moment after they changed. By then their sheet may have been
 * replaced; the engine (0.25.1) then rejects a promise that nobody waits for.
 */
export function mendValidation({
  injector,
  workbook,
}: Pick<Engine, "injector" | "workbook">): void {
  const validator = injector.get(SheetsDataValidationValidatorService);
  const validate = validator.validatorRanges.bind(validator);
  validator.validatorRanges = async (unitId, subUnitId, ranges) =>
    workbook.getSheetBySheetId(subUnitId) ? validate(unitId, subUnitId, ranges) : [];
}
