import type { Book } from "./book/book";
import { type CourseForm, EMPTY_COURSE } from "./course/model";
import { EMPTY_START, type Session, type StartForm } from "./field/model";
import { EMPTY_HOLE, fillFrom, type HoleForm } from "./hole/model";
import { EMPTY_NOTES, EMPTY_OWN_BAG, type NotesForm, type OwnBagForm } from "./forms";
import type { Place } from "./places";
import { EMPTY_SHARE, type ShareForm } from "./forms";
import type { Step } from "./undo/takeBack";

/** What happened in a place, said there. */
export interface Notice {
  readonly tone: "done" | "fault";
  readonly text: string;
  /** Whether the latest step of the place can be taken back from here. */
  readonly canUndo: boolean;
  /** Of an error that nobody expected: what a report of it needs. */
  readonly details?: string;
}

/** Long work under way, and the way to stop it. */
export interface Busy {
  readonly doing: string;
  readonly done: number;
  /** 0 where it cannot be told. */
  readonly total: number;
  readonly stop: () => void;
}

/** A record without one of its keys. */
export function without<Value>(
  record: Readonly<Record<string, Value>>,
  key: string,
): Readonly<Record<string, Value>> {
  return Object.fromEntries(Object.entries(record).filter(([other]) => other !== key));
}

/** All that the pane knows. Views draw it; nothing else changes what they draw. */
export interface PaneState {
  readonly place: Place;
  /** null until the workbook has been read for the first time. */
  readonly book: Book | null;
  /** Why the workbook cannot be read, should that be so. */
  readonly unread: string | null;
  /** What keeps the sheets and the pane from agreeing, in sentences. */
  readonly remarks: readonly string[];
  /** Whether work waits until the player leaves a cell that is being edited. */
  readonly waiting: boolean;
  readonly notices: Readonly<Partial<Record<Place, Notice>>>;
  readonly busy: Busy | null;
  /** What the pane changed, oldest first. */
  readonly steps: readonly Step[];
  /** On each plot, which of its figures is looked at. */
  readonly looked: Readonly<Record<string, number | null>>;
  /** Whether the first drawing of this place with this book is on the screen: slow parts wait for it. */
  readonly settled: boolean;
  /** Id of what gets the focus once it is drawn; null to leave the focus where it is. */
  readonly focus: string | null;
  /** Room for a plot, px. */
  readonly plotWidth: number;
  readonly hole: HoleForm;
  readonly notes: NotesForm;
  readonly course: CourseForm;
  readonly share: ShareForm;
  readonly ownBag: OwnBagForm;
  readonly startForm: StartForm;
  /** Whether the caution of Hole has been in sight until the player went on. */
  readonly cautioned: boolean;
  /** null between sessions. */
  readonly session: Session | null;
}

export const firstState = (place: Place): PaneState => ({
  place,
  book: null,
  unread: null,
  remarks: [],
  waiting: false,
  notices: {},
  busy: null,
  steps: [],
  looked: {},
  settled: false,
  focus: null,
  plotWidth: 318,
  hole: EMPTY_HOLE,
  notes: EMPTY_NOTES,
  course: EMPTY_COURSE,
  share: EMPTY_SHARE,
  ownBag: EMPTY_OWN_BAG,
  startForm: EMPTY_START,
  cautioned: false,
  session: null,
});

/** A new reading of the workbook; Hole opens with the first hole of the course. */
export function withBook(state: PaneState, book: Book): PaneState {
  if (state.book === book) return state;
  const first = book.holes[0];
  const untouched = state.book === null && state.hole === EMPTY_HOLE && first;
  return {
    ...state,
    book,
    settled: false,
    unread: null,
    hole: untouched ? fillFrom(first, book.settings) : state.hole,
  };
}

export const withLook = (state: PaneState, plot: string, at: number | null): PaneState =>
  (state.looked[plot] ?? null) === at
    ? state
    : { ...state, looked: { ...state.looked, [plot]: at } };

export function withNotice(state: PaneState, place: Place, notice: Notice | null): PaneState {
  const others = without(state.notices, place);
  return { ...state, notices: notice ? { ...others, [place]: notice } : others };
}

export const withFocus = (state: PaneState, focus: string | null): PaneState =>
  state.focus === focus ? state : { ...state, focus };

/** The pane goes to another place; what was said here is read by now, but what can be taken back stays so. */
export function goTo(state: PaneState, place: Place): PaneState {
  if (state.place === place) return state;
  const read = state.notices[state.place]?.canUndo ? state : withNotice(state, state.place, null);
  return { ...read, place, settled: false, cautioned: state.cautioned || state.place === "hole" };
}

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
