import bag from "../../../seeds/bag.json";
import course from "../../../seeds/course.json";
import putting from "../../../seeds/putting.json";
import putts from "../../../seeds/putts.json";
import results from "../../../seeds/results.json";
import throws from "../../../seeds/throws.json";
import { dayFromIso } from "../../core/log/cell";
import type { CellValue } from "../port";
import { type DataPart, forEachTable } from "./dataTables";

type Rows = readonly (readonly CellValue[])[];

/** What stands in the tables and inputs of a new workbook. */
export interface Content extends Readonly<Record<DataPart, Rows>> {
  /** Values of settings by label, in lower case; the usual ones where there is none. */
  readonly settings: ReadonlyMap<string, CellValue>;
  /** Disc shown in the small one-disc panels. */
  readonly disc: string;
  /** Disc that it is compared with. */
  readonly otherDisc: string;
  readonly notes: string;
  /** Distance and share of putts made; blank rows where the usual table is meant. */
  readonly putting: Rows;
}

const withoutHeader = (table: Rows): Rows => table.slice(1);
const withSerialDays = (table: Rows): Rows =>
  withoutHeader(table).map(([day, ...rest]) => [dayFromIso(String(day)) ?? "", ...rest]);

/** Seven rows, so that a player's own table has room. */
const BLANK_PUTTING: Rows = Array.from({ length: 7 }, () => ["", ""]);

export const EMPTY: Content = {
  settings: new Map(),
  disc: "",
  otherDisc: "",
  notes: "",
  ...forEachTable(() => []),
  putting: BLANK_PUTTING,
};

/** Invented data; see seeds/README.md. */
export const STARTER: Content = {
  settings: new Map([["player", "Me"]]),
  disc: "Violet driver",
  otherDisc: "Coral driver",
  notes: "mint fairway 318, 305 x 270, copper mid 271 10 left",
  throws: withSerialDays(throws),
  bag: withoutHeader(bag),
  course: withoutHeader(course),
  results: withSerialDays(results),
  putts: withSerialDays(putts),
  putting: withoutHeader(putting),
};
