/** Writing one setting into the range Settings. */
import { headingOf } from "../../core/log/headings";
import { SETTING_LABELS, settingRule, type SettingName } from "../../core/log/settingsTable";
import type { CellValue, WorkbookPort } from "../../workbook/port";
import { PortError } from "../../workbook/port";
import type { Change } from "../undo/step";
import { SETTINGS } from "./rawBook";

/** Writes settings by their names; a range that lacks one of the labels is left as it was. */
export async function writeSettings(
  port: WorkbookPort,
  values: Readonly<Partial<Record<SettingName, CellValue>>>,
): Promise<Change> {
  const range = await port.readRange(SETTINGS);
  if (!range) throw new PortError("missing", "There is no range Settings. Make it in Set-up.");
  const cells = Object.entries(values).map(([name, now]) => {
    const row = range.findIndex(([label]) => headingOf(label, SETTING_LABELS)?.field === name);
    if (row < 0)
      throw new PortError("missing", `Settings has no ${settingRule(name as SettingName).label}.`);
    return { row, column: 1, before: range[row]![1]!, now };
  });
  for (const { row, column, now } of cells) range[row]![column] = now;
  await port.writeRange(SETTINGS, range);
  return { kind: "wrote", ref: SETTINGS, cells };
}
