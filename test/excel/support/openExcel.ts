import { ExcelWorkbook } from "../../../src/workbook/excel";
import { ExcelHost } from "./excelHost";
import type { RequirementSets } from "./library";

interface Globals {
  Excel?: unknown;
  Office?: unknown;
}

/** An Excel in memory with the adapter over it. The client library's globals are the newest host's. */
export function openExcel(options: { firstSheet?: string; sets?: RequirementSets } = {}): {
  host: ExcelHost;
  port: ExcelWorkbook;
} {
  const host = new ExcelHost(options);
  const { Excel, Office } = host.library;
  Object.assign(globalThis as Globals, { Excel, Office });
  return { host, port: new ExcelWorkbook() };
}
