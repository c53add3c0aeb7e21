/**
 * A whole workbook as data: all that the page holds, so that nothing is lost on the way to a file and
 * back. Rows and columns count from 1; references and formulas are in the port's notation.
 */
import type { Area } from "./a1";
import type { ChartPlan, NamePlan, SheetPlan } from "./blueprint/types";
import type { CellValue } from "./port";

/** A line of a cell's border; `kind` is a word of the file format, as "thin" (ECMA-376 part 1, 18.18.3). */
export interface Edge {
  readonly kind: string;
  readonly colour?: string;
}

/** How a cell looks; what is not said is as the spreadsheet has it. Colours are six hexadecimal digits. */
export interface CellLook {
  readonly font?: string;
  /** Points. */
  readonly size?: number;
  readonly bold?: true;
  readonly italic?: true;
  readonly underlined?: true;
  readonly struck?: true;
  readonly colour?: string;
  readonly fill?: string;
  readonly top?: Edge;
  readonly bottom?: Edge;
  readonly left?: Edge;
  readonly right?: Edge;
  readonly across?: "left" | "center" | "right" | "justify" | "distributed";
  readonly down?: "top" | "center" | "bottom";
  readonly wraps?: true;
  /** Number format in spreadsheet notation. */
  readonly format?: string;
}

export interface WholeCell {
  readonly value: CellValue;
  /** With its leading "=". */
  readonly formula?: string;
  /** Cells that the formula fills beside its own; they hold no cell of their own in the model. */
  readonly fills?: {
    readonly rows: number;
    readonly columns: number;
    readonly values: readonly (readonly CellValue[])[];
  };
  readonly look?: CellLook;
}

/** Cells by row and column. */
export type WholeCells = Map<number, (WholeCell | undefined)[]>;

export interface WholeLine {
  /** Of a column its width, of a row its height, px. */
  readonly pixels?: number;
  readonly hidden?: true;
  readonly look?: CellLook;
}

export interface WholeTable {
  readonly name: string;
  /** Header and body, without total rows. */
  readonly area: Area;
  readonly headers: readonly string[];
}

/** What cells accept; the words are those of the file format (ECMA-376 part 1, 18.3.1.33). */
export interface WholeRule {
  readonly areas: readonly Area[];
  readonly type: string;
  readonly operator?: string;
  /** A list is written as "a,b,c", or as a formula with its "=". */
  readonly first?: string;
  readonly second?: string;
  readonly allowsBlank: boolean;
  /** Whether anything else is refused. */
  readonly refuses: boolean;
  readonly error?: string;
  readonly prompt?: string;
}

export interface WholeSheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly cells: WholeCells;
  readonly columns: ReadonlyMap<number, WholeLine>;
  readonly rows: ReadonlyMap<number, WholeLine>;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly gridLines: boolean;
  readonly tables: readonly WholeTable[];
  readonly merged: readonly Area[];
  readonly rules: readonly WholeRule[];
  /** Cells that show a bar for a share. */
  readonly bars: readonly Area[];
  readonly charts: readonly ChartPlan[];
  readonly print?: SheetPlan["print"];
}

export interface WholeBook {
  readonly sheets: readonly WholeSheet[];
  readonly names: readonly NamePlan[];
}
