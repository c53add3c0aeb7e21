/** What happened in a place, said there. */
export interface Notice {
  readonly tone: "done" | "fault";
  readonly text: string;
  /** Whether the latest step of the place can be taken back from here. */
  readonly canUndo: boolean;
}

/** Long work under way, and the way to stop it. */
export interface Busy {
  readonly doing: string;
  readonly done: number;
  /** 0 where it cannot be told. */
  readonly total: number;
  readonly stop: () => void;
}
