/** Opens an embedded workbook with the sheets of a blueprint. */
import { generateRandomId } from "@univerjs/core";
import { TriggerCalculationController } from "@univerjs/sheets-formula";
import type { Blueprint } from "../blueprint/types";
import { furnish } from "./build";
import { Calculation } from "./calculation";
import { type Engine, type EngineOptions, startEngine } from "./engine";
import { renderSheet } from "./renderSheet";
import { addNamePlan, apply } from "./changes";
import { registerTableLook } from "./tables";
import { mendEngine } from "./workarounds/index";

export interface OpenWorkbook {
  readonly engine: Engine;
  readonly calculation: Calculation;
}

/** The engine would wait with its first calculation until the screen is drawn. */
function startCalculating({ injector }: Engine): void {
  injector.get(TriggerCalculationController);
}

/** The first calculation is under way when this returns; it takes in every formula that has no value yet. */
export function openWorkbook(
  blueprint: Blueprint,
  options: Omit<EngineOptions, "sheets">,
): OpenWorkbook {
  const rendered = blueprint.sheets.map((plan) => ({
    plan,
    ...renderSheet(plan, generateRandomId()),
  }));
  const engine = startEngine({ ...options, sheets: rendered.map(({ sheet }) => sheet) });
  for (const { plan, sheet } of rendered) engine.plans.set(sheet.id, plan);
  mendEngine(engine);
  registerTableLook(engine);
  const calculation = new Calculation(engine);
  startCalculating(engine);
  const changes = [
    ...rendered.flatMap(({ sheet, blocks }) => furnish(engine, sheet.id, sheet.name ?? "", blocks)),
    ...(blueprint.names ?? []).map((name) => addNamePlan(engine, name)),
  ];
  apply(engine, changes, "Opening the workbook");
  return { engine, calculation };
}
