/** Holds one state and tells those who watch it that it changed. */
export class Store<State> {
  private readonly watchers = new Set<() => void>();

  constructor(private current: State) {}

  get state(): State {
    return this.current;
  }

  /** An update that returns the very same state tells no one. */
  change(update: (state: State) => State): void {
    const next = update(this.current);
    if (next === this.current) return;
    this.current = next;
    this.watchers.forEach((tell) => tell());
  }

  /** Returns the way to stop. */
  watch(tell: () => void): () => void {
    this.watchers.add(tell);
    return () => this.watchers.delete(tell);
  }
}
