/** Lists and bars of a table's columns follow the table when it grows or shrinks. */
import type { IRange, ISheetDataValidationRule } from "@univerjs/core";
import {
  UpdateDataValidationMutation,
  UpdateRuleType,
  type IUpdateRulePayload,
} from "@univerjs/data-validation";
import {
  ConditionalFormattingRuleModel,
  SetConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import type { Engine } from "./engine";
import type { Change } from "./changes";

/** The range that ended where the table did, down to its new end. */
const stretched = (range: IRange, table: IRange, endRow: number): IRange =>
  range.endRow === table.endRow &&
  range.startRow > table.startRow &&
  range.startColumn >= table.startColumn &&
  range.endColumn <= table.endColumn
    ? { ...range, endRow }
    : range;

const moved = (before: readonly IRange[], after: readonly IRange[]): boolean =>
  after.some((range, at) => range !== before[at]);

export function stretchLists(
  engine: Engine,
  subUnitId: string,
  table: IRange,
  endRow: number,
): Change[] {
  const { unitId, injector } = engine;
  const at = { unitId, subUnitId };
  const all = (ranges: readonly IRange[]): IRange[] =>
    ranges.map((range) => stretched(range, table, endRow));

  const lists = injector
    .get(SheetDataValidationModel)
    .getRules(unitId, subUnitId)
    .filter(({ ranges }: ISheetDataValidationRule) => moved(ranges, all(ranges)))
    .map(({ uid, ranges }: ISheetDataValidationRule) => {
      const set = (payload: IRange[]): object => ({
        ...at,
        ruleId: uid,
        payload: { type: UpdateRuleType.RANGE, payload } satisfies IUpdateRulePayload,
      });
      const id = UpdateDataValidationMutation.id;
      return { redo: { id, params: set(all(ranges)) }, undo: { id, params: set(ranges) } };
    });

  const bars = (
    injector.get(ConditionalFormattingRuleModel).getSubunitRules(unitId, subUnitId) ?? []
  )
    .filter(({ ranges }) => moved(ranges, all(ranges)))
    .map((rule) => {
      const set = (ranges: IRange[]): object => ({
        ...at,
        cfId: rule.cfId,
        rule: { ...rule, ranges },
      });
      const id = SetConditionalRuleMutation.id;
      return {
        redo: { id, params: set(all(rule.ranges)) },
        undo: { id, params: set(rule.ranges) },
      };
    });
  return [...lists, ...bars];
}
