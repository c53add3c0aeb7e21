/** Starts the spreadsheet engine: the same set-up in the page and without a screen. */
import {
  ICommandService,
  IUndoRedoService,
  IUniverInstanceService,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
  type ILanguagePack,
  type Injector,
  type IWorkbookData,
  type IWorksheetData,
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
import { engineFunctions } from "./engineFunctions";
import { FaultMessages } from "./faults";
import type { FunctionsBundle } from "./functionsBundle";
import { SPILL_FUNCTION } from "./notation";
import { SpillFunction } from "./spillFunction";

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
    ...(theme ? { theme } : {}),
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, {
    function: [...functions, [SpillFunction, SPILL_FUNCTION]],
  });
  univer.registerPlugin(UniverSheetsPlugin);
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
