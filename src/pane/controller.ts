import { DomainError } from "../core/errors";
import { PortError, type Progress, type WorkbookPort } from "../workbook/port";
import { bookOf, keepUnchanged, readRawBook } from "./book/book";
import type { Place } from "./places";
import { type PaneState, type Store, withBook, withNotice } from "./state";
import { lastOf, type Step, takeBack } from "./undo/takeBack";

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
  /** On a phone no sheet can be made, so that none is offered. */
  readonly onPhone?: boolean;
  /** Parts of the state of an earlier visit, to go on from. */
  readonly remembered?: Partial<PaneState>;
  /** Told of every state of the pane. */
  readonly onState?: (state: PaneState) => void;
}

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
   * why it failed, is shown in the place. Answers whether it worked. While the same work is under
   * way or waiting, as after a second press, nothing more is begun.
   */
  work(place: Place, doing: string, work: Work): Promise<boolean>;
  /** Takes back the latest step of a place. */
  undo(place: Place): Promise<boolean>;
  /** Reads the workbook again. */
  refresh(): Promise<void>;
}

/** An answer of the core, or the sentence that says why there is none. */
export type Answer<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly why: string };

/** Asks the core; what it throws becomes a sentence. */
export function attempt<Value>(ask: () => Value): Answer<Value> {
  try {
    return { ok: true, value: ask() };
  } catch (error) {
    return { ok: false, why: sentenceOf(error) };
  }
}

/** Errors that are a mistake of ours, never a sentence for the player. */
const OURS = [TypeError, RangeError, ReferenceError, SyntaxError];

/** Where the program itself went wrong: all that a report of it needs. null for an error that says why. */
export function detailsOf(error: unknown): string | null {
  if (error instanceof DomainError || error instanceof PortError) return null;
  if (error instanceof Error && !OURS.some((kind) => error instanceof kind)) return null;
  return error instanceof Error
    ? (error.stack ?? `${error.name}: ${error.message}`)
    : String(error);
}

/** The sentence of an error; DomainError and PortError already carry one for the player. */
export const sentenceOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

const UNEXPECTED =
  "Something went wrong that should not. Look at the workbook before you go on, and report the details.";

/** The desk over a real workbook: works in turn, and keeps the reading of the workbook fresh. */
export class PaneDesk implements Desk {
  private turn: Promise<unknown> = Promise.resolve();
  /** Work that is under way or waiting, by place and what it does. */
  private readonly begun = new Set<string>();
  private reading: Promise<void> | null = null;
  private stale = false;

  constructor(
    private readonly store: Store<PaneState>,
    private readonly port: WorkbookPort,
    readonly options: PaneOptions,
  ) {}

  get state(): PaneState {
    return this.store.state;
  }

  change(update: (state: PaneState) => PaneState): void {
    this.store.change(update);
  }

  /** The pane is busy from the call on, so that a second press finds it so. */
  work(place: Place, doing: string, work: Work): Promise<boolean> {
    const name = `${place}: ${doing}`;
    if (this.begun.has(name)) return Promise.resolve(false);
    this.begun.add(name);
    const stopping = new AbortController();
    const report = (done: number, total: number): void =>
      this.change((state) => ({
        ...state,
        busy: { doing, done, total, stop: () => stopping.abort() },
      }));
    report(0, 0);
    const next = this.turn
      .then(() => this.run(place, (port) => work(port, report, stopping.signal)))
      .finally(() => this.begun.delete(name));
    this.turn = next;
    return next;
  }

  undo(place: Place): Promise<boolean> {
    return this.work(place, "Taking back", async (port) => {
      const step = lastOf(this.state.steps, place);
      if (!step) return { said: "There is nothing to take back." };
      await takeBack(port, step.changes);
      this.change((state) => ({ ...state, steps: state.steps.filter((other) => other !== step) }));
      return { said: `Taken back: ${step.what}.` };
    });
  }

  /** Readings never overlap; a change during one leads to exactly one more. */
  refresh(): Promise<void> {
    if (this.reading) {
      this.stale = true;
      return this.reading;
    }
    this.reading = this.read().finally(() => (this.reading = null));
    return this.reading;
  }

  private async read(): Promise<void> {
    do {
      this.stale = false;
      try {
        const read = await readRawBook(this.port);
        const before = this.state.book;
        const raw = before ? keepUnchanged(before.raw, read) : read;
        const book = before && raw === before.raw ? before : bookOf(raw);
        this.change((state) => withBook({ ...state, unread: null }, book));
      } catch (error) {
        this.change((state) => ({ ...state, unread: sentenceOf(error) }));
      }
    } while (this.stale);
  }

  private async run(place: Place, work: (port: WorkbookPort) => Promise<Done>): Promise<boolean> {
    try {
      const { said, step } = await work(this.port);
      await this.refresh();
      this.change((state) => ({
        ...withNotice(
          state,
          place,
          said === "" ? null : { tone: "done", text: said, canUndo: step !== undefined },
        ),
        steps: step ? [...state.steps, step] : state.steps,
        busy: null,
      }));
      return true;
    } catch (error) {
      await this.refresh();
      const details = detailsOf(error);
      const text = details === null ? sentenceOf(error) : UNEXPECTED;
      const notice = { tone: "fault", text, canUndo: false } as const;
      this.change((state) => ({
        ...withNotice(state, place, details === null ? notice : { ...notice, details }),
        busy: null,
      }));
      return false;
    }
  }
}
