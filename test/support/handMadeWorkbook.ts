/** .xlsx files put together part by part, with what no library of ours would write. */
import { strToU8, zipSync } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

export interface HandMade {
  /** Sheets by name: what stands inside `<worksheet>`. */
  readonly sheets: Readonly<Record<string, string>>;
  /** What stands in `<workbook>` behind the sheets. */
  readonly workbook?: string;
  readonly workbookPr?: string;
  /** Tables by sheet: what stands inside `<table>`, its attributes included. */
  readonly tables?: Readonly<Record<string, string>>;
  readonly strings?: readonly string[];
  /** Any other parts, by path. */
  readonly parts?: Readonly<Record<string, string>>;
  /** Further relations of the package, as XML. */
  readonly rootRelations?: string;
}

const relations = (inside: string): string =>
  `<Relationships xmlns="${RELATIONS}">${inside}</Relationships>`;
const relation = (id: string, kind: string, target: string): string =>
  `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;
const attribute = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/"/g, "&quot;").replace(/</g, "&lt;");

/** The parts of the file by path. */
export function handMadeParts({
  sheets,
  workbook = "",
  workbookPr = "",
  tables = {},
  strings = [],
  parts = {},
  rootRelations = "",
}: HandMade): Record<string, string> {
  const names = Object.keys(sheets);
  const made: Record<string, string> = {
    "[Content_Types].xml":
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/></Types>',
    "_rels/.rels": relations(relation("rId1", "officeDocument", "xl/workbook.xml") + rootRelations),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${workbookPr}<sheets>${names
      .map((name, i) => `<sheet name="${attribute(name)}" sheetId="${i + 1}" r:id="s${i + 1}"/>`)
      .join("")}</sheets>${workbook}</workbook>`,
    "xl/_rels/workbook.xml.rels": relations(
      names
        .map((_, i) => relation(`s${i + 1}`, "worksheet", `worksheets/sheet${i + 1}.xml`))
        .join("") + relation("st", "sharedStrings", "sharedStrings.xml"),
    ),
    "xl/sharedStrings.xml": `<sst xmlns="${MAIN}">${strings.map((text) => `<si>${text}</si>`).join("")}</sst>`,
  };
  names.forEach((name, i) => {
    made[`xl/worksheets/sheet${i + 1}.xml`] =
      `<?xml version="1.0"?>\n<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}">${sheets[name]}</worksheet>`;
    const table = tables[name];
    if (table === undefined) return;
    made[`xl/tables/table${i + 1}.xml`] = `<table xmlns="${MAIN}" ${table}</table>`;
    made[`xl/worksheets/_rels/sheet${i + 1}.xml.rels`] = relations(
      relation("t1", "table", `/xl/tables/table${i + 1}.xml`),
    );
  });
  return { ...made, ...parts };
}

/** The file. */
export const handMadeWorkbook = (plan: HandMade): Uint8Array =>
  zipSync(
    Object.fromEntries(
      Object.entries(handMadeParts(plan)).map(([path, text]) => [path, strToU8(text)]),
    ),
    { mtime: new Date(1980, 0, 1) },
  );
