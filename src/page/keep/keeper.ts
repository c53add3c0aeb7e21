import type { SheetPlan } from "../../workbook/blueprint/types";
import { writeCopy } from "./copies";

/** So long nothing may change before a copy is written, ms. */
const QUIET_MS = 4000;

/** Keeps a copy of the workbook in this browser, in step with its changes. */
export class Keeper {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private writing: Promise<void> = Promise.resolve();
  private behind = false;
  private toldOfTrouble = false;
  /** The visit under whose name the copy is kept. */
  private visit = `${Date.now()}-${Math.random()}`;

  constructor(
    private readonly sheetsOf: () => readonly SheetPlan[],
    /** Called the first time that a copy cannot be kept; later ones are tried all the same. */
    private readonly onTrouble: (reason: unknown) => void,
  ) {
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") this.writeIn(0);
    });
  }

  changed(): void {
    this.behind = true;
    this.writeIn(QUIET_MS);
  }

  /** From now on the copy of that visit is ours to write over. */
  goOnAs(visit: string): void {
    this.visit = visit;
  }

  private writeIn(ms: number): void {
    clearTimeout(this.timer);
    if (this.behind) this.timer = setTimeout(() => this.write(), ms);
  }

  /** One after the other, so that an older copy never comes last. */
  private write(): void {
    this.writing = this.writing.then(async () => {
      this.behind = false;
      try {
        await writeCopy({ visit: this.visit, at: Date.now(), sheets: this.sheetsOf() });
      } catch (reason) {
        this.behind = true;
        if (!this.toldOfTrouble) this.onTrouble(reason);
        this.toldOfTrouble = true;
      }
    });
  }
}
