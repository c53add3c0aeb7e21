/**
 * The work-arounds of the grid engine, one file a fault: what it cures, the version that has the fault,
 * and a test in test/workbook/embedded that fails without it. Those of what draws the grid stand in
 * src/page/workarounds. After an upgrade of the engine, take each out in turn, and leave out those whose
 * tests pass without it.
 */
import type { Engine } from "../engine";
import { mendDeletedSheets } from "./deletedSheets";
import { mendLateChecks } from "./lateChecks";
import { mendLostCalculations } from "./lostCalculations";
import { mendOpenBrackets } from "./openBrackets";
import { mendPiledReferences } from "./piledReferences";
import { mendRememberedTables } from "./rememberedTables";
import { mendStaleSpills } from "./staleSpills";
import { mendStructuralChanges } from "./structuralChanges";

/** All of them, before anything is calculated. */
export function mendEngine(engine: Engine): void {
  mendOpenBrackets(engine);
  mendRememberedTables(engine);
  mendPiledReferences(engine);
  mendDeletedSheets(engine);
  mendLateChecks(engine);
  mendLostCalculations(engine);
  mendStaleSpills(engine);
  mendStructuralChanges(engine);
}
