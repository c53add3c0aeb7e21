/**
 * What the product needs from a workbook, in plain values. Three adapters: Excel, the
 * embedded workbook, a file. They pass one and the same contract suite (test/workbook/contract.ts).
 *
 * Conventions
 * - A blank cell is "". Dates are serial numbers. An error cell is a CellError.
 * - References are A1 with a sheet ("Log!A1:C9"), or a defined name ("Settings").
 * - Formulas are in file notation: English names, commas, `CARRY.NAME(`, `Table[[#This Row],[Column]]`.
 * - Table, sheet and column names match without regard to case.
 * - Every method either does all of its work or none, and throws a PortError whose message is a
 *   sentence for the player.
 */
export interface CellError {
  readonly error: string;
  readonly message?: string;
}
export type CellValue = string | number | boolean | CellError;
export type Row = Readonly<Record<string, CellValue>>;

/** Whether two cells hold the same; error cells are the same when they show the same. */
export const sameCell = (a: CellValue, b: CellValue): boolean =>
  typeof a === "object" && typeof b === "object" ? a.error === b.error : a === b;

/** Whether two names of tables, sheets or columns are the same. */
export const sameWord = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

export type PortFault =
  | "missing" // no such sheet, table, column or range
  | "changed" // the row is no longer what the caller read
  | "protected" // sheet or workbook is protected
  | "busy" // a cell is being edited, or the host is calculating
  | "invalid" // the values cannot be stored
  | "unsupported" // this workbook cannot do that
  | "failed"; // anything else; the workbook is as it was

export class PortError extends Error {
  constructor(
    readonly fault: PortFault,
    message: string,
  ) {
    super(message);
    this.name = "PortError";
  }
}

export interface TableData {
  readonly name: string;
  readonly sheet: string;
  readonly headers: readonly string[];
  /** Body rows that are not wholly blank are at their own index; blank rows are kept. */
  readonly rows: readonly (readonly CellValue[])[];
}

/** A body row by index (0 is the first under the header) and what it held when it was read. */
export interface RowAt {
  readonly index: number;
  readonly was: Row;
}

export interface FormulaCell {
  readonly ref: string;
  readonly formula: string;
}

export interface BuildReport {
  /** Names of what was made, and of what was there already and left alone. */
  readonly made: readonly string[];
  readonly kept: readonly string[];
  /** Sentences about what the host could not make, such as a chart; all else is there. */
  readonly lacking?: readonly string[];
}

/** What a look at the workbook found. */
export interface Health {
  /** Whether a cell of ours shows #NAME?: the host met it without our functions. */
  readonly unanswered: boolean;
  /** Sentences about what keeps sheets and pane from agreeing, such as manual calculation. */
  readonly remarks: readonly string[];
}

/** What several reads found, each in the order asked for. */
export interface Together {
  readonly tables: readonly (TableData | null)[];
  readonly ranges: readonly (CellValue[][] | null)[];
  readonly tableNames: readonly string[];
}

export type Progress = (done: number, total: number) => void;

export interface WorkbookPort {
  readonly kind: "excel" | "embedded" | "file" | "light";
  /** Whether the host's own Undo takes back what the port writes, one step a call. */
  readonly undoable: boolean;

  sheetNames(): Promise<string[]>;
  tableNames(): Promise<string[]>;
  /** null where there is no such table. */
  readTable(name: string): Promise<TableData | null>;
  /** Values of a range or defined name; null where there is none. */
  readRange(ref: string): Promise<CellValue[][] | null>;

  /** Tables, ranges and the names of all tables at once, where every request costs; else left out. */
  readTogether?(tables: readonly string[], ranges: readonly string[]): Promise<Together>;

  /** Puts rows under the last one that is not blank, extending the table; columns not named stay blank. Returns their indexes. */
  addRows(table: string, rows: readonly Row[]): Promise<number[]>;
  /** Changes the named columns of rows that still hold what was read; else throws "changed". */
  changeRows(table: string, changes: readonly (RowAt & { readonly becomes: Row })[]): Promise<void>;
  /** Removes rows that still hold what was read; else throws "changed". */
  removeRows(table: string, rows: readonly RowAt[]): Promise<void>;
  /** Writes values (never formulas) over a range; its shape must fit. */
  writeRange(ref: string, values: readonly (readonly CellValue[])[]): Promise<void>;

  /** Makes what is missing of the blueprint. Never touches what is there. */
  build(blueprint: import("./blueprint/types").Blueprint): Promise<BuildReport>;
  /** Replaces the whole content of one sheet that the product owns (the Pocket sheet). */
  replaceSheet(sheet: import("./blueprint/types").SheetPlan): Promise<void>;
  /** Every cell whose formula calls one of our functions. */
  ourFormulas(): Promise<FormulaCell[]>;
  /** Writes those formulas back, so that a host that met them without us asks us again. */
  repairFormulas(progress?: Progress, stop?: AbortSignal): Promise<number>;
  recalculate(): Promise<void>;

  /** Calls back after values changed (typed, pasted, recalculated), not more than once a tick. Returns the way to stop. */
  onChange(listener: () => void): () => void;
  /** Asks a few cells of the blueprint, and how the workbook is set; left out where nothing can be amiss. */
  health?(blueprint: import("./blueprint/types").Blueprint): Promise<Health>;
  /**
   * Calls back with true when calls wait until the player leaves a cell that is being edited, and
   * with false once they go on. Returns the way to stop.
   */
  onWaiting?(listener: (waiting: boolean) => void): () => void;
  /** Calls back each time the pane is shown again after it was closed. Returns the way to stop. */
  onShown?(listener: () => void): () => void;
  /** Brings a cell into view and selects it. */
  show(ref: string): Promise<void>;
}
