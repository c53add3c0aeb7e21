/** The spill operator A1# as a function of the engine: the range that the formula of a cell fills. */
import type { Ctor, IRange } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  type BaseReferenceObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  type FunctionVariantType,
  type IFunctionInfo,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import type { FaultMessages } from "./changes";
import {
  CellFault,
  type CustomFunction,
  type FunctionMetadata,
  type FunctionsBundle,
  type ParameterMetadata,
} from "./engine";

// From what a custom function answers to the formula engine's values, under Excel's rules.

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

// From the formula engine's values to what Excel sends a custom function.

type Plain = string | number | boolean | object | null;

/** An error cell, in the shape in which Office.js sends one. */
const errorCell = (code: string): object => ({
  type: "Error",
  basicType: "Error",
  basicValue: code,
});

function plainCell(value: BaseValueObject | null): Plain {
  if (value === null || value.isNull()) return "";
  if (value.isError()) return errorCell(String(value.getValue()));
  return value.getValue() as string | number | boolean;
}

/**
 * The engine hands every function of one calculation the same array for the same range, so each is
 * turned into plain cells once. Frozen, it tells the functions that they may go by its identity.
 */
const converted = new WeakMap<ArrayValueObject, readonly Plain[][]>();

function plainCells(array: ArrayValueObject): readonly Plain[][] {
  const known = converted.get(array);
  if (known !== undefined) return known;
  const cells = Object.freeze(
    array.getArrayValue().map((row) => Array.from(row, (cell) => plainCell(cell ?? null))),
  );
  converted.set(array, cells);
  return cells;
}

/** One argument; null where it was left out. */
function plainArgument(
  value: BaseValueObject | undefined,
  parameter: ParameterMetadata | undefined,
): unknown {
  if (value === undefined || value.isNull()) return null;
  const matrix = parameter?.dimensionality === "matrix";
  if (!value.isArray()) return matrix ? [[plainCell(value)]] : plainCell(value);
  const cells = plainCells(value as ArrayValueObject);
  const single = cells.length === 1 && cells[0]?.length === 1;
  return single && !matrix ? cells[0]![0] : cells;
}

/** Arguments for one call: as many as the function has parameters, like Excel. */
export const plainArguments = (
  values: readonly BaseValueObject[],
  parameters: readonly ParameterMetadata[],
): unknown[] =>
  Array.from({ length: Math.max(values.length, parameters.length) }, (_, at) =>
    plainArgument(values[at], parameters[at]),
  );

// Registers the functions bundle with the formula engine, with the help texts of functions.json.

/** Namespace of the functions in cells. */
export const NAMESPACE = "CARRY";
const cellName = (meta: FunctionMetadata): string => `${NAMESPACE}.${meta.name.toUpperCase()}`;

/**
 * A function of the engine around one of ours. A subclass of BaseFunction and not the engine's own
 * wrapper for custom functions, because that one turns blank cells into 0.
 */
function engineFunction(
  run: CustomFunction,
  parameters: readonly ParameterMetadata[],
  faults: FaultMessages,
): Ctor<BaseFunction> {
  return class extends BaseFunction {
    override minParams = parameters.filter((parameter) => !parameter.optional).length;
    override maxParams = parameters.length;

    override calculate(...values: BaseValueObject[]): BaseValueObject {
      const place = { sheetId: this.subUnitId ?? "", row: this.row, column: this.column };
      faults.note(place, undefined);
      try {
        return engineAnswer(run(...plainArguments(values, parameters)));
      } catch (thrown) {
        faults.note(place, thrown instanceof CellFault ? thrown.message : String(thrown));
        return engineError(thrown);
      }
    }
  };
}

const helpOf = (meta: FunctionMetadata): IFunctionInfo => ({
  functionName: cellName(meta),
  functionType: FunctionType.User,
  description: meta.description ?? "",
  abstract: meta.description ?? "",
  functionParameter: meta.parameters.map((parameter) => ({
    name: parameter.name,
    detail: parameter.description ?? "",
    example: "",
    require: parameter.optional ? 0 : 1,
    repeat: 0,
  })),
});

/** What the engine and the help are given at start: a class and a name each, and the descriptions. */
export function engineFunctions(
  bundle: FunctionsBundle,
  faults: FaultMessages,
): { functions: [Ctor<BaseFunction>, string][]; descriptions: IFunctionInfo[] } {
  const present = bundle.metadata.filter((meta) => bundle.functions.has(meta.id));
  return {
    functions: present.map((meta) => [
      engineFunction(bundle.functions.get(meta.id)!, meta.parameters, faults),
      cellName(meta),
    ]),
    descriptions: present.map(helpOf),
  };
}

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
