import { Workbook } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";

/** A workbook without sheets that can hold charts. */
export function newBook(): Workbook {
  installChartSupport();
  const book = new Workbook();
  book.creator = book.lastModifiedBy = book.title = "Carrybook";
  return Object.assign(book, NO_WORDS);
}

/** Left out of the file instead of written as empty, as they come back from reading it. */
const NO_WORDS = {
  subject: undefined,
  description: undefined,
  keywords: undefined,
  category: undefined,
};
