/**
 * The workbook as data. Every adapter renders the same description: Excel, the embedded
 * workbook, and the .xlsx file.
 */
import type { CellValue } from "../port";

/** How a cell looks, by role; each adapter has one table from role to font, fill and border. */
export type Style =
  | "plain"
  | "title" // name of the sheet
  | "lead" // first sentence under it
  | "heading"
  | "label" // left of an input
  | "input" // the player types here
  | "answer" // the figure that matters, large
  | "figure" // an ordinary computed figure
  | "hint" // small print
  | "caution";

/** A number format in spreadsheet notation, as "0", "0.0%", "yyyy-mm-dd". */
export type NumberFormat = string;

/** Values a cell may take: given here, or a column of a table as "Bag[Disc]". A free value is allowed where `strict` is false. */
export interface ListRule {
  readonly values?: readonly string[];
  readonly column?: string;
  readonly strict: boolean;
}

export interface ColumnPlan {
  readonly header: string;
  /** Width in characters. */
  readonly width: number;
  readonly format?: NumberFormat;
  readonly list?: ListRule;
  /** Formula of every body row, with [[#This Row],[Column]]. */
  readonly formula?: string;
  /** Bar in the cell, for shares from 0 to 1. */
  readonly bar?: boolean;
  readonly style?: Style;
}

export interface TablePlan {
  readonly kind: "table";
  readonly name: string;
  /** Top left cell of the header, as "A4". */
  readonly at: string;
  readonly columns: readonly ColumnPlan[];
  /** Starter rows; blank rows are added to make up `least` rows. */
  readonly rows: readonly (readonly CellValue[])[];
  readonly least?: number;
}

export interface CellsPlan {
  readonly kind: "cells";
  readonly at: string;
  readonly values: readonly (readonly CellValue[])[];
  readonly style?: Style;
  /** One style a column, where they differ. */
  readonly styles?: readonly Style[];
  readonly format?: NumberFormat;
  readonly list?: ListRule;
  /** Defined name of the block. */
  readonly name?: string;
}

/** One formula; where it spills, `spill` says the space kept free for it and the formats of its columns. */
export interface FormulaPlan {
  readonly kind: "formula";
  readonly at: string;
  readonly formula: string;
  readonly style?: Style;
  readonly format?: NumberFormat;
  readonly spill?: {
    readonly rows: number;
    readonly columns: number;
    readonly formats?: readonly NumberFormat[];
    /** Zero-based columns that show a bar for a share. */
    readonly bars?: readonly number[];
    /** false where the first row holds figures already; else it is the header. */
    readonly header?: boolean;
  };
  /** Defined name of the cell, or of the whole space kept free where it spills. */
  readonly name?: string;
}

export interface SeriesPlan {
  /** A word, or the cell that holds it, as "=Card!$A$6". */
  readonly name: string;
  /** References with sheet, as "Card!$D$5:$D$40"; blanks are not drawn. */
  readonly x: string;
  readonly y: string;
  /** Ends of a horizontal interval as distances from x, for error bars. */
  readonly minus?: string;
  readonly plus?: string;
  /** The same interval as a line between its two ends, for hosts that cannot give error bars a length. */
  readonly ends?: { readonly x: string; readonly y: string };
  /** The name stands beside the dots instead of in a legend. */
  readonly labelled?: boolean;
  readonly shape: "dots" | "line";
}

export interface ChartPlan {
  readonly name: string;
  readonly title: string;
  /** Top left and bottom right cells. */
  readonly from: string;
  readonly to: string;
  readonly xTitle: string;
  /** "" where the height means nothing but an order: then the axis has no numbers. */
  readonly yTitle: string;
  readonly yFormat?: NumberFormat;
  readonly series: readonly SeriesPlan[];
}

export interface SheetPlan {
  readonly name: string;
  /** Widths in characters of columns A, B, …, where no table says otherwise. */
  readonly widths?: readonly number[];
  readonly frozenRows?: number;
  readonly frozenColumns?: number;
  /** Rendered in this order; a later block may refine cells of an earlier one (style, format, list, name). */
  readonly blocks: readonly (TablePlan | CellsPlan | FormulaPlan)[];
  readonly charts?: readonly ChartPlan[];
  readonly print?: {
    readonly landscape: boolean;
    readonly fitWide: boolean;
    /** Cells that are printed, as "A1:G60"; all where not said. */
    readonly area?: string;
    readonly titleRows?: number;
  };
}

/** A defined name that is no block's own: of any cells, a constant or a formula. */
export interface NamePlan {
  readonly name: string;
  /** In the port's notation, as "=Log!$A$1:$B$9" or "=0.5". */
  readonly refersTo: string;
  /** The sheet on which alone the name is known; the whole workbook where not said. */
  readonly sheet?: string;
}

export interface Blueprint {
  readonly sheets: readonly SheetPlan[];
  readonly names?: readonly NamePlan[];
}
