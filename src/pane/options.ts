import type { Place } from "./places";

export interface OpenedFile {
  /** What was opened, in a sentence. */
  readonly said: string;
  /** Brings back what was there before. */
  readonly undo: () => Promise<void>;
}

/** What the surroundings of the pane can do beyond the workbook itself. */
export interface PaneOptions {
  /**
   * Hands the workbook to the player as an .xlsx file, or a plain copy with values in place of our
   * formulas; answers a sentence that says what was saved.
   */
  readonly saveFile?: (plain: boolean) => Promise<string>;
  /** Goes on with a file that the player chose. */
  readonly openFile?: (file: File) => Promise<OpenedFile>;
  /** Today as a serial day; the machine's calendar where not given. */
  readonly today?: () => number;
  /** Where the pane opens; Hole where not given. */
  readonly place?: Place;
}
