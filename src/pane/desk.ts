import type { Progress, WorkbookPort } from "../workbook/port";
import type { PaneOptions } from "./options";
import type { Place } from "./places";
import type { PaneState } from "./state";
import type { Step } from "./undo/step";

/** What a piece of work on the workbook came to. */
export interface Done {
  /** In a sentence; "" where the place shows it well enough. */
  readonly said: string;
  /** How to take it back; left out where nothing changed or it cannot be. */
  readonly step?: Step;
}

export type Work = (port: WorkbookPort, report: Progress, stop: AbortSignal) => Promise<Done>;

/** What a view or an action may use. */
export interface Desk {
  readonly state: PaneState;
  readonly options: PaneOptions;
  change(update: (state: PaneState) => PaneState): void;
  /**
   * Runs one piece of work after the other; reads the workbook again after each. What it says, or
   * why it failed, is shown in the place. Answers whether it worked.
   */
  work(place: Place, doing: string, work: Work): Promise<boolean>;
  /** Takes back the latest step of a place. */
  undo(place: Place): Promise<boolean>;
  /** Reads the workbook again. */
  refresh(): Promise<void>;
}
