import { areaRef, fixedRef } from "../../../src/workbook/a1";
import { ChartCollection } from "./chartObjects";
import { HostCollection, HostObject, invalid } from "./hostObject";
import { areaOf, RangeObject } from "./rangeObject";
import type { BookModel, SheetModel } from "./sheetModel";
import { SheetTables } from "./tableObjects";

export class WorksheetObject extends HostObject {
  readonly kind = "Worksheet";

  constructor(readonly sheet: SheetModel) {
    super();
  }

  get Id(): string {
    return this.sheet.id;
  }
  get Name(): string {
    return this.sheet.name;
  }
  set Name(name: string) {
    const { book } = this.sheet;
    const other = book.findSheet(name);
    if (other && other !== this.sheet) throw invalid(`sheet name ${name}`);
    const before = this.sheet.name.toLowerCase();
    this.sheet.name = name;
    for (const named of book.names.values())
      if (named.formula.toLowerCase().startsWith(`=${before}!`))
        named.formula = `=${fixedRef(name, areaOf(named.formula))}`;
  }
  get Position(): number {
    return this.sheet.book.sheets.indexOf(this.sheet);
  }
  set Position(position: number) {
    const { sheets } = this.sheet.book;
    if (!(position >= 0 && position < sheets.length)) throw invalid(`position ${position}`);
    sheets.splice(sheets.indexOf(this.sheet), 1);
    sheets.splice(position, 0, this.sheet);
  }
  set Gridlines(value: boolean) {
    this.sheet.settings["gridlines"] = value;
  }
  get Protection(): WorksheetProtection {
    return new WorksheetProtection(this.sheet);
  }
  get Tables(): SheetTables {
    return new SheetTables(this.sheet);
  }
  get Charts(): ChartCollection {
    return new ChartCollection(this.sheet);
  }
  get FreezePanes(): FreezePanes {
    return new FreezePanes(this.sheet);
  }
  get PageLayout(): PageLayout {
    return new PageLayout(this.sheet);
  }
  GetRange(address?: string): RangeObject {
    if (typeof address !== "string") throw invalid("a range without an address");
    return new RangeObject(this.sheet, areaOf(address));
  }
  GetUsedRangeOrNullObject(valuesOnly: boolean): RangeObject | null {
    if (!valuesOnly) throw invalid("a used range with looks");
    const area = this.sheet.used();
    return area && new RangeObject(this.sheet, area);
  }
  Activate(): void {
    this.sheet.book.active = this.sheet;
  }
  Delete(): void {
    if (this.sheet.book.isProtected) this.sheet.requireUnprotected();
    this.sheet.book.removeSheet(this.sheet);
  }
}

class WorksheetProtection extends HostObject {
  readonly kind = "WorksheetProtection";
  constructor(private readonly sheet: SheetModel) {
    super();
  }
  get Protected(): boolean {
    return this.sheet.isProtected;
  }
}

class FreezePanes extends HostObject {
  readonly kind = "WorksheetFreezePanes";
  constructor(private readonly sheet: SheetModel) {
    super();
  }
  FreezeAt(range: RangeObject): void {
    this.sheet.settings["frozen"] = areaRef(range.area);
  }
  FreezeRows(count: number): void {
    this.sheet.settings["frozen"] = `${count} rows`;
  }
  FreezeColumns(count: number): void {
    this.sheet.settings["frozen"] = `${count} columns`;
  }
}

class PageLayout extends HostObject {
  readonly kind = "PageLayout";
  constructor(private readonly sheet: SheetModel) {
    super();
  }
  set Orientation(value: unknown) {
    this.sheet.settings["orientation"] = value;
  }
  set Zoom(value: unknown) {
    this.sheet.settings["zoom"] = value;
  }
  SetPrintArea(address: string): void {
    this.sheet.settings["printArea"] = areaRef(areaOf(address));
  }
  SetPrintTitleRows(rows: string): void {
    if (!/^\$\d+:\$\d+$/.test(rows)) throw invalid(`title rows ${rows}`);
    this.sheet.settings["titleRows"] = rows;
  }
}

export class WorksheetCollection extends HostCollection<WorksheetObject> {
  readonly kind = "WorksheetCollection";

  constructor(
    private readonly book: BookModel,
    private readonly listening: Set<string>,
  ) {
    super();
  }

  get items(): WorksheetObject[] {
    return this.book.sheets.map((sheet) => new WorksheetObject(sheet));
  }
  Add(name: string): WorksheetObject {
    return new WorksheetObject(this.book.addSheet(name));
  }
  GetItem(key: string): WorksheetObject {
    return new WorksheetObject(this.book.sheet(key));
  }
  GetActiveWorksheet(): WorksheetObject {
    return new WorksheetObject(this.book.active);
  }
  _RegisterDataChangedEvent(): void {
    this.listening.add("changed");
  }
  _RegisterCalculatedEvent(): void {
    this.listening.add("calculated");
  }
  _RegisterAddedEvent(): void {
    this.listening.add("added");
  }
  _RegisterDeletedEvent(): void {
    this.listening.add("deleted");
  }
  _UnregisterDataChangedEvent(): void {
    this.listening.delete("changed");
  }
  _UnregisterCalculatedEvent(): void {
    this.listening.delete("calculated");
  }
  _UnregisterAddedEvent(): void {
    this.listening.delete("added");
  }
  _UnregisterDeletedEvent(): void {
    this.listening.delete("deleted");
  }
}
