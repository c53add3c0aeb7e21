/** The workbook in memory: sheets of cells, tables, names, charts, and what was set about looks. */
import { areaRef, fixedRef, readArea, type Area } from "../../../src/workbook/a1";
import { HostError, invalid, notFound } from "./hostObject";

export interface CellContent {
  readonly value: string | number | boolean;
  readonly kind: "String" | "Double" | "Boolean" | "Error";
  readonly formula?: string;
  /** Where a formula spills from, as "A5". */
  readonly spilledFrom?: string;
}

export interface TableModel {
  name: string;
  readonly id: string;
  sheet: SheetModel;
  area: Area;
  style: string;
  banded: boolean;
  /** Whether a row below the body adds up; it is the last of the area. */
  hasTotals: boolean;
  isFiltered: boolean;
}

export interface LookModel {
  readonly area: Area;
  readonly what: string;
  readonly value: unknown;
}

export interface SeriesModel {
  name: string;
  x: string;
  y: string;
  readonly looks: Record<string, unknown>;
}

export interface ChartModel {
  name: string;
  readonly id: string;
  readonly type: string;
  readonly series: SeriesModel[];
  readonly looks: Record<string, unknown>;
}

const ERRORS = /^#(N\/A|VALUE!|REF!|NAME\?|DIV\/0!|NULL!|NUM!|SPILL!|CALC!|BUSY!)$/;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?%?$/i;
const DATE = /^\d{1,4}[/-]\d{1,2}([/-]\d{1,4})?$/;

/** What Excel makes of a value that is set: it reads meaning into text. */
export function understood(value: unknown): CellContent | null {
  if (value === "") return null;
  if (typeof value === "number") return { value, kind: "Double" };
  if (typeof value === "boolean") return { value, kind: "Boolean" };
  if (typeof value !== "string") throw invalid(`the value ${JSON.stringify(value)}`);
  if (value.startsWith("'")) return { value: value.slice(1), kind: "String" };
  if (/^[=+@-]./.test(value) && !NUMBER.test(value))
    return { value: 0, kind: "Double", formula: value };
  if (ERRORS.test(value)) return { value, kind: "Error" };
  if (/^(true|false)$/i.test(value)) return { value: /^t/i.test(value), kind: "Boolean" };
  if (NUMBER.test(value)) return { value: parseFloat(value), kind: "Double" };
  if (DATE.test(value)) return { value: 45_000, kind: "Double" };
  return { value, kind: "String" };
}

const overlap = (a: Area, b: Area): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

export class SheetModel {
  readonly cells = new Map<string, CellContent>();
  looks: LookModel[] = [];
  readonly charts: ChartModel[] = [];
  /** What was set about the sheet as a whole: panes, print, lines. */
  readonly settings: Record<string, unknown> = {};
  isProtected = false;

  constructor(
    readonly book: BookModel,
    readonly id: string,
    public name: string,
  ) {}

  at(row: number, column: number): CellContent | undefined {
    return this.cells.get(`${row},${column}`);
  }

  put(row: number, column: number, content: CellContent | null): void {
    if (content?.formula !== undefined) this.book.checkFormula(content.formula);
    if (content) this.cells.set(`${row},${column}`, content);
    else this.cells.delete(`${row},${column}`);
  }

  requireUnprotected(): void {
    if (this.isProtected || this.book.isReadOnly)
      throw new HostError("AccessDenied", "You cannot perform the requested operation.");
  }

  get tables(): TableModel[] {
    return this.book.tables.filter((table) => table.sheet === this);
  }

  /** The last value that was set of a look for a cell. */
  look(ref: string, what: string): unknown {
    const { top, left } = readArea(ref)!;
    const covers = ({ area }: LookModel): boolean =>
      overlap(area, { top, left, bottom: top, right: left });
    return this.looks.filter((look) => look.what === what && covers(look)).at(-1)?.value;
  }

  used(): Area | null {
    const spots = [...this.cells.keys()].map(
      (key) => key.split(",").map(Number) as [number, number],
    );
    if (spots.length === 0) return null;
    const rows = spots.map(([row]) => row);
    const columns = spots.map(([, column]) => column);
    return {
      ...{ top: Math.min(...rows), bottom: Math.max(...rows) },
      ...{ left: Math.min(...columns), right: Math.max(...columns) },
    };
  }

  /** Takes cells out; what is under them moves up. */
  deleteUp(area: Area): void {
    const height = area.bottom - area.top + 1;
    const below = (this.used()?.bottom ?? 0) + height;
    for (let column = area.left; column <= area.right; column++)
      for (let row = area.top; row <= below; row++) {
        const moved = this.at(row + height, column);
        if (moved) this.cells.set(`${row},${column}`, moved);
        else this.cells.delete(`${row},${column}`);
      }
    for (const table of this.tables)
      if (table.area.top > area.bottom && overlap(table.area, { ...area, top: 1, bottom: 1e6 }))
        table.area = {
          ...table.area,
          top: table.area.top - height,
          bottom: table.area.bottom - height,
        };
  }

  insertDown(area: Area): void {
    const height = area.bottom - area.top + 1;
    for (let column = area.left; column <= area.right; column++)
      for (let row = this.used()?.bottom ?? 0; row >= area.top; row--) {
        const moved = this.at(row, column);
        this.cells.delete(`${row},${column}`);
        if (moved) this.cells.set(`${row + height},${column}`, moved);
      }
  }
}

export class BookModel {
  readonly sheets: SheetModel[] = [];
  readonly tables: TableModel[] = [];
  /** Defined names with their formulas, as "=Log!$A$1:$B$2". */
  readonly names = new Map<string, { name: string; formula: string }>();
  active: SheetModel;
  selected = "";
  calculations: string[] = [];
  isProtected = false;
  isReadOnly = false;
  calculationMode: "Automatic" | "Manual" = "Automatic";
  private ids = 0;

  constructor(firstSheet: string) {
    this.active = this.addSheet(firstSheet);
  }

  nextId(kind: string): string {
    return `{${kind}-${++this.ids}}`;
  }

  sheet(name: string): SheetModel {
    const found = this.findSheet(name);
    if (!found) throw notFound(`worksheet ${name}`);
    return found;
  }

  findSheet(key: string): SheetModel | undefined {
    const same = ({ name, id }: SheetModel): boolean =>
      id === key || name.toLowerCase() === key.toLowerCase();
    return this.sheets.find(same);
  }

  addSheet(name: string): SheetModel {
    if (this.isProtected || this.isReadOnly)
      throw new HostError("AccessDenied", "The workbook is protected.");
    if (!/^[^\\/?*[\]:]{1,31}$/.test(name)) throw invalid(`sheet name ${name}`);
    if (this.findSheet(name))
      throw new HostError("ItemAlreadyExists", `A resource of this name already exists: ${name}`);
    const sheet = new SheetModel(this, this.nextId("sheet"), name);
    this.sheets.push(sheet);
    return sheet;
  }

  removeSheet(sheet: SheetModel): void {
    if (this.sheets.length === 1) throw new HostError("InvalidOperation", "One sheet must stay.");
    for (const table of sheet.tables) this.tables.splice(this.tables.indexOf(table), 1);
    this.sheets.splice(this.sheets.indexOf(sheet), 1);
    for (const named of this.names.values())
      if (named.formula.toLowerCase().startsWith(`=${sheet.name.toLowerCase()}!`))
        named.formula = "=#REF!";
    if (this.active === sheet) this.active = this.sheets[0]!;
  }

  findTable(key: string): TableModel | undefined {
    return this.tables.find(
      ({ id, name }) => id === key || name.toLowerCase() === key.toLowerCase(),
    );
  }

  /** Tables and names share one set of names. */
  requireFreeName(name: string): void {
    if (!/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name)) throw invalid(`name ${name}`);
    if (this.findTable(name) || this.names.has(name.toLowerCase()))
      throw invalid(`name ${name}, which is taken`);
  }

  addTable(sheet: SheetModel, area: Area): TableModel {
    if (sheet.tables.some((other) => overlap(other.area, area)))
      throw invalid(`table at ${areaRef(area)}, which overlaps another`);
    const id = this.nextId("table");
    const name = `Table${this.tables.length + 1}`;
    const looks = { style: "", banded: true, hasTotals: false, isFiltered: false };
    const table = { id, name, sheet, area, ...looks };
    this.tables.push(table);
    return table;
  }

  addName(name: string, formula: string): void {
    this.requireFreeName(name);
    this.names.set(name.toLowerCase(), { name, formula });
  }

  /** Excel refuses a formula that names a table which is not there. */
  checkFormula(formula: string): void {
    const outside = formula.replace(/"[^"]*"/g, '""');
    for (const [, table] of outside.matchAll(/([A-Za-z_][\w.]*)\[/g))
      if (!this.findTable(table!)) throw invalid(`formula ${formula}`);
  }

  /** Everything, as text, so that two states can be compared. */
  picture(): string {
    return JSON.stringify(
      {
        sheets: this.sheets.map(({ name, cells, looks, charts, settings }) => ({
          ...{ name, looks, charts, settings },
          cells: [...cells].sort(([a], [b]) => a.localeCompare(b)),
        })),
        tables: this.tables.map(({ name, sheet, area, style }) => ({
          ...{ name, style },
          at: fixedRef(sheet.name, area),
        })),
        names: [...this.names.values()].sort((a, b) => a.name.localeCompare(b.name)),
      },
      null,
      1,
    );
  }
}
