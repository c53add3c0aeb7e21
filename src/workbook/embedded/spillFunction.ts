/** The spill operator A1# as a function of the engine: the range that the formula of a cell fills. */
import type { IRange } from "@univerjs/core";
import {
  BaseFunction,
  ErrorType,
  ErrorValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";

export class SpillFunction extends BaseFunction {
  override minParams = 1;
  override maxParams = 1;
  override needsReferenceObject = true;

  override calculate(anchor: BaseValueObject): ReturnType<BaseFunction["calculate"]> {
    const variant = anchor as FunctionVariantType;
    if (variant.isError()) return variant;
    if (!variant.isReferenceObject()) return ErrorValueObject.create(ErrorType.REF);
    const reference = variant as BaseReferenceObject;
    const spilled = spilledRange(reference);
    return spilled
      ? this.createReferenceObject(reference, spilled)
      : ErrorValueObject.create(ErrorType.REF);
  }
}

/** What the formula fills in this calculation, or filled in the last one. */
function spilledRange(reference: BaseReferenceObject): IRange | null {
  const { startRow, startColumn } = reference.getRangePosition();
  for (const known of [
    reference.getCurrentRuntimeActiveArrayFormulaRange(),
    reference.getCurrentActiveArrayFormulaRange(),
  ]) {
    const range = known?.[startRow]?.[startColumn];
    if (range) return range;
  }
  return null;
}
