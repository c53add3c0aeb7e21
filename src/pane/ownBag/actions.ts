import { discKey } from "../../core/log/names";
import { type BagList, type ListedDisc, readBagList } from "../../core/notes/readBagList";
import { DATA_TABLES } from "../../workbook/blueprint/dataTables";
import { emptyBlueprint } from "../../workbook/blueprint/index";
import { STARTER } from "../../workbook/blueprint/content";
import { type CellValue, PortError, type WorkbookPort } from "../../workbook/port";
import { addRows, bookOf, readRawBook } from "../book/book";
import { rowsFor } from "../book/newThrows";
import type { Desk } from "../controller";
import { EMPTY_OWN_BAG, type OwnBagForm } from "../forms";
import type { Place } from "../places";
import { goTo, withFocus } from "../state";
import type { Change } from "../undo/takeBack";
import { count } from "../words/figures";
import {
  bagRows,
  discInputs,
  INVENTED_RANGES,
  inventedIn,
  sameCells,
  strangersIn,
  throwsOf,
} from "./model";

export const setOwnBag = (desk: Desk, part: Partial<OwnBagForm>): void =>
  desk.change((state) => ({ ...state, ownBag: { ...state.ownBag, ...part } }));

/** Leads to the box for the player's own list. */
export const openOwnBag = (desk: Desk): void =>
  desk.change((state) => withFocus(goTo(state, "setup"), "own-bag"));

export const lookAround = (desk: Desk): void => setOwnBag(desk, { lookingAround: true });

/** Takes the invented rows and values out; the player's own stay. */
async function takeOut(port: WorkbookPort): Promise<Change[]> {
  const changes: Change[] = [];
  for (const { table, rows } of inventedIn(await readRawBook(port))) {
    await port.removeRows(table, rows);
    changes.push({ kind: "removed", table, rows });
  }
  for (const { ref, holds } of INVENTED_RANGES) {
    const found = await port.readRange(ref);
    if (found && sameCells(holds, found)) changes.push(await write(port, ref, found, () => ""));
  }
  return changes;
}

async function write(
  port: WorkbookPort,
  ref: string,
  found: CellValue[][],
  become: (cell: CellValue) => CellValue,
): Promise<Change> {
  const cells = found.flatMap((row, at) =>
    row.map((before, column) => ({ row: at, column, before, now: become(before) })),
  );
  await port.writeRange(
    ref,
    found.map((row) => row.map(become)),
  );
  return { kind: "wrote", ref, cells };
}

export const emptyInvented = (desk: Desk): Promise<boolean> =>
  desk.work("setup", "Removing the invented data", async (port) => {
    const changes = await takeOut(port);
    if (changes.length === 0) return { said: "There is no invented data here." };
    const what = "removing the invented data";
    desk.change((state) => withFocus(state, "own-bag"));
    return {
      said: "The invented data is gone.",
      step: { place: "setup", what, changes },
    };
  });

/** The pasted discs and carries take the place of the invented data, in one step. */
export async function addOwnBag(desk: Desk): Promise<void> {
  const { text, types } = desk.state.ownBag;
  const done = await desk.work("setup", "Filling Discs and Log", async (port) => {
    await port.build(emptyBlueprint());
    const changes = await takeOut(port);
    const raw = await readRawBook(port);
    const { bag, throws } = raw;
    if (!bag || !throws) throw new PortError("missing", "Discs or Log is missing. Make it first.");
    const book = bookOf(raw);
    const list = readBagList(text, book.settings);
    const discs = bagRows(
      list,
      bag,
      types,
      book.bag.map(({ disc }) => disc),
    );
    if (discs.length > 0) changes.push(await addRows(port, DATA_TABLES.bag, discs));
    const thrown = throwsOf(list, book.settings.player ?? "");
    if (thrown.length > 0) {
      const rows = rowsFor(throws, thrown, book.settings);
      changes.push(await addRows(port, DATA_TABLES.throws, rows));
    }
    changes.push(...(await nameOwnDisc(port, list)));
    const what = `${count(discs.length, "disc")} and ${count(thrown.length, "carry", "carries")}`;
    return { said: `Added ${what}.`, step: { place: "setup", what, changes } };
  });
  if (done) setOwnBag(desk, { ...EMPTY_OWN_BAG, lookingAround: true, added: true });
}

/** Inputs that still name the invented disc name the longest of the list, as they did before. */
async function nameOwnDisc(port: WorkbookPort, { discs }: BagList): Promise<Change[]> {
  const longest = ({ carriesM }: ListedDisc): number => Math.max(0, ...carriesM);
  const [own] = [...discs].sort((one, other) => longest(other) - longest(one));
  if (!own) return [];
  const changes: Change[] = [];
  for (const ref of discInputs()) {
    const found = await port.readRange(ref);
    const cell = found?.[0]?.[0];
    if (found && typeof cell === "string" && isInventedName(cell))
      changes.push(await write(port, ref, found, () => own.disc));
  }
  return changes;
}

const isInventedName = (name: string): boolean => discKey(name) === discKey(STARTER.disc);

/** Discs of the log that the bag lacks go into the bag. */
export const addStrangers = (desk: Desk, place: Place): Promise<boolean> =>
  desk.work(place, "Adding to the bag", async (port) => {
    const names = strangersIn(bookOf(await readRawBook(port)));
    if (names.length === 0) return { said: "They are in the bag already." };
    const what = count(names.length, "disc");
    const rows = names.map((disc) => ({ Disc: disc }));
    const changes = [await addRows(port, DATA_TABLES.bag, rows)];
    return { said: `Added ${what} to your bag.`, step: { place, what, changes } };
  });
