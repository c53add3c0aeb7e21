/** The embedded workbook without a screen: the same engine and functions, in Node. */
import { RedoCommand, UndoCommand } from "@univerjs/core";
import type { Blueprint } from "../workbook/blueprint/types";
import { EmbeddedWorkbook } from "../workbook/embedded";
import type { FunctionsBundle } from "../workbook/embedded/engine";
import { openWorkbook } from "../workbook/embedded/open";
import "./iteratorSome";

export interface HeadlessWorkbook {
  readonly port: EmbeddedWorkbook;
  /** Resolves when every change made so far has been calculated. */
  calculated(): Promise<void>;
  undo(): Promise<boolean>;
  redo(): Promise<boolean>;
  close(): void;
}

/**
 * @example
 * const { port, close } = await openHeadless(starterBlueprint(), bundleInNode("dist"));
 * await port.readRange("MyCard");
 */
export async function openHeadless(
  blueprint: Blueprint,
  bundle: FunctionsBundle,
): Promise<HeadlessWorkbook> {
  const { engine, calculation } = openWorkbook(blueprint, { bundle });
  const port = new EmbeddedWorkbook(engine, calculation);
  // Opening alone asks for no calculation that could be waited for where there is no table and no name.
  await calculation.all();
  return {
    port,
    calculated: () => calculation.settled(),
    undo: () => engine.commands.executeCommand(UndoCommand.id),
    redo: () => engine.commands.executeCommand(RedoCommand.id),
    close: () => engine.univer.dispose(),
  };
}
