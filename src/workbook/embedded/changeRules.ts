/** Lists that cells offer, and bars behind shares. */
import {
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  type IRange,
  type ISheetDataValidationRule,
} from "@univerjs/core";
import { AddDataValidationMutation, RemoveDataValidationMutation } from "@univerjs/data-validation";
import {
  AddConditionalRuleMutation,
  CFRuleType,
  CFValueType,
  DeleteConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import type { ListRule } from "../blueprint/types";
import type { Engine } from "./engine";
import { change, type Change } from "./step";
import { ACCENT } from "./styles";

export function addList(
  { unitId }: Engine,
  subUnitId: string,
  ranges: IRange[],
  { values, column, strict }: ListRule,
): Change {
  const rule: ISheetDataValidationRule = {
    uid: generateRandomId(),
    type: DataValidationType.LIST,
    formula1: column ? `=${column}` : (values ?? []).join(","),
    ranges,
    allowBlank: true,
    showErrorMessage: strict,
    errorStyle: strict ? DataValidationErrorStyle.STOP : DataValidationErrorStyle.INFO,
    renderMode: DataValidationRenderMode.ARROW,
  };
  const at = { unitId, subUnitId };
  return change(AddDataValidationMutation.id, { ...at, rule }, RemoveDataValidationMutation.id, {
    ...at,
    ruleId: rule.uid,
  });
}

/** A bar behind shares from 0 to 1. */
export function addBar({ unitId }: Engine, subUnitId: string, range: IRange): Change {
  const cfId = generateRandomId();
  const rule = {
    cfId,
    ranges: [range],
    stopIfTrue: false,
    rule: {
      type: CFRuleType.dataBar,
      isShowValue: true,
      config: {
        min: { type: CFValueType.num, value: 0 },
        max: { type: CFValueType.num, value: 1 },
        isGradient: false,
        positiveColor: `${ACCENT}55`,
        nativeColor: `${ACCENT}55`,
      },
    },
  };
  const at = { unitId, subUnitId };
  return change(AddConditionalRuleMutation.id, { ...at, rule }, DeleteConditionalRuleMutation.id, {
    ...at,
    cfId,
  });
}
