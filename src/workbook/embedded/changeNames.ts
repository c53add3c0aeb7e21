/** Changes of defined names. */
import { generateRandomId, type IRange } from "@univerjs/core";
import {
  IDefinedNamesService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
} from "@univerjs/engine-formula";
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from "@univerjs/sheets";
import { fixedRef } from "../a1";
import type { Engine } from "./engine";
import { areaOf } from "./ranges";
import { change, type Change } from "./step";

export function addName({ unitId }: Engine, sheet: string, name: string, range: IRange): Change {
  const params = {
    id: generateRandomId(),
    unitId,
    name,
    formulaOrRefString: fixedRef(sheet, areaOf(range)),
    localSheetId: SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  };
  return change(SetDefinedNameMutation.id, params, RemoveDefinedNameMutation.id, params);
}

export function removeName({ unitId, injector }: Engine, id: string): Change {
  const known = injector.get(IDefinedNamesService).getValueById(unitId, id)!;
  const params = { ...known, unitId };
  return change(RemoveDefinedNameMutation.id, params, SetDefinedNameMutation.id, params);
}
