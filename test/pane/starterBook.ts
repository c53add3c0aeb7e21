/** The invented starter workbook as the pane reads it, and a throw to vary. */
import { type Book, bookOf, readRawBook } from "../../src/pane/book/book";
import type { NewThrow } from "../../src/pane/book/newThrows";
import { emptyBlueprint, starterBlueprint } from "../../src/workbook/blueprint";
import { MemoryPort } from "../support/memoryPort";

export const starterPort = (): MemoryPort => new MemoryPort(starterBlueprint());

export const bookIn = async (port: MemoryPort): Promise<Book> => bookOf(await readRawBook(port));
export const starterBook = (): Promise<Book> => bookIn(starterPort());
export const emptyBook = (): Promise<Book> => bookIn(new MemoryPort(emptyBlueprint()));

export const thrown = (part: Partial<NewThrow>): NewThrow => ({
  disc: "Copper mid",
  carryM: 90,
  offlineM: null,
  power: 1,
  line: "",
  headwindMps: 0,
  riseM: 0,
  player: "Me",
  day: 46350,
  note: "",
  ...part,
});
