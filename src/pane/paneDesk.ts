import type { WorkbookPort } from "../workbook/port";
import { sentenceOf } from "./attempt";
import { bookOf } from "./book/book";
import { keepUnchanged, readRawBook } from "./book/rawBook";
import type { Desk, Done, Work } from "./desk";
import type { PaneOptions } from "./options";
import type { Place } from "./places";
import { withBook, withNotice, type PaneState } from "./state";
import type { Store } from "./store";
import { lastOf } from "./undo/step";
import { takeBack } from "./undo/takeBack";

/** The desk over a real workbook: works in turn, and keeps the reading of the workbook fresh. */
export class PaneDesk implements Desk {
  private turn: Promise<unknown> = Promise.resolve();
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
    const stopping = new AbortController();
    const report = (done: number, total: number): void =>
      this.change((state) => ({
        ...state,
        busy: { doing, done, total, stop: () => stopping.abort() },
      }));
    report(0, 0);
    const next = this.turn.then(() =>
      this.run(place, (port) => work(port, report, stopping.signal)),
    );
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
      const text = sentenceOf(error);
      this.change((state) => ({
        ...withNotice(state, place, { tone: "fault", text, canUndo: false }),
        busy: null,
      }));
      return false;
    }
  }
}
