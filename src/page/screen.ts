/** What draws the embedded workbook: the grid, its formula bar and menus, in the page's language. */
import { type ILanguagePack, mergeLocales, type Univer } from "@univerjs/core";
import DataValidation from "@univerjs/data-validation/locale/en-US";
import Design from "@univerjs/design/locale/en-US";
import { UniverDocsPlugin } from "@univerjs/docs";
import { UniverDocsUIPlugin } from "@univerjs/docs-ui";
import DocsUI from "@univerjs/docs-ui/locale/en-US";
import { UniverRenderEnginePlugin } from "@univerjs/engine-render";
import { UniverSheetsConditionalFormattingUIPlugin } from "@univerjs/sheets-conditional-formatting-ui";
import ConditionalFormatting from "@univerjs/sheets-conditional-formatting-ui/locale/en-US";
import { UniverSheetsDataValidationUIPlugin } from "@univerjs/sheets-data-validation-ui";
import DataValidationUI from "@univerjs/sheets-data-validation-ui/locale/en-US";
import SheetsDataValidation from "@univerjs/sheets-data-validation/locale/en-US";
import { UniverSheetsFormulaUIPlugin } from "@univerjs/sheets-formula-ui";
import FormulaUI from "@univerjs/sheets-formula-ui/locale/en-US";
import Formula from "@univerjs/sheets-formula/locale/en-US";
import { UniverSheetsNumfmtUIPlugin } from "@univerjs/sheets-numfmt-ui";
import NumfmtUI from "@univerjs/sheets-numfmt-ui/locale/en-US";
import { UniverSheetsTableUIPlugin } from "@univerjs/sheets-table-ui";
import TableUI from "@univerjs/sheets-table-ui/locale/en-US";
import Table from "@univerjs/sheets-table/locale/en-US";
import { UniverSheetsUIPlugin } from "@univerjs/sheets-ui";
import SheetsUI from "@univerjs/sheets-ui/locale/en-US";
import Sheets from "@univerjs/sheets/locale/en-US";
import { UniverUIPlugin } from "@univerjs/ui";
import UI from "@univerjs/ui/locale/en-US";

export const language: ILanguagePack = mergeLocales(
  DataValidation,
  Design,
  DocsUI,
  Sheets,
  ConditionalFormatting,
  SheetsDataValidation,
  DataValidationUI,
  Formula,
  FormulaUI,
  NumfmtUI,
  Table,
  TableUI,
  SheetsUI,
  UI,
);

/** On a narrow screen the names of the sheets need all the room at the foot of the grid. */
const narrow = (): boolean => matchMedia("(max-width: 800px)").matches;
const ONLY_SHEETS = { statisticBar: false, menus: false, zoomSlider: false };

/** Registers the visible parts, drawn into the given element. */
export const screenIn =
  (container: HTMLElement) =>
  (univer: Univer): void => {
    univer.registerPlugin(UniverRenderEnginePlugin);
    univer.registerPlugin(UniverUIPlugin, { container, header: true, footer: true });
    univer.registerPlugin(UniverDocsPlugin);
    univer.registerPlugin(UniverDocsUIPlugin);
    univer.registerPlugin(UniverSheetsUIPlugin, narrow() ? { footer: ONLY_SHEETS } : {});
    univer.registerPlugin(UniverSheetsFormulaUIPlugin);
    univer.registerPlugin(UniverSheetsNumfmtUIPlugin);
    univer.registerPlugin(UniverSheetsDataValidationUIPlugin, {
      showEditOnDropdown: false,
      showSearchOnDropdown: false,
    });
    univer.registerPlugin(UniverSheetsConditionalFormattingUIPlugin);
    univer.registerPlugin(UniverSheetsTableUIPlugin, { hideAnchor: true });
  };
