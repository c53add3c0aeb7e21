/** What the workbook has of what the product needs. */
import type { Book } from "../book/book";
import { SETTINGS, TABLES } from "../book/rawBook";

export interface Part {
  readonly name: string;
  readonly what: string;
  readonly there: boolean;
}

export const partsOf = ({ raw }: Book): readonly Part[] => [
  { name: TABLES.throws, what: "your throws", there: raw.throws !== null },
  { name: TABLES.bag, what: "your discs", there: raw.bag !== null },
  { name: TABLES.course, what: "the holes", there: raw.course !== null },
  { name: TABLES.results, what: "what happened on the course", there: raw.results !== null },
  { name: SETTINGS, what: "units, wind, circle, putting", there: raw.settings !== null },
];
