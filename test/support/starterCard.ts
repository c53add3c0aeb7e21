/** The card of the starter workbook's own player. */
import { makeCard } from "../../src/core/carry/card";
import { readBag } from "../../src/core/log/readBag";
import { readThrows } from "../../src/core/log/readThrows";
import type { Card, Cells, Settings } from "../../src/core/types";
import { starterBlueprint } from "../../src/workbook/blueprint";

function tableCells(name: string): Cells {
  for (const { blocks } of starterBlueprint().sheets)
    for (const block of blocks)
      if (block.kind === "table" && block.name === name)
        return [block.columns.map(({ header }) => header), ...block.rows];
  throw new RangeError(`The starter workbook has no table ${name}.`);
}

export function starterCard(settings: Settings): Card {
  const log = readThrows(tableCells("Throws"), settings);
  return makeCard(log, readBag(tableCells("Bag")), settings);
}
