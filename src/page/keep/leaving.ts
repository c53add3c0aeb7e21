/** Asks before the page is left with changes that are in no file. */
export class Leaving {
  private readonly ask = (event: BeforeUnloadEvent): void => event.preventDefault();

  /** Listening only while there is something to lose lets the browser keep the page for its Back button. */
  changed(): void {
    addEventListener("beforeunload", this.ask);
  }

  /** The workbook is as a file has it. */
  safe(): void {
    removeEventListener("beforeunload", this.ask);
  }
}
