/** From what a custom function answers to the formula engine's values, under Excel's rules. */
import {
  ArrayValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
} from "@univerjs/engine-formula";
import { CellFault } from "./functionsBundle";

const KNOWN_ERRORS = new Set<string>(Object.values(ErrorType));

export function engineError(fault: unknown): ErrorValueObject {
  const code = fault instanceof CellFault ? fault.code : ErrorType.VALUE;
  return ErrorValueObject.create((KNOWN_ERRORS.has(code) ? code : ErrorType.VALUE) as ErrorType);
}

/** What is no finite number, text, truth value or error shows as 0 in Excel, and so it does here. */
function engineCell(value: unknown): BaseValueObject {
  if (typeof value === "string") return StringValueObject.create(value);
  if (typeof value === "boolean") return BooleanValueObject.create(value);
  if (value instanceof CellFault) return engineError(value);
  return NumberValueObject.create(Number.isFinite(value) ? (value as number) : 0);
}

const place = { unitId: "", sheetId: "", row: -1, column: -1 };

/** One value, or a rectangle that spills; anything else is #VALUE!. */
export function engineAnswer(answer: unknown): BaseValueObject {
  if (!Array.isArray(answer)) return engineCell(answer);
  const rows = answer as unknown[][];
  const columnCount = rows[0]?.length ?? 0;
  const rectangle = rows.every((row) => Array.isArray(row) && row.length === columnCount);
  if (columnCount === 0 || !rectangle) return engineError(undefined);
  const calculateValueList = rows.map((row) => row.map(engineCell));
  return ArrayValueObject.create({
    calculateValueList,
    rowCount: rows.length,
    columnCount,
    ...place,
  });
}
