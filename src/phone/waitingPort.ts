/**
 * The phone's port over a workbook that is still being opened: what is asked of it waits until it is
 * there. The phone works on the tables of its file and makes no sheets.
 */
import { PortError, type WorkbookPort } from "../workbook/port";

const refuse = (): Promise<never> =>
  Promise.reject(
    new PortError(
      "unsupported",
      "Sheets are made in the workbook page or in Excel, not on the phone.",
    ),
  );

export function portOf(opening: Promise<WorkbookPort>): WorkbookPort {
  return {
    kind: "light",
    undoable: false,
    sheetNames: async () => (await opening).sheetNames(),
    tableNames: async () => (await opening).tableNames(),
    readTable: async (name) => (await opening).readTable(name),
    readRange: async (ref) => (await opening).readRange(ref),
    addRows: async (table, rows) => (await opening).addRows(table, rows),
    changeRows: async (table, changes) => (await opening).changeRows(table, changes),
    removeRows: async (table, rows) => (await opening).removeRows(table, rows),
    writeRange: async (ref, values) => (await opening).writeRange(ref, values),
    build: refuse,
    replaceSheet: refuse,
    ourFormulas: async () => (await opening).ourFormulas(),
    repairFormulas: async (...how) => (await opening).repairFormulas(...how),
    recalculate: async () => (await opening).recalculate(),
    show: async (ref) => (await opening).show(ref),
    onChange: (listener) => {
      let stop: (() => void) | null = null;
      let wanted = true;
      void opening.then(
        (port) => {
          if (wanted) stop = port.onChange(listener);
        },
        () => undefined,
      );
      return () => {
        wanted = false;
        stop?.();
      };
    },
  };
}
