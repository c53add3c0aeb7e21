/** Where the player was and what stood in the boxes, kept for the next start of the page. */
import type { PaneState } from "../pane/state";

/** Small, plain parts of the state; none of them is a throw, which the workbook holds. */
const PARTS = ["place", "session", "hole", "notes", "startForm", "steps"] as const;
/** Steps that can be taken back after the page was closed. */
const MOST_STEPS = 20;

export type Remembered = Partial<Pick<PaneState, (typeof PARTS)[number]>>;

/** States of another version of the page may have another shape, so that each says which it is of. */
const VERSION = String(process.env["PAGE_VERSION"]);

/** As it is written down. */
export interface Memo {
  readonly version: string;
  readonly state: Remembered;
}

/** What was remembered by this version of the page. */
export const rememberedIn = (memo: Memo | undefined): Remembered =>
  memo?.version === VERSION ? memo.state : {};

/**
 * Writes down what of the pane's states is worth it, one after the other; of those that come
 * meanwhile, the last.
 */
export function remembering(write: (memo: Memo) => Promise<unknown>): (state: PaneState) => void {
  let last = "";
  let waiting: PaneState | null = null;
  let writing = false;
  const writeAll = async (): Promise<void> => {
    writing = true;
    for (let state = waiting; state; state = waiting) {
      waiting = null;
      const memo = { version: VERSION, state: worthKeeping(state) };
      const text = JSON.stringify(memo);
      if (text === last) continue;
      // On a full disk the place is forgotten; of the workbook itself the player is told.
      await write(JSON.parse(text) as Memo).catch(() => undefined);
      last = text;
    }
    writing = false;
  };
  return (state) => {
    waiting = state;
    if (!writing) void writeAll();
  };
}

function worthKeeping(state: PaneState): Remembered {
  // What opening a file put away comes back by a function, which cannot be written down.
  const steps = state.steps
    .filter(({ changes }) => changes.every(({ kind }) => kind !== "replaced"))
    .slice(-MOST_STEPS);
  const kept = { ...state, steps };
  return Object.fromEntries(PARTS.map((part) => [part, kept[part]])) as Remembered;
}
