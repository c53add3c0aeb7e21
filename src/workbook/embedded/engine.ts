/** Starts the spreadsheet engine: the same set-up in the page and without a screen. */
import {
  ICommandService,
  type ILanguagePack,
  type Injector,
  IUndoRedoService,
  IUniverInstanceService,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { UniverDataValidationPlugin } from "@univerjs/data-validation";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import type { Theme } from "@univerjs/themes";
import type { SheetPlan } from "../blueprint/types";
import { FaultMessages } from "./changes";
import { engineFunctions, SpillFunction } from "./functionsBridge";
import { longHistory } from "./workarounds/shortHistory";

// The built custom functions as the embedded workbook takes them: what dist/functions.js associates, and dist/functions.json.

/** Any value a spreadsheet function may take or give; the functions themselves judge it. */
export type CustomFunction = (...args: unknown[]) => unknown;

export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly optional?: boolean;
  readonly dimensionality?: "scalar" | "matrix";
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly ParameterMetadata[];
}

export interface FunctionsBundle {
  readonly functions: ReadonlyMap<string, CustomFunction>;
  readonly metadata: readonly FunctionMetadata[];
}

/** An error that a custom function throws or returns, as Excel's `CustomFunctions.Error`. */
export class CellFault {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** The part of Excel's `CustomFunctions` global that the bundle meets. */
export interface FunctionsRegistry {
  associate(id: string, run: CustomFunction): void;
  readonly Error: typeof CellFault;
}

/** A registry to run the bundle against, and the functions that it will hold afterwards. */
export function functionsRegistry(): {
  registry: FunctionsRegistry;
  functions: ReadonlyMap<string, CustomFunction>;
} {
  const functions = new Map<string, CustomFunction>();
  const registry: FunctionsRegistry = {
    associate: (id, run) => void functions.set(id.toUpperCase(), run),
    Error: CellFault,
  };
  return { registry, functions };
}

/**
 * Formulas as people type them, in the notation that the engine understands. Handled here are the
 * short forms of structured references ([@Column], [@[Two words]], [Column] inside its own table),
 * the spill operator (A1#), and table and column names typed in another case.
 */
export interface TableNames {
  readonly name: string;
  readonly headers: readonly string[];
}

/** Stands for the spill operator; files store it under this name too. */
export const SPILL_FUNCTION = "ANCHORARRAY";

const THIS_ROW = "[#This Row]";
const CELL_HASH =
  /((?:'(?:[^']|'')+'|[A-Za-z_][\w.]*)!)?(\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6})#(?![A-Za-z/])/y;
const WORD = /[\p{L}_][\p{L}\p{N}_.]*/uy;

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Index just after the bracket that closes the one at `from`; -1 where it is never closed. */
function closing(text: string, from: number): number {
  let depth = 0;
  for (let at = from; at < text.length; at++) {
    if (text[at] === "'") at += 1;
    else if (text[at] === "[") depth += 1;
    else if (text[at] === "]" && --depth === 0) return at + 1;
  }
  return -1;
}

const known = (header: string, { headers }: TableNames): string =>
  headers.find((candidate) => same(candidate, header)) ?? header;

/** Names inside innermost brackets in the case that the table writes them; "#All" and such stay. */
const recased = (body: string, table: TableNames): string =>
  body.replace(/\[([^[\]#@][^[\]]*)\]/g, (_, header: string) => `[${known(header, table)}]`);

/** What stands between the outer brackets of a structured reference, written out in full. */
function structured(body: string, table: TableNames): string {
  const inner = body.trim();
  if (inner === "@") return THIS_ROW;
  if (inner.startsWith("@")) {
    const rest = inner.slice(1).trim();
    return `[${THIS_ROW},${recased(rest.startsWith("[") ? rest : `[${rest}]`, table)}]`;
  }
  if (inner.startsWith("[")) return `[${recased(inner, table)}]`;
  return inner.startsWith("#") ? `[${inner}]` : `[${known(inner, table)}]`;
}

/** The end of a quoted stretch that starts at `from`, doubled quotes inside it included. */
function afterQuote(text: string, from: number): number {
  const quote = text[from]!;
  let at = from + 1;
  while (at < text.length && !(text[at] === quote && text[at + 1] !== quote))
    at += text[at] === quote ? 2 : 1;
  return at + 1;
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/**
 * @param formula as typed, with its leading "="
 * @param tables every table of the workbook
 * @param own the table that holds the cell, for references that name none
 * @example toEngine("=[@Carry]*2", tables, throws) // "=Throws[[#This Row],[Carry]]*2"
 */
export function toEngine(
  formula: string,
  tables: readonly TableNames[],
  own: TableNames | null,
): string {
  let out = "";
  let at = 0;
  const copyTo = (end: number): void => {
    out += formula.slice(at, end);
    at = end;
  };
  while (at < formula.length) {
    const spilled = startsWord(formula, at) ? matchAt(CELL_HASH, formula, at) : null;
    const word = startsWord(formula, at) ? matchAt(WORD, formula, at) : null;
    const bracket = word ? at + word[0].length : at;
    const table = word ? tables.find(({ name }) => same(name, word[0])) : own;
    const end = formula[bracket] === "[" ? closing(formula, bracket) : -1;
    if (spilled) {
      out += `${SPILL_FUNCTION}(${spilled[0].slice(0, -1)})`;
      at += spilled[0].length;
    } else if (table && end > 0) {
      out += table.name + structured(formula.slice(bracket + 1, end - 1), table);
      at = end;
    } else if (word) copyTo(Math.max(bracket, end));
    else if (formula[at] === '"' || formula[at] === "'") copyTo(afterQuote(formula, at));
    else copyTo(at + 1);
  }
  return out;
}

/** Whether a word or a cell reference may start here: not in the middle of one. */
const startsWord = (text: string, at: number): boolean =>
  at === 0 || !/[\p{L}\p{N}_.$!]/u.test(text[at - 1]!);

export interface EngineOptions {
  readonly bundle: FunctionsBundle;
  /** Registers what draws the workbook; without it there is no screen. */
  readonly screen?: (univer: Univer) => void;
  readonly language?: ILanguagePack;
  readonly theme?: Theme;
  readonly dark?: boolean;
  /** Sheets that the workbook opens with, in order. */
  readonly sheets: readonly (Partial<IWorksheetData> & { readonly id: string })[];
}

export interface Engine {
  readonly univer: Univer;
  readonly injector: Injector;
  readonly workbook: Workbook;
  readonly unitId: string;
  readonly commands: ICommandService;
  readonly history: IUndoRedoService;
  readonly faults: FaultMessages;
  /** What each sheet was made from, by the id of the sheet. */
  readonly plans: Map<string, SheetPlan>;
}

const UNIT = "carrybook";

export function startEngine({
  bundle,
  screen,
  language,
  theme,
  dark,
  sheets,
}: EngineOptions): Engine {
  const faults = new FaultMessages();
  const { functions, descriptions } = engineFunctions(bundle, faults);
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: language ?? {} },
    logLevel: LogLevel.ERROR,
    darkMode: dark ?? false,
    override: longHistory,
    ...(theme ? { theme } : {}),
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, {
    function: [...functions, [SpillFunction, SPILL_FUNCTION]],
  });
  // The engine forgets its history when a sheet of more cells than this is deleted.
  const largeSheetOperation = { largeSheetCellCountThreshold: Infinity };
  univer.registerPlugin(UniverSheetsPlugin, { largeSheetOperation });
  screen?.(univer);
  univer.registerPlugin(UniverSheetsFormulaPlugin, { description: descriptions });
  univer.registerPlugin(UniverSheetsNumfmtPlugin);
  univer.registerPlugin(UniverDataValidationPlugin);
  univer.registerPlugin(UniverSheetsDataValidationPlugin);
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  univer.registerPlugin(UniverSheetsTablePlugin);
  const workbook = univer.createUnit<Partial<IWorkbookData>, Workbook>(
    UniverInstanceType.UNIVER_SHEET,
    {
      id: UNIT,
      name: "Carrybook",
      sheetOrder: sheets.map(({ id }) => id),
      sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    },
  );
  const injector = univer.__getInjector();
  injector.get(IUniverInstanceService).focusUnit(UNIT);
  return {
    univer,
    injector,
    workbook,
    unitId: UNIT,
    commands: injector.get(ICommandService),
    history: injector.get(IUndoRedoService),
    faults,
    plans: new Map(),
  };
}
