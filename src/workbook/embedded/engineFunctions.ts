/** Registers the functions bundle with the formula engine, with the help texts of functions.json. */
import type { Ctor } from "@univerjs/core";
import {
  BaseFunction,
  FunctionType,
  type BaseValueObject,
  type IFunctionInfo,
} from "@univerjs/engine-formula";
import { engineAnswer, engineError } from "./engineAnswer";
import type { FaultMessages } from "./faults";
import {
  CellFault,
  type CustomFunction,
  type FunctionMetadata,
  type FunctionsBundle,
  type ParameterMetadata,
} from "./functionsBundle";
import { plainArguments } from "./plainArguments";

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
