/**
 * The workbook in this browser's own database: as it was last written whole, and each change since.
 * A change is on the disk before the call that made it ends.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { LightBook } from "../workbook/light/lightBook";
import { type Keeper, type LightChange, makeChange } from "../workbook/light/lightPort";
import type { Memo } from "./remember";

/** A workbook and the file that it came from. */
export interface OpenedBook {
  readonly book: LightBook;
  readonly name: string;
  /** The .xlsx file as it was opened; null for the starter, which is a file of the page itself. */
  readonly file: Uint8Array | null;
}

/** Which workbook: the one in use, or the one that opening another put away. */
type Which = "now" | "before";

interface Schema extends DBSchema {
  books: { key: Which; value: { readonly book: LightBook; readonly name: string } };
  files: { key: Which; value: Uint8Array };
  changes: { key: number; value: LightChange };
  memos: { key: "pane"; value: Memo };
}

const DATABASE = "carrybook-phone";
/** After so many changes the workbook is written whole, so that the next start need not make them again. */
const MOST_CHANGES = 100;

/** What the process or the phone does meanwhile cannot lose a change that was reported as kept. */
const STRICT = { durability: "strict" } as const;

export class BookStore implements Keeper {
  private changes = 0;

  private constructor(private readonly database: IDBPDatabase<Schema>) {}

  static async open(): Promise<BookStore> {
    const database = await openDB<Schema>(DATABASE, 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore("books");
        fresh.createObjectStore("files");
        fresh.createObjectStore("changes", { autoIncrement: true });
        fresh.createObjectStore("memos");
      },
      blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
    });
    return new BookStore(database);
  }

  close(): void {
    this.database.close();
  }

  /** The workbook with all its changes; null on a first visit. */
  async find(): Promise<LightBook | null> {
    const reading = this.database.transaction(["books", "changes"]);
    const [kept, changes] = await Promise.all([
      reading.objectStore("books").get("now"),
      reading.objectStore("changes").getAll(),
    ]);
    if (!kept) return null;
    changes.forEach((change) => makeChange(kept.book, change));
    this.changes = changes.length;
    return kept.book;
  }

  readMemo(): Promise<Memo | undefined> {
    return this.database.get("memos", "pane");
  }

  async writeMemo(memo: Memo): Promise<void> {
    await this.database.put("memos", memo, "pane");
  }

  async load(): Promise<LightBook> {
    const book = await this.find();
    if (!book) throw new Error("This browser no longer holds the workbook.");
    return book;
  }

  async keep(change: LightChange): Promise<void> {
    const writing = this.database.transaction("changes", "readwrite", STRICT);
    await Promise.all([writing.store.add(change), writing.done]);
    this.changes += 1;
  }

  /** Writes the workbook whole where many changes have gathered. For moments when nobody waits. */
  async tidy(book: LightBook): Promise<void> {
    if (this.changes < MOST_CHANGES) return;
    const { name } = (await this.database.get("books", "now"))!;
    const writing = this.database.transaction(["books", "changes"], "readwrite", STRICT);
    await Promise.all([
      writing.objectStore("books").put({ book, name }, "now"),
      writing.objectStore("changes").clear(),
      writing.done,
    ]);
    this.changes = 0;
  }

  /** The name and the file of the workbook in use. */
  async origin(): Promise<{ readonly name: string; readonly file: Uint8Array | null }> {
    const reading = this.database.transaction(["books", "files"]);
    const [kept, file] = await Promise.all([
      reading.objectStore("books").get("now"),
      reading.objectStore("files").get("now"),
    ]);
    return { name: kept?.name ?? "carrybook.xlsx", file: file ?? null };
  }

  /** Goes on with another workbook; the one in use is put away and can be brought back once. */
  async replace(opened: OpenedBook, current: LightBook | null): Promise<void> {
    const before = await this.origin();
    await this.write(opened, current && { ...before, book: current });
  }

  /** Brings back what `replace` put away. */
  async bringBack(): Promise<LightBook> {
    const reading = this.database.transaction(["books", "files"]);
    const [kept, file] = await Promise.all([
      reading.objectStore("books").get("before"),
      reading.objectStore("files").get("before"),
    ]);
    if (!kept) throw new Error("The earlier workbook is no longer kept.");
    await this.write({ ...kept, file: file ?? null }, null);
    return kept.book;
  }

  private async write(now: OpenedBook, before: OpenedBook | null): Promise<void> {
    const writing = this.database.transaction(["books", "files", "changes"], "readwrite", STRICT);
    const [books, files] = [writing.objectStore("books"), writing.objectStore("files")];
    const put = async (which: Which, opened: OpenedBook | null): Promise<void> => {
      if (!opened) return void (await Promise.all([books.delete(which), files.delete(which)]));
      const { book, name, file } = opened;
      await books.put({ book, name }, which);
      await (file ? files.put(file, which) : files.delete(which));
    };
    await Promise.all([
      put("now", now),
      put("before", before),
      writing.objectStore("changes").clear(),
      writing.done,
    ]);
    this.changes = 0;
  }
}
