/** Opens an embedded workbook with the sheets of a blueprint. */
import { generateRandomId } from "@univerjs/core";
import type { Blueprint } from "../blueprint/types";
import { furnish } from "./build";
import { Calculation } from "./calculation";
import { startEngine, type Engine, type EngineOptions } from "./engine";
import { renderSheet } from "./renderSheet";
import { apply } from "./step";
import { registerTableLook } from "./tableLook";

export interface OpenWorkbook {
  readonly engine: Engine;
  readonly calculation: Calculation;
}

export function openWorkbook(
  blueprint: Blueprint,
  options: Omit<EngineOptions, "sheets">,
): OpenWorkbook {
  const rendered = blueprint.sheets.map((plan) => renderSheet(plan, generateRandomId()));
  const engine = startEngine({ ...options, sheets: rendered.map(({ sheet }) => sheet) });
  registerTableLook(engine);
  const calculation = new Calculation(engine);
  const changes = rendered.flatMap(({ sheet, blocks }) =>
    furnish(engine, sheet.id, sheet.name ?? "", blocks),
  );
  apply(engine, changes, "Opening the workbook");
  void calculation.all();
  return { engine, calculation };
}
