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

const oneOf = (...values: string[]): ListRule => ({ values, strict: true });

/** The usual figures are the model's own; see src/core/constants.ts for where each comes from. */
const USUAL: readonly Setting[] = [
  { label: "Player", value: "", hint: "blank: everyone's throws count" },
  { label: "As of", value: "", hint: "blank: the newest throw", format: DAY },
  { label: "Memory (days)", value: 180, hint: "after so many a throw counts half", format: WHOLE },
  { label: "Distances in", value: "ft", hint: "ft or m", list: oneOf("ft", "m") },
  { label: "Wind in", value: "mph", hint: "mph, km/h or m/s", list: oneOf("mph", "km/h", "m/s") },
  { label: "Temperature", value: "", hint: "blank: usual for the altitude" },
  { label: "Temperature in", value: "F", hint: "F or C", list: oneOf("F", "C") },
  { label: "Altitude", value: "", hint: "blank: sea level", format: WHOLE },
  { label: "Humidity", value: "", hint: "blank: dry", format: SHARE },
  { label: "Circle", value: 10, hint: "metres around the target", format: WHOLE },
  { label: "Usual spread", value: 0.07, hint: "of carry, for a disc hardly thrown", format: SHARE },
  { label: "Side spread", value: 0.06, hint: "sideways, in radians", format: "0.00" },
  { label: "Lowest power", value: 0.8, hint: "softest throw you would choose", format: SHARE },
  { label: "Highest power", value: 1, hint: "hardest", format: SHARE },
  {
    label: "Aim for",
    value: "strokes",
    hint: "strokes or circle",
    list: oneOf("strokes", "circle"),
  },
  { label: "Uphill factor", value: 1, hint: "from Rounds, once it is sure", format: "0.00" },
  { label: "Wind factor", value: 1, hint: "from Rounds, once it is sure", format: "0.00" },
];

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
        ["Putting", ""],
        ...content.putting,
      ],
      styles: ["label", "input"],
    },
    ...all.map(refined),
    {
      kind: "cells",
      at: `G${FIRST_ROW}`,
      values: [
        ...all.map(({ hint }) => [hint]),
        ["distance, and share of putts made from there"],
        ["blank: a usual table"],
      ],
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
