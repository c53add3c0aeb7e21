import { HostCollection, HostObject, invalid, notFound } from "./hostObject";
import { areaOf, RangeObject } from "./rangeObject";
import type { BookModel } from "./sheetModel";
import { BookTables } from "./tableObjects";
import { WorksheetCollection } from "./worksheetObject";
import { readSheetArea } from "../../../src/workbook/a1";

/** The root of all paths: the workbook that is open. */
export class WorkbookObject extends HostObject {
  readonly kind = "Workbook";

  constructor(
    private readonly book: BookModel,
    private readonly listening: Set<string>,
    private readonly references: Map<string, HostObject>,
  ) {
    super();
  }
  _RemoveReference(id: string): void {
    this.references.delete(id);
  }
  get Worksheets(): WorksheetCollection {
    return new WorksheetCollection(this.book, this.listening);
  }
  get Tables(): BookTables {
    return new BookTables(this.book);
  }
  get Names(): NamedItems {
    return new NamedItems(this.book);
  }
  get Application(): Application {
    return new Application(this.book);
  }
  get ReadOnly(): boolean {
    return this.book.isReadOnly;
  }
  get Protection(): WorkbookProtection {
    return new WorkbookProtection(this.book);
  }
}

class WorkbookProtection extends HostObject {
  readonly kind = "WorkbookProtection";
  constructor(private readonly book: BookModel) {
    super();
  }
  get Protected(): boolean {
    return this.book.isProtected;
  }
}

class Application extends HostObject {
  readonly kind = "Application";
  constructor(private readonly book: BookModel) {
    super();
  }
  get CalculationMode(): string {
    return this.book.calculationMode;
  }
  SuspendApiCalculationUntilNextSync(): void {}
  SuspendScreenUpdatingUntilNextSync(): void {}
  Calculate(type: string): void {
    if (!["Recalculate", "Full", "FullRebuild"].includes(type))
      throw invalid(`calculation ${type}`);
    this.book.calculations.push(type);
  }
}

class NamedItems extends HostCollection<NamedItem> {
  readonly kind = "NamedItemCollection";
  constructor(private readonly book: BookModel) {
    super();
  }
  get items(): NamedItem[] {
    return [...this.book.names.keys()].map((key) => new NamedItem(this.book, key));
  }
  GetItem(name: string): NamedItem {
    if (!this.book.names.has(name.toLowerCase())) throw notFound(`name ${name}`);
    return new NamedItem(this.book, name.toLowerCase());
  }
  Add(name: string, reference: string | RangeObject): NamedItem {
    const formula = typeof reference === "string" ? reference : `=${reference.Address}`;
    if (!formula.startsWith("=")) throw invalid(`reference ${formula}`);
    this.book.addName(name, formula);
    return new NamedItem(this.book, name.toLowerCase());
  }
}

class NamedItem extends HostObject {
  readonly kind = "NamedItem";
  constructor(
    private readonly book: BookModel,
    private readonly key: string,
  ) {
    super();
  }
  get _Id(): string {
    return this.Name;
  }
  get Name(): string {
    return this.book.names.get(this.key)!.name;
  }
  get Formula(): string {
    return this.book.names.get(this.key)!.formula;
  }
  GetRange(): RangeObject {
    const place = readSheetArea(this.Formula.slice(1));
    if (!place) throw invalid(`${this.Name} is no range`);
    return new RangeObject(this.book.sheet(place.sheet), areaOf(this.Formula));
  }
  Delete(): void {
    this.book.names.delete(this.key);
  }
}
