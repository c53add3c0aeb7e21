/** What the workbook has of what the product needs. */
import type { Book } from "../book/book";
import { DATA_PARTS, DATA_TABLES, type DataPart } from "../../workbook/blueprint/dataTables";
import { SETTINGS } from "../book/rawBook";

export interface Part {
  readonly name: string;
  readonly what: string;
  readonly there: boolean;
}

const WHAT: Readonly<Record<DataPart, string>> = {
  throws: "your throws, on Log",
  bag: "your discs, on Discs",
  course: "the holes, on Holes",
  results: "what happened there, on Rounds",
};

export const partsOf = ({ raw }: Book): readonly Part[] => [
  ...DATA_PARTS.map((part) => ({
    name: DATA_TABLES[part],
    what: WHAT[part],
    there: raw[part] !== null,
  })),
  { name: SETTINGS, what: "units, wind, circle, putting, on Start", there: raw.settings !== null },
];
