/** What the buttons and keys of Field do. */
import { DATA_TABLES } from "../../workbook/blueprint/dataTables";
import { PortError } from "../../workbook/port";
import type { DayForm } from "../../core/carry/form";
import { addRows, writeSettings } from "../book/book";
import { rowsFor } from "../book/newThrows";
import { type Desk, sentenceOf } from "../controller";
import { withFocus, withNotice } from "../state";
import type { Step } from "../undo/takeBack";
import { formSettings, NO_FORM } from "./form";
import {
  doubted,
  doubtOf,
  entryOf,
  leastKnownFirst,
  type LoggedRow,
  loggedRows,
  markingOff,
  progressOf,
  type Session,
  sessionFrom,
} from "./model";

export const setSession = (desk: Desk, part: Partial<Session>): void =>
  desk.change((state) =>
    state.session ? { ...state, session: { ...state.session, ...part } } : state,
  );

/** Ready for the next number. */
const next = (desk: Desk, part: Partial<Session>): void => {
  setSession(desk, part);
  desk.change((state) => withFocus(state, "carry"));
};

const complain = (desk: Desk, text: string): void =>
  desk.change((state) => withNotice(state, "field", { tone: "fault", text, canUndo: false }));

/** Starts, or goes on with the throws of that day: then each of them can be taken back as well. */
export function start(desk: Desk, today: number): void {
  const { book, startForm } = desk.state;
  if (!book) return;
  try {
    const session = sessionFrom(startForm, book.settings, today);
    const others = desk.state.steps.filter(({ place }) => place !== "field");
    const steps = loggedRows(session, book).map(addedStep);
    desk.change((state) => ({
      ...withFocus(withNotice(state, "field", null), "carry"),
      session,
      steps: [...others, ...steps],
    }));
  } catch (error) {
    complain(desk, sentenceOf(error));
  }
}

const addedStep = ({ index, was, disc, carry }: LoggedRow): Step => ({
  place: "field",
  what: `${disc} ${String(carry)}`,
  changes: [{ kind: "added", table: DATA_TABLES.throws, rows: [{ index, was }] }],
});

export const end = (desk: Desk): void =>
  desk.change((state) => ({ ...withNotice(state, "field", null), session: null }));

/** The throw goes into the log; the box empties and the next disc comes only when it is there. */
export async function add(desk: Desk): Promise<void> {
  const { book, session, busy } = desk.state;
  if (!book || !session || busy) return;
  const { disc } = progressOf(session, book, leastKnownFirst(book));
  if (disc === null) return;
  const doubt = doubtOf(session, book, disc);
  if (doubt !== null) {
    setSession(desk, { doubted: doubted(session, disc) });
    return complain(desk, doubt);
  }
  const done = await desk.work("field", "Adding the throw", async (port) => {
    const table = needThrows(book.raw.throws);
    const rows = rowsFor(table, [entryOf(session, disc, book.settings)], book.settings);
    const what = `${disc} ${session.carry.trim()}`;
    const changes = [await addRows(port, DATA_TABLES.throws, rows)];
    return { said: "", step: { place: "field", what, changes } };
  });
  if (done) next(desk, { carry: "", doubted: null, offline: null, chosen: null });
}

/** Marks the last throw off and asks for the same disc again. */
export async function again(desk: Desk): Promise<void> {
  const { book, session } = desk.state;
  const last = book && session && loggedRows(session, book).at(-1);
  if (!book || !last) return complain(desk, "There is no throw to mark off yet.");
  if (last.off) return complain(desk, "The last throw is marked off already. Throw it again.");
  const done = await desk.work("field", "Marking it off", async (port) => {
    const table = needThrows(book.raw.throws);
    const { becomes, before, was } = markingOff(last, table, book.settings);
    const { index } = last;
    await port.changeRows(DATA_TABLES.throws, [{ index, was: last.was, becomes }]);
    const step: Step = {
      place: "field",
      what: `off for ${last.disc} ${String(last.carry)}`,
      changes: [{ kind: "changed", table: DATA_TABLES.throws, rows: [{ index, was, before }] }],
    };
    return { said: "", step };
  });
  if (done) next(desk, { chosen: last.disc, carry: "", offline: null });
}

/** Takes the last step back and offers its disc again. */
export async function takeBackLast(desk: Desk): Promise<void> {
  const { book, session } = desk.state;
  const last = book && session && loggedRows(session, book).at(-1);
  const done = await desk.undo("field");
  if (done && last) next(desk, { chosen: last.off ? null : last.disc });
}

/** Passes this disc over until the others have been thrown. */
export function skip(desk: Desk): void {
  const { book, session } = desk.state;
  if (!book || !session) return;
  const { disc } = progressOf(session, book, leastKnownFirst(book));
  if (disc) next(desk, { chosen: null, skipped: [...session.skipped, disc] });
}

function needThrows<Table>(table: Table | null): Table {
  if (!table) throw new PortError("missing", "There is no throw log yet. Make it in Set-up.");
  return table;
}

// Keys of the box in a session. Letters are no part of a number, so they are free for these.

export function onSessionKey(desk: Desk, event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const act = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (!act) return;
  event.preventDefault();
  act(desk);
}

const KEYS: Readonly<Record<string, (desk: Desk) => void>> = {
  Enter: (desk) => void add(desk),
  ArrowLeft: (desk) => turn(desk, -1),
  ArrowRight: (desk) => turn(desk, 1),
  a: (desk) => void again(desk),
  u: (desk) => void takeBackLast(desk),
  n: skip,
};

/** One step to a side. Back at straight it is noted as straight. */
export function turn(desk: Desk, step: number): void {
  const now = desk.state.session?.offline ?? null;
  setSession(desk, { offline: now === null ? step : now + step });
}

/** Picks count with the form of the day from now on. */
export const useForm = (desk: Desk, form: DayForm): Promise<boolean> =>
  desk.work("field", "Writing the settings", async (port) => {
    const what = "today's form, in Settings";
    const changes = [await writeSettings(port, formSettings(form))];
    return { said: `Wrote ${what}.`, step: { place: "field", what, changes } };
  });

/** Picks go by the card alone. */
export const forgetForm = (desk: Desk): Promise<boolean> =>
  desk.work("field", "Writing the settings", async (port) => {
    const what = "the form of an earlier day, out of Settings";
    const changes = [await writeSettings(port, NO_FORM)];
    return { said: "Picks go by the card again.", step: { place: "field", what, changes } };
  });
