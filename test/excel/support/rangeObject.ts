import { areaRef, quotedSheet, readArea, type Area } from "../../../src/workbook/a1";
import { HostCollection, HostObject, invalid } from "./hostObject";
import { understood, type CellContent, type SheetModel } from "./sheetModel";
import { WorksheetObject } from "./worksheetObject";

const LAST_ROW = 1_048_576;

/** Reads "A1:B2", "A:C" and the like; throws as Excel does. */
export function areaOf(address: string): Area {
  const plain = address.replace(/^.*!/, "");
  const columns = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i.exec(plain);
  const area = readArea(columns ? `${columns[1]}1:${columns[2]}${LAST_ROW}` : plain);
  if (!area) throw invalid(`address ${address}`);
  return area;
}

export class RangeObject extends HostObject {
  readonly kind = "Range";

  constructor(
    readonly sheet: SheetModel,
    readonly area: Area,
  ) {
    super();
  }

  private get height(): number {
    return this.area.bottom - this.area.top + 1;
  }

  private get width(): number {
    return this.area.right - this.area.left + 1;
  }

  private map<Result>(each: (content: CellContent | undefined) => Result): Result[][] {
    if (this.height * this.width > 5_000_000) throw invalid("a range of whole columns");
    return Array.from({ length: this.height }, (_, down) =>
      Array.from({ length: this.width }, (_, right) =>
        each(this.sheet.at(this.area.top + down, this.area.left + right)),
      ),
    );
  }

  /** Sets a matrix of this shape, or one value for all cells. The whole of it or nothing. */
  private fill(matrix: unknown): void {
    this.sheet.requireUnprotected();
    const rows = Array.isArray(matrix) ? (matrix as unknown[][]) : this.map(() => matrix);
    if (rows.length !== this.height || rows.some((row) => row.length !== this.width))
      throw invalid(`${rows.length} rows for ${areaRef(this.area)}`);
    const contents = rows.map((row) => row.map((value) => (value === null ? null : { value })));
    const read = contents.map((row) => row.map((cell) => cell && { to: understood(cell.value) }));
    for (const row of read)
      for (const cell of row)
        if (cell?.to?.formula !== undefined) this.sheet.book.checkFormula(cell.to.formula);
    read.forEach((row, down) =>
      row.forEach((cell, right) => {
        if (cell) this.sheet.put(this.area.top + down, this.area.left + right, cell.to);
      }),
    );
  }

  get Address(): string {
    return `${quotedSheet(this.sheet.name)}!${areaRef(this.area)}`;
  }
  get Values(): unknown[][] {
    return this.map((cell) => cell?.value ?? "");
  }
  set Values(matrix: unknown) {
    this.fill(matrix);
  }
  get ValueTypes(): string[][] {
    return this.map((cell) => cell?.kind ?? "Empty");
  }
  get Formulas(): unknown[][] {
    return this.map((cell) => cell?.formula ?? cell?.value ?? "");
  }
  set Formulas(matrix: unknown) {
    this.fill(matrix);
  }
  set NumberFormat(format: unknown) {
    this.setLook("numberFormat", format);
  }
  get Format(): HostObject {
    return new RangeFormat(this);
  }
  get DataValidation(): HostObject {
    return new DataValidation(this);
  }
  get ConditionalFormats(): HostObject {
    return new ConditionalFormats(this);
  }
  get Worksheet(): WorksheetObject {
    return new WorksheetObject(this.sheet);
  }

  setLook(what: string, value: unknown): void {
    this.sheet.requireUnprotected();
    this.sheet.looks.push({ area: this.area, what, value });
  }

  private moved(area: Partial<Area>): RangeObject {
    const to = { ...this.area, ...area };
    if (to.top < 1 || to.left < 1 || to.bottom < to.top || to.right < to.left)
      throw invalid(`a range of ${JSON.stringify(to)}`);
    return new RangeObject(this.sheet, to);
  }

  /** Relative to the first cell, and allowed to lie outside of the range, as in Excel. */
  GetCell(row: number, column: number): RangeObject {
    const { top, left } = this.area;
    return this.moved({
      ...{ top: top + row, bottom: top + row, left: left + column, right: left + column },
    });
  }
  GetRow(row: number): RangeObject {
    return this.moved({ top: this.area.top + row, bottom: this.area.top + row });
  }
  GetColumn(column: number): RangeObject {
    return this.moved({ left: this.area.left + column, right: this.area.left + column });
  }
  GetLastRow(): RangeObject {
    return this.moved({ top: this.area.bottom });
  }
  GetResizedRange(rows: number, columns: number): RangeObject {
    return this.moved({ bottom: this.area.bottom + rows, right: this.area.right + columns });
  }
  GetOffsetRange(rows: number, columns: number): RangeObject {
    const { top, left, bottom, right } = this.area;
    return this.moved({
      ...{ top: top + rows, bottom: bottom + rows, left: left + columns, right: right + columns },
    });
  }
  GetRowsBelow(count: number): RangeObject {
    return this.moved({ top: this.area.bottom + 1, bottom: this.area.bottom + count });
  }
  /** The library takes long arrays apart by this. */
  GetBoundingRect(other: RangeObject | string): RangeObject {
    const { area } = typeof other === "string" ? { area: areaOf(other) } : other;
    return this.moved({
      top: Math.min(this.area.top, area.top),
      left: Math.min(this.area.left, area.left),
      bottom: Math.max(this.area.bottom, area.bottom),
      right: Math.max(this.area.right, area.right),
    });
  }
  GetSpillParentOrNullObject(): RangeObject | null {
    const { top, left } = this.area;
    const from = this.sheet.at(top, left)?.spilledFrom;
    return from === undefined ? null : new RangeObject(this.sheet, areaOf(from));
  }

  Clear(applyTo: string | null): void {
    this.sheet.requireUnprotected();
    const what = applyTo ?? "All";
    if (what !== "All" && what !== "Contents") throw invalid(`clear ${what}`);
    const { top, left, bottom, right } = this.area;
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) this.sheet.put(row, column, null);
    if (what === "All") this.forgetLooks(/^(format|numberFormat)/);
  }

  /** Forgets what was set for cells of this range and no others. */
  forgetLooks(kind: RegExp): void {
    const { top, left, bottom, right } = this.area;
    this.sheet.looks = this.sheet.looks.filter(
      ({ area, what }) =>
        !kind.test(what) ||
        area.top < top ||
        area.bottom > bottom ||
        area.left < left ||
        area.right > right,
    );
  }

  CopyFrom(source: RangeObject, what: string): void {
    this.sheet.requireUnprotected();
    if (source.height !== 1 || source.width !== this.width)
      throw invalid("a source that is not one row of the same width");
    if (what === "Formats") {
      const { left, top } = source.area;
      const last = (column: number): typeof this.sheet.looks =>
        this.sheet.looks.filter(
          ({ area, what: kind }) =>
            /^(format|numberFormat)/.test(kind) &&
            area.top <= top &&
            area.bottom >= top &&
            area.left <= column &&
            area.right >= column,
        );
      for (let column = 0; column < this.width; column++)
        for (const { what: kind, value } of last(left + column)) {
          const at = this.area.left + column;
          this.sheet.looks.push({ area: { ...this.area, left: at, right: at }, what: kind, value });
        }
      return;
    }
    if (what !== "Formulas") throw invalid(`copy ${what}`);
    const formulas = source.map((cell) => cell?.formula ?? cell?.value ?? "")[0]!;
    for (const formula of formulas)
      if (/(?<![\w!$])\$?[A-Z]{1,3}\$?\d+/.test(String(formula).replace(/"[^"]*"|\[[^\]]*\]/g, "")))
        throw invalid("the host in memory does not move cell references");
    this.fill(this.map(() => null).map(() => formulas));
  }

  Select(): void {
    this.sheet.book.selected = this.Address;
  }
  _KeepReference(): void {}
  /** Asked by the library before it sends a long array. */
  _ValidateArraySize(rows: number, columns: number): void {
    if (rows !== this.height || columns !== this.width)
      throw invalid(`${rows} × ${columns} values for ${areaRef(this.area)}`);
  }
}

/** Properties that are only noted, each by its full name; the host knows these and no other. */
abstract class Noted extends HostObject {
  constructor(
    protected readonly range: RangeObject,
    protected readonly prefix: string,
  ) {
    super();
  }
  protected note(what: string, value: unknown): void {
    this.range.setLook(`${this.prefix}.${what}`, value);
  }
}

class RangeFormat extends Noted {
  readonly kind = "RangeFormat";
  constructor(range: RangeObject) {
    super(range, "format");
  }
  set VerticalAlignment(value: unknown) {
    this.note("verticalAlignment", value);
  }
  set HorizontalAlignment(value: unknown) {
    this.note("horizontalAlignment", value);
  }
  set ColumnWidth(value: unknown) {
    if (typeof value !== "number" || value <= 0) throw invalid("columnWidth");
    this.note("columnWidth", value);
  }
  get Font(): HostObject {
    return new RangeFont(this.range, "format.font");
  }
  get Fill(): HostObject {
    return new RangeFill(this.range, "format.fill");
  }
  get Borders(): HostObject {
    return new RangeBorders(this.range);
  }
}

class RangeFont extends Noted {
  readonly kind = "RangeFont";
  set Name(value: unknown) {
    this.note("name", value);
  }
  set Size(value: unknown) {
    this.note("size", value);
  }
  set Color(value: unknown) {
    this.note("color", value);
  }
  set Bold(value: unknown) {
    this.note("bold", value);
  }
}

class RangeFill extends Noted {
  readonly kind = "RangeFill";
  set Color(value: unknown) {
    this.note("color", value);
  }
}

class RangeBorders extends HostObject {
  readonly kind = "RangeBorderCollection";
  constructor(private readonly range: RangeObject) {
    super();
  }
  GetItem(edge: string): HostObject {
    if (!/^Edge(Top|Bottom|Left|Right)$/.test(edge)) throw invalid(`edge ${edge}`);
    return new RangeBorder(this.range, `format.${edge}`);
  }
}

class RangeBorder extends Noted {
  readonly kind = "RangeBorder";
  set Style(value: unknown) {
    this.note("style", value);
  }
  set Color(value: unknown) {
    this.note("color", value);
  }
}

class DataValidation extends Noted {
  readonly kind = "DataValidation";
  constructor(range: RangeObject) {
    super(range, "validation");
  }
  set Rule(value: { List?: unknown; list?: { source?: unknown } }) {
    const source = value.list?.source;
    if (typeof source !== "string") throw invalid("the source of a list");
    // A list may not name a column of a table itself, nor be longer than 255 letters.
    if (/^=[A-Za-z_]\w*\[/.test(source) || (!source.startsWith("=") && source.length > 255))
      throw invalid(`list source ${source}`);
    this.note("rule", value);
  }
  Clear(): void {
    this.range.forgetLooks(/^validation/);
  }
  set IgnoreBlanks(value: unknown) {
    this.note("ignoreBlanks", value);
  }
  set ErrorAlert(value: unknown) {
    this.note("errorAlert", value);
  }
}

class ConditionalFormats extends HostCollection<HostObject> {
  readonly kind = "ConditionalFormatCollection";
  readonly items = [];
  constructor(private readonly range: RangeObject) {
    super();
  }
  ClearAll(): void {
    this.range.forgetLooks(/^(conditional|bar)/);
  }
  Add(type: string): HostObject {
    if (type !== "DataBar") throw invalid(`conditional format ${type}`);
    this.range.setLook("conditional", type);
    return new ConditionalFormat(this.range, "conditional");
  }
}

class ConditionalFormat extends Noted {
  readonly kind = "ConditionalFormat";
  get DataBar(): HostObject {
    return new DataBar(this.range, "bar");
  }
}

class DataBar extends Noted {
  readonly kind = "DataBarConditionalFormat";
  set LowerBoundRule(value: unknown) {
    this.note("lower", value);
  }
  set UpperBoundRule(value: unknown) {
    this.note("upper", value);
  }
  get PositiveFormat(): HostObject {
    return new BarFormat(this.range, "bar");
  }
}

class BarFormat extends Noted {
  readonly kind = "ConditionalDataBarPositiveFormat";
  set FillColor(value: unknown) {
    this.note("fillColor", value);
  }
  set GradientFill(value: unknown) {
    this.note("gradientFill", value);
  }
}
