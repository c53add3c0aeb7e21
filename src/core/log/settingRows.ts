/** The settings range taken apart: which label holds what, and the putting pairs under theirs. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells } from "../types";
import { describeCell, isBlank, plainCell, type PlainCell } from "./cell";
import { headingOf, type Aliases } from "./headings";
import { SETTING_LABELS, type SettingName } from "./settingsTable";

export interface SettingCell {
  /** The label as the sheet has it, for sentences. */
  readonly label: string;
  /** What stands in brackets behind the label; "" for nothing. */
  readonly unit: string;
  readonly cell: PlainCell;
}

export interface SettingRows {
  readonly given: ReadonlyMap<SettingName, SettingCell>;
  /** Distance and share as they stand under the label Putting. */
  readonly putting: readonly (readonly [distance: PlainCell, share: PlainCell])[];
}

/** A header over the two columns is welcome and means nothing. */
const HEADERS: Aliases<"header"> = { header: ["setting", "settings", "label"] };

export function settingRows(cells: Cells): SettingRows {
  const given = new Map<SettingName, SettingCell>();
  const putting: (readonly [PlainCell, PlainCell])[] = [];
  let underPutting = false;
  cells.forEach((cellsOfRow, index) => {
    const label = plainCell(cellsOfRow[0]);
    const cell = plainCell(cellsOfRow[1]);
    if (saysNothing(label) && saysNothing(cell)) return;
    if (underPutting && typeof label === "number") {
      putting.push([label, cell]);
      return;
    }
    if (isBlank(label)) throw unusable(messages.log.unlabelled(index + 1));
    if (index === 0 && headingOf(label, HEADERS)) return;
    const heading = headingOf(label, SETTING_LABELS);
    const shown = typeof label === "string" ? label.trim() : describeCell(label);
    if (!heading) throw unusable(messages.log.unknownSetting(index + 1, shown));
    if (given.has(heading.field)) throw unusable(messages.log.settingTwice(index + 1, shown));
    given.set(heading.field, { label: shown, unit: heading.unit, cell });
    underPutting = heading.field === "putting";
  });
  return { given, putting };
}

/** Some hosts send a blank cell as 0. */
const saysNothing = (cell: PlainCell): boolean => cell === 0 || isBlank(cell);
