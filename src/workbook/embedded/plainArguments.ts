/** From the formula engine's values to what Excel sends a custom function. */
import type { ArrayValueObject, BaseValueObject } from "@univerjs/engine-formula";
import type { ParameterMetadata } from "./functionsBundle";

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
