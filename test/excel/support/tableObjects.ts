import { HostCollection, HostError, HostObject, invalid, notFound } from "./hostObject";
import { areaOf, RangeObject } from "./rangeObject";
import type { BookModel, SheetModel, TableModel } from "./sheetModel";
import { WorksheetObject } from "./worksheetObject";

export class TableObject extends HostObject {
  readonly kind = "Table";

  constructor(readonly table: TableModel) {
    super();
  }

  get Id(): string {
    return this.table.id;
  }
  get Name(): string {
    return this.table.name;
  }
  set Name(name: string) {
    if (name.toLowerCase() !== this.table.name.toLowerCase())
      this.table.sheet.book.requireFreeName(name);
    this.table.name = name;
  }
  set Style(style: string) {
    this.table.style = style;
  }
  set ShowBandedRows(banded: boolean) {
    this.table.banded = banded;
  }
  get ShowTotals(): boolean {
    return this.table.hasTotals;
  }
  get AutoFilter(): AutoFilter {
    return new AutoFilter(this.table);
  }
  get Worksheet(): WorksheetObject {
    return new WorksheetObject(this.table.sheet);
  }
  get Rows(): TableRows {
    return new TableRows(this.table);
  }
  GetHeaderRowRange(): RangeObject {
    const { sheet, area } = this.table;
    return new RangeObject(sheet, { ...area, bottom: area.top });
  }
  GetDataBodyRange(): RangeObject {
    const { sheet, area } = this.table;
    const bottom = this.table.hasTotals ? area.bottom - 1 : area.bottom;
    return new RangeObject(sheet, { ...area, top: area.top + 1, bottom });
  }
  GetRange(): RangeObject {
    return new RangeObject(this.table.sheet, this.table.area);
  }
  Resize(range: RangeObject): void {
    this.table.sheet.requireUnprotected();
    const { area } = this.table;
    if (range.area.top !== area.top || range.area.left !== area.left) throw invalid("resize");
    this.table.area = range.area;
  }
  Delete(): void {
    const { sheet } = this.table;
    sheet.requireUnprotected();
    this.GetRange().Clear(null);
    sheet.book.tables.splice(sheet.book.tables.indexOf(this.table), 1);
  }
}

class AutoFilter extends HostObject {
  readonly kind = "AutoFilter";
  constructor(private readonly table: TableModel) {
    super();
  }
  get IsDataFiltered(): boolean {
    return this.table.isFiltered;
  }
}

class TableRows extends HostCollection<TableRow> {
  readonly kind = "TableRowCollection";

  constructor(private readonly table: TableModel) {
    super();
  }

  get items(): TableRow[] {
    const { top, bottom } = this.table.area;
    return Array.from({ length: bottom - top }, (_, index) => new TableRow(this.table, index));
  }
  Add(index: number | null, values: unknown[][]): TableRow {
    const { table } = this;
    table.sheet.requireUnprotected();
    const at = index ?? table.area.bottom - table.area.top;
    const top = table.area.top + 1 + at;
    const added = { ...table.area, top, bottom: top + values.length - 1 };
    table.sheet.insertDown(added);
    table.area = { ...table.area, bottom: table.area.bottom + values.length };
    new RangeObject(table.sheet, added).Values = values;
    return new TableRow(table, at);
  }
}

class TableRow extends HostObject {
  readonly kind = "TableRow";

  constructor(
    private readonly table: TableModel,
    private readonly index: number,
  ) {
    super();
  }
  Delete(): void {
    const { table } = this;
    table.sheet.requireUnprotected();
    if (table.isFiltered) throw new HostError("GeneralException", "Rows are hidden by a filter.");
    const row = table.area.top + 1 + this.index;
    if (table.area.bottom - table.area.top < 2) throw invalid("the only row of a table");
    if (row > table.area.bottom) throw invalid(`row ${this.index}`);
    table.sheet.deleteUp({ ...table.area, top: row, bottom: row });
    table.area = { ...table.area, bottom: table.area.bottom - 1 };
  }
}

abstract class Tables extends HostCollection<TableObject> {
  readonly kind = "TableCollection";

  GetItem(key: string): TableObject {
    const found = this.items.find(
      ({ Id, Name }) => Id === key || Name.toLowerCase() === key.toLowerCase(),
    );
    if (!found) throw notFound(`table ${key}`);
    return found;
  }
}

export class BookTables extends Tables {
  constructor(private readonly book: BookModel) {
    super();
  }
  get items(): TableObject[] {
    return this.book.tables.map((table) => new TableObject(table));
  }
}

export class SheetTables extends Tables {
  constructor(private readonly sheet: SheetModel) {
    super();
  }
  get items(): TableObject[] {
    return this.sheet.tables.map((table) => new TableObject(table));
  }
  Add(address: string, hasHeaders: boolean): TableObject {
    this.sheet.requireUnprotected();
    if (!hasHeaders) throw invalid("a table without headers");
    return new TableObject(this.sheet.book.addTable(this.sheet, areaOf(address)));
  }
}
