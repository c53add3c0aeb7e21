/**
 * Rules that every .xlsx file we write must keep, so that Excel opens it without a repair, without
 * #NAME? and without an @. Each says where it is from. A rule answers with what breaks it.
 */
import { unzipSync, strFromU8 } from "fflate";
import { JSDOM } from "jsdom";

/** The parts of a file as text and as documents. */
export class FileParts {
  readonly texts: ReadonlyMap<string, string>;
  private readonly documents = new Map<string, Document>();

  constructor(bytes: Uint8Array) {
    const files = Object.entries(unzipSync(bytes));
    this.texts = new Map(files.map(([path, content]) => [path, strFromU8(content)]));
  }

  document(path: string): Document {
    let known = this.documents.get(path);
    if (!known) {
      const { DOMParser } = PARSER;
      known = new DOMParser().parseFromString(this.texts.get(path) ?? "<none/>", "text/xml");
      this.documents.set(path, known);
    }
    return known;
  }

  paths(pattern: RegExp): string[] {
    return [...this.texts.keys()].filter((path) => pattern.test(path));
  }

  all(pattern: RegExp, name: string): Element[] {
    return this.paths(pattern).flatMap((path) => elements(this.document(path), name));
  }

  /** Targets of a part by the id of the relation. */
  relations(path: string): Map<string, string> {
    const [folder, file] = [path.replace(/[^/]*$/, ""), path.replace(/^.*\//, "")];
    const found = elements(this.document(`${folder}_rels/${file}.rels`), "Relationship");
    return new Map(
      found.map((each) => {
        const target = each.getAttribute("Target")!;
        const steps = (target.startsWith("/") ? target : folder + target).split("/");
        const walked: string[] = [];
        for (const step of steps) {
          if (step === "..") walked.pop();
          else if (step !== "" && step !== ".") walked.push(step);
        }
        return [each.getAttribute("Id")!, walked.join("/")];
      }),
    );
  }
}

const PARSER = new JSDOM().window;
const elements = (inside: Document | Element, name: string): Element[] => [
  ...inside.getElementsByTagNameNS("*", name),
];

const SHEETS = /^xl\/worksheets\/sheet\d+\.xml$/;
const WORKBOOK = /^xl\/workbook\.xml$/;
const TABLES = /^xl\/tables\//;
const CHARTS = /^xl\/charts\/chart/;

/** The code of a formula: without text, quoted sheet names and names of columns. */
const codeOf = (formula: string): string => formula.replace(/"[^"]*"|'[^']*'|\[[^[\]]*\]/g, " ");

/** Every formula of a file, wherever one may stand. */
const formulasOf = (file: FileParts): string[] =>
  [
    ...file.all(SHEETS, "f"),
    ...file.all(SHEETS, "formula1"),
    ...file.all(SHEETS, "formula2"),
    ...file.all(TABLES, "calculatedColumnFormula"),
    ...file.all(WORKBOOK, "definedName"),
  ].map(({ textContent }) => textContent ?? "");

/** Functions of ECMA-376 part 1, 18.17.7, that our tests meet: they alone go without a prefix. */
const OLD_FUNCTIONS = new Set(
  (
    "ABS AND AVERAGE COLUMN COLUMNS COUNT COUNTA COUNTIF COUNTIFS DATE EXP FALSE FIND HLOOKUP IF IFERROR " +
    "INDEX INDIRECT INT ISBLANK ISERROR ISNUMBER ISTEXT LEFT LEN LN LOG LOOKUP LOWER MATCH MAX MEDIAN MID " +
    "MIN MOD NA NORMSDIST NORMSINV NOT OFFSET OR PI POWER RIGHT ROUND ROUNDDOWN ROUNDUP ROW ROWS SIGN SQRT " +
    "STDEV SUBSTITUTE SUM SUMIF SUMPRODUCT TEXT TODAY TRIM TRUE UPPER VALUE VLOOKUP COS SIN TAN ATAN"
  ).split(" "),
);

/** Order of the elements of a sheet (ECMA-376 part 1, 18.3.1.99). */
const SHEET_ORDER =
  "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges " +
  "scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr " +
  "conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter " +
  "rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing " +
  "legacyDrawingHF picture oleObjects controls webPublishItems tableParts extLst";

/** Labels of a chart, in the order of ECMA-376 part 1, 21.2.2.49 (Group_DLbls). */
const LABEL_PARTS =
  "showLegendKey showVal showCatName showSerName showPercent showBubbleSize".split(" ");

const spot = (ref: string): [column: number, row: number] => {
  const [, letters = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(ref) ?? [];
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return [column, Number(row)];
};

const areaOf = (ref: string): { top: number; left: number; bottom: number; right: number } => {
  const [from = "", to = from] = ref.split(":");
  const [[left, top], [right, bottom]] = [spot(from), spot(to)];
  return { top, left, bottom, right };
};

interface Rule {
  readonly says: string;
  readonly source: string;
  /** What breaks the rule; empty where nothing does. */
  readonly broken: (file: FileParts) => readonly unknown[];
}

export const RULES: readonly Rule[] = [
  {
    says: "every part is well-formed XML",
    source: "ECMA-376 part 2, 8.2; XML 1.0",
    broken: (file) =>
      [...file.texts.keys()].filter(
        (path) => elements(file.document(path), "parsererror").length > 0,
      ),
  },
  {
    says: "every relation leads to a part, and every part has a content type",
    source: "ECMA-376 part 2, 9.3 and 10.1.2",
    broken: (file) => {
      const types = file.texts.get("[Content_Types].xml")!;
      const parts = file.paths(/^(?!\[Content|.*\.rels$)/);
      const pointed = file
        .paths(/\.rels$/)
        .map((path) => path.replace("_rels/", "").replace(/\.rels$/, ""))
        .flatMap((path) => [...file.relations(path).values()]);
      return [
        ...pointed.filter((path) => !file.texts.has(path)),
        ...parts.filter((path) => !types.includes(`PartName="/${path}"`)),
        ...parts.filter((path) => !pointed.includes(path)),
      ];
    },
  },
  {
    says: "the elements of a sheet stand in their order",
    source: "ECMA-376 part 1, 18.3.1.99",
    broken: (file) => {
      const order = SHEET_ORDER.split(" ");
      return file.paths(SHEETS).filter((path) => {
        const places = [...file.document(path).documentElement.children].map(({ localName }) =>
          order.indexOf(localName),
        );
        return places.includes(-1) || places.some((place, at) => place < (places[at - 1] ?? 0));
      });
    },
  },
  {
    says: "a frozen pane has a split",
    source: "reports of repair prompts: exceljs issues 1818 and 2598",
    broken: (file) =>
      file
        .all(SHEETS, "pane")
        .filter(
          (pane) =>
            Number(pane.getAttribute("xSplit") ?? 0) <= 0 &&
            Number(pane.getAttribute("ySplit") ?? 0) <= 0,
        ),
  },
  {
    says: "the engine that calculated is not older than Excel's, and nothing is worked out on opening",
    source: "office-js issues 5754 and 6611; ECMA-376 part 1, 18.2.2",
    broken: (file) =>
      file
        .all(WORKBOOK, "calcPr")
        .filter(
          (each) =>
            Number(each.getAttribute("calcId")) < 191029 || each.hasAttribute("fullCalcOnLoad"),
        ),
  },
  {
    says: "every function that is not in ECMA-376 has its prefix",
    source: "MS-XLSX 2.2.2, future functions; ours: office-js issues 3558 and 4487 (_xldudf_)",
    broken: (file) =>
      formulasOf(file).filter((formula) =>
        [...codeOf(formula).matchAll(/([A-Za-z_][\w.]*)\(/g)].some(
          ([, name = ""]) =>
            !/^(_xlfn\.|_xldudf_CARRY_[A-Z]+$|_xlpm\.)/.test(name) && !OLD_FUNCTIONS.has(name),
        ),
      ),
  },
  {
    says: "SORT and FILTER have both prefixes, and no other function the second",
    source: "MS-XLSX 2.2.2",
    broken: (file) =>
      formulasOf(file).filter((formula) =>
        [...codeOf(formula).matchAll(/_xlfn\.(_xlws\.)?([A-Z.]+)\(/g)].some(
          ([, second, name = ""]) => /^(SORT|FILTER|PY)$/.test(name) !== (second !== undefined),
        ),
      ),
  },
  {
    says: "names that LET and LAMBDA give have theirs",
    source: "MS-XLSX 2.2.2 (_xlpm.)",
    broken: (file) =>
      formulasOf(file).filter((formula) =>
        /_xlfn\.(LET|LAMBDA)\((?!_xlpm\.)[A-Za-z_]\w*,/.test(formula),
      ),
  },
  {
    says: "no formula holds a sign that files write as a function: @ and #",
    source: "MS-XLSX 2.2.2 (SINGLE, ANCHORARRAY); ECMA-376 part 1, 18.17.2.1",
    broken: (file) =>
      formulasOf(file).filter((formula) => {
        const code = formula.replace(/"[^"]*"|'[^']*'/g, " ");
        return code.startsWith("=") || /@|[A-Z]\d+#/.test(code);
      }),
  },
  {
    says: "a formula of ours, or one that fills cells, is a dynamic array, unless it is in a table",
    source: "MS-XLSX 2.3.8 (XLDAPR), 18.3.1.4 (cm) and 18.3.1.40 (t, ref) of ECMA-376 part 1",
    broken: (file) =>
      file.paths(SHEETS).flatMap((path) => {
        const areas = [...file.relations(path).values()]
          .filter((target) => TABLES.test(target))
          .map((target) => areaOf(file.document(target).documentElement.getAttribute("ref")!));
        return elements(file.document(path), "c").filter((cell) => {
          const [formula] = elements(cell, "f");
          if (!formula) return false;
          const ref = cell.getAttribute("r")!;
          const [column, row] = spot(ref);
          const inTable = areas.some(
            ({ top, left, bottom, right }) =>
              row >= top && row <= bottom && column >= left && column <= right,
          );
          const isArray = formula.getAttribute("t") === "array";
          const isDynamic = cell.getAttribute("cm") === "1";
          const area = formula.getAttribute("ref");
          const startsHere = area?.split(":")[0] === ref;
          const isOurs = formula.textContent!.includes("_xldudf_CARRY_");
          return isArray !== isDynamic || isArray !== startsHere || isArray === inTable
            ? isOurs || isArray
            : false;
        });
      }),
  },
  {
    says: "cell metadata are there for the arrays that name them",
    source: "MS-XLSX 2.3.8; ECMA-376 part 1, 18.9",
    broken: (file) => {
      const cells = file.all(SHEETS, "c").filter((cell) => cell.hasAttribute("cm"));
      const text = file.texts.get("xl/metadata.xml") ?? "";
      return text.includes('name="XLDAPR"') && text.includes('fDynamic="1"') ? [] : cells;
    },
  },
  {
    says: "rows and cells come in order, with values that can be read",
    source: "ECMA-376 part 1, 18.3.1.73, 18.3.1.4 and 18.18.11",
    broken: (file) => {
      const strings = file.all(/^xl\/sharedStrings\.xml$/, "si").length;
      const looks = elements(
        file.all(/^xl\/styles\.xml$/, "cellXfs")[0] ?? file.document("[Content_Types].xml"),
        "xf",
      ).length;
      return file.paths(SHEETS).flatMap((path) => {
        let last = 0;
        return elements(file.document(path), "row").flatMap((row) => {
          const number = Number(row.getAttribute("r"));
          let column = 0;
          const wrong = [...row.children].filter((cell) => {
            const [at, of] = spot(cell.getAttribute("r")!);
            const value = elements(cell, "v")[0]?.textContent ?? "";
            const type = cell.getAttribute("t") ?? "n";
            const isRead =
              type === "s"
                ? Number(value) < strings
                : type === "n"
                  ? Number.isFinite(Number(value))
                  : type === "b"
                    ? /^[01]$/.test(value)
                    : type === "e"
                      ? /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA)$/.test(value)
                      : type === "str" || type === "inlineStr";
            const fits =
              of === number && at > column && Number(cell.getAttribute("s") ?? 0) < looks;
            column = at;
            return !fits || !isRead;
          });
          const inOrder = number > last;
          last = number;
          return inOrder ? wrong : [row, ...wrong];
        });
      });
    },
  },
  {
    says: "a table's headers are the texts of its header cells, each once, and its filter covers it",
    source: "ECMA-376 part 1, 18.5.1.2 and 18.5.1.3; Excel repairs a table whose headers differ",
    broken: (file) =>
      file.paths(SHEETS).flatMap((path) =>
        [...file.relations(path).values()]
          .filter((target) => TABLES.test(target))
          .filter((target) => {
            const table = file.document(target);
            const ref = table.documentElement.getAttribute("ref")!;
            const { top, left, bottom, right } = areaOf(ref);
            const names = elements(table, "tableColumn").map((each) => each.getAttribute("name")!);
            const cells = new Map(
              elements(file.document(path), "c").map((cell) => [cell.getAttribute("r"), cell]),
            );
            const strings = file.all(/^xl\/sharedStrings\.xml$/, "si");
            const shown = names.map((_, index) => {
              let letters = "";
              for (let n = left + index; n > 0; n = Math.floor((n - 1) / 26))
                letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
              const cell = cells.get(`${letters}${top}`);
              return cell?.getAttribute("t") === "s"
                ? strings[Number(elements(cell, "v")[0]!.textContent)]!.textContent
                : null;
            });
            const once = new Set(names.map((name) => name.toLowerCase())).size === names.length;
            const filter = elements(table, "autoFilter")[0]?.getAttribute("ref");
            return (
              bottom <= top ||
              right - left + 1 !== names.length ||
              !once ||
              filter !== ref ||
              names.some((name, index) => name.replace(/_x000a_/g, "\n") !== shown[index])
            );
          }),
      ),
  },
  {
    says: "names of tables and cells are allowed, and each is there once",
    source: "ECMA-376 part 1, 18.2.5 and 18.5.1.2 (displayName); Excel: names in formulas",
    broken: (file) => {
      const tables = file.paths(TABLES).map((path) => file.document(path).documentElement);
      const own = file.all(WORKBOOK, "definedName");
      const keys = [
        ...tables.map((table) => table.getAttribute("displayName")!),
        ...own.map(
          (name) => name.getAttribute("name")! + (name.getAttribute("localSheetId") ?? ""),
        ),
      ].map((name) => name.toLowerCase());
      const ids = tables.map((table) => table.getAttribute("id"));
      const sheets = file.all(WORKBOOK, "sheet").length;
      return [
        ...keys.filter((key, index) => keys.indexOf(key) !== index),
        ...ids.filter((id, index) => ids.indexOf(id) !== index),
        ...[
          ...tables.map((table) => table.getAttribute("displayName")!),
          ...own.map((name) => name.getAttribute("name")!),
        ].filter(
          (name) =>
            !/^[\p{L}_\\][\p{L}\p{N}_.\\?]{0,254}$/u.test(name) ||
            /^[A-Z]{1,3}\d+$|^[RC]$/i.test(name),
        ),
        ...own.filter((name) => Number(name.getAttribute("localSheetId") ?? 0) >= sheets),
      ];
    },
  },
  {
    says: "references to tables name tables and columns that are there, this row in full",
    source: "ECMA-376 part 1, 18.17.2 (structure references) and MS-XLSX 2.2.2 on [#This Row]",
    broken: (file) => {
      const tables = new Map(
        file
          .paths(TABLES)
          .map((path) => [
            file.document(path).documentElement.getAttribute("name")!,
            elements(file.document(path), "tableColumn").map((each) => each.getAttribute("name")!),
          ]),
      );
      return formulasOf(file).filter((formula) =>
        [
          ...formula
            .replace(/"[^"]*"/g, "")
            .matchAll(/([A-Za-z_]\w*)\[((?:[^[\]]|\[[^[\]]*\])*)\]/g),
        ].some(([, name = "", inside = ""]) => {
          const columns = tables.get(name);
          const parts = inside.includes("[")
            ? [...inside.matchAll(/\[([^[\]]*)\]/g)].map(([, part = ""]) => part)
            : [inside];
          return (
            !columns ||
            parts.some(
              (part) =>
                !/^#(All|Data|Headers|Totals|This Row)$/.test(part) && !columns.includes(part),
            )
          );
        }),
      );
    },
  },
  {
    says: "lists and conditions use no table and no function of ours, and lists are short enough",
    source:
      "Excel: data validation takes no structured references; 255 characters of a list typed in",
    broken: (file) =>
      [
        ...file.all(SHEETS, "formula1"),
        ...file.all(SHEETS, "formula2"),
        ...file.all(SHEETS, "formula"),
      ]
        .map(({ textContent }) => textContent ?? "")
        .filter(
          (text) =>
            /\w\[|_xldudf_/.test(text.replace(/^".*"$/, "")) ||
            (text.startsWith('"') && text.length > 257),
        ),
  },
  {
    says: "labels of a chart say all six of what they show",
    source: "ECMA-376 part 1, 21.2.2.49 (Group_DLbls: a missing one counts as true in Excel)",
    broken: (file) =>
      file.all(CHARTS, "dLbls").filter((labels) => {
        const said = [...labels.children].map(({ localName }) => localName);
        return LABEL_PARTS.join() !== said.filter((name) => LABEL_PARTS.includes(name)).join();
      }),
  },
  {
    says: "looks name fonts, fills and borders that are there",
    source: "ECMA-376 part 1, 18.8.45",
    broken: (file) => {
      const [styles] = file.paths(/^xl\/styles\.xml$/);
      const document = file.document(styles!);
      const many = (name: string): number => elements(document, name)[0]?.children.length ?? 0;
      return elements(elements(document, "cellXfs")[0]!, "xf").filter(
        (look) =>
          Number(look.getAttribute("fontId")) >= many("fonts") ||
          Number(look.getAttribute("fillId")) >= many("fills") ||
          Number(look.getAttribute("borderId")) >= many("borders"),
      );
    },
  },
  {
    says: "names of sheets are allowed, each once, and one is shown",
    source: "Excel specifications: 31 characters, none of \\ / ? * [ ] :; ECMA-376 part 1, 18.2.19",
    broken: (file) => {
      const sheets = file.all(WORKBOOK, "sheet");
      const names = sheets.map((sheet) => sheet.getAttribute("name")!);
      const keys = names.map((name) => name.toLowerCase());
      return [
        ...names.filter(
          (name) => name === "" || name.length > 31 || /[\\/?*[\]:]|^'|'$/.test(name),
        ),
        ...keys.filter((key, index) => keys.indexOf(key) !== index),
        ...(sheets.some((sheet) => !sheet.hasAttribute("state")) ? [] : ["none is shown"]),
      ];
    },
  },
];
