import type { SheetPlan } from "../../workbook/blueprint/types";

/** Copies of workbooks in this browser's own database, one for each visit to the page. */
export interface Copy {
  /** Which visit it is from. */
  readonly visit: string;
  /** When it was made, ms since 1970. */
  readonly at: number;
  /** The whole workbook, sheet by sheet. */
  readonly sheets: readonly SheetPlan[];
}

const DATABASE = "carrybook";
const STORE = "copies";

const answerOf = <Value>(request: IDBRequest<Value>): Promise<Value> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error!);
  });

/** A full disk shows only when the transaction ends. */
const endOf = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("The browser gave up."));
  });

async function openDatabase(): Promise<IDBDatabase> {
  const opening = indexedDB.open(DATABASE, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: "visit" });
  return answerOf(opening);
}

/** Runs one change, or one reading, with the database open for just as long. */
async function within<Value>(
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<Value>,
): Promise<Value> {
  const database = await openDatabase();
  try {
    const transaction = database.transaction(STORE, mode);
    const ended = endOf(transaction);
    const [answer] = await Promise.all([answerOf(ask(transaction.objectStore(STORE))), ended]);
    return answer;
  } finally {
    database.close();
  }
}

/** All of them, the newest first. */
export async function readCopies(): Promise<Copy[]> {
  const copies = await within("readonly", (store) => store.getAll() as IDBRequest<Copy[]>);
  return copies.sort((a, b) => b.at - a.at);
}

/** Takes the place of an earlier copy of the same visit. */
export const writeCopy = async (copy: Copy): Promise<void> => {
  await within("readwrite", (store) => store.put(copy));
};

export const removeCopy = async (visit: string): Promise<void> => {
  await within("readwrite", (store) => store.delete(visit));
};
