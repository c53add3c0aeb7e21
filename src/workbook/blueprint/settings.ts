import { SETTING_NAMES, settingRule, type SettingRule } from "../../core/log/settingsTable";
import type { Content } from "./content";
import { DAY, SHARE, text, WHOLE } from "./parts";
import type { CellsPlan, ListRule, NumberFormat } from "./types";
import type { CellValue } from "../port";

interface Setting {
  readonly label: string;
  readonly value: CellValue;
  readonly hint: string;
  readonly format?: NumberFormat;
  readonly list?: ListRule;
}

const FORMATS = { whole: WHOLE, share: SHARE, decimals: "0.00##" } as const;

function formatOf({ kind, look }: SettingRule): NumberFormat | undefined {
  return kind === "date" ? DAY : look && FORMATS[look];
}

/** Its unit, and a word of help beside it. */
function settingOf(rule: SettingRule): Setting {
  const format = formatOf(rule);
  return {
    label: rule.label,
    value: rule.usual,
    hint: `${rule.unit}: ${rule.help}`,
    ...(format === undefined ? {} : { format }),
    ...(rule.words === undefined ? {} : { list: { values: rule.words, strict: true } }),
  };
}

const PUTTING = settingRule("putting");
const USUAL: readonly Setting[] = SETTING_NAMES.map(settingRule)
  .filter((rule) => rule !== PUTTING)
  .map(settingOf);

const FIRST_ROW = 24;

/** The cell of one setting, with its format and its list. */
const refined = ({ value, format, list }: Setting, index: number): CellsPlan => ({
  kind: "cells",
  at: `F${FIRST_ROW + index}`,
  values: [[value]],
  style: "input",
  ...(format === undefined ? {} : { format }),
  ...(list === undefined ? {} : { list }),
});

/** Settings and, as its last rows, Putting: one named range over both, one over the putts alone. */
export function settingsBlocks(content: Content): readonly CellsPlan[] {
  const all = USUAL.map((setting) => ({
    ...setting,
    value: content.settings.get(setting.label.toLowerCase()) ?? setting.value,
  }));
  const puttingRow = FIRST_ROW + all.length + 1;
  const shares = content.putting.map((row) => [row[1] ?? ""]);
  return [
    text("E22", "heading", "Settings"),
    text("E23", "hint", "Change them here; everything follows."),
    {
      kind: "cells",
      at: `E${FIRST_ROW}`,
      name: "Settings",
      values: [
        ...all.map(({ label, value }) => [label, value]),
        [PUTTING.label, ""],
        ...content.putting,
      ],
      styles: ["label", "input"],
    },
    ...all.map(refined),
    {
      kind: "cells",
      at: `G${FIRST_ROW}`,
      values: [...all.map(({ hint }) => [hint]), [PUTTING.help]],
      style: "hint",
    },
    {
      kind: "cells",
      at: `E${puttingRow}`,
      name: "Putting",
      values: content.putting,
      style: "input",
      format: WHOLE,
    },
    { kind: "cells", at: `F${puttingRow}`, values: shares, style: "input", format: SHARE },
  ];
}
