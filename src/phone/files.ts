/** Opening the player's file and giving it back. What reads and writes files is loaded when it is first needed. */
import type { OpenedFile } from "../pane/controller";
import { count } from "../pane/words/figures";
import type { LightPort } from "../workbook/light/lightPort";
import { download } from "./download";
import type { MergedBook, SettingInDoubt } from "./mergeBooks";
import type { BookStore } from "./store";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** What only the player can decide. */
export interface Questions {
  /** Whether the phone's changes go into a file that does not have them; null to leave all as it is. */
  merge(name: string): Promise<"merge" | "open" | null>;
  /** Which of two values a setting has from now on; null to leave all as it is. */
  setting(doubt: SettingInDoubt): Promise<"phone" | "file" | null>;
}

/** The file that the workbook in use came from. */
export async function originalFile(store: BookStore): Promise<Uint8Array> {
  const { file } = await store.origin();
  if (file) return file;
  const answer = await fetch("starter.xlsx");
  if (!answer.ok) throw new Error("The starter file could not be loaded.");
  return new Uint8Array(await answer.arrayBuffer());
}

/** Opens a file; where the phone has changes that it lacks, they can be merged into it. */
export async function openFile(
  file: File,
  port: LightPort,
  store: BookStore,
  questions: Questions,
): Promise<OpenedFile> {
  const [{ readLightFile }, { isChanged, mergeBooks, settle }] = await Promise.all([
    import("../workbook/light/lightFile"),
    import("./mergeBooks"),
  ]);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const desk = readLightFile(bytes);
  const ancestor = readLightFile(await originalFile(store));
  let opened = { book: desk, said: `Opened ${file.name}.` };
  if (isChanged(ancestor, port.book)) {
    const answer = await questions.merge(file.name);
    if (answer === null) throw new Error("Nothing was opened.");
    if (answer === "merge") {
      const merged = mergeBooks(ancestor, port.book, desk);
      for (const doubt of merged.inDoubt) {
        const choice = await questions.setting(doubt);
        if (choice === null) throw new Error("Nothing was opened.");
        if (choice === "phone") settle(merged.book, doubt);
      }
      opened = { book: merged.book, said: mergedSentence(file.name, merged) };
    }
  }
  await store.replace({ book: opened.book, name: file.name, file: bytes }, port.book);
  port.replaceBook(opened.book);
  return {
    said: opened.said,
    undo: async () => port.replaceBook(await store.bringBack()),
  };
}

function mergedSentence(name: string, { added, changed, removed, filesKept }: MergedBook): string {
  const parts = [
    ...(added > 0 ? [`${count(added, "row")} added`] : []),
    ...(changed > 0 ? [`${changed} changed`] : []),
    ...(removed > 0 ? [`${removed} removed`] : []),
  ];
  const did = parts.length === 0 ? "it had all of this phone's rows already" : parts.join(", ");
  const kept =
    filesKept === 0 ? "" : ` ${count(filesKept, "row")} changed in both: the file's stayed.`;
  return `Opened ${name}; ${did}.${kept} Save it to give it back.`;
}

/** Hands the file over: through the system's share sheet where there is one, else as a download. */
export async function saveFile(port: LightPort, store: BookStore): Promise<string> {
  const { writeLightFile } = await import("../workbook/light/lightFile");
  const bytes = writeLightFile(await originalFile(store), port.book);
  const { name } = await store.origin();
  const file = new File([Uint8Array.from(bytes)], name, { type: TYPE });
  const again = "Excel works its figures out again when you press Recalculate there.";
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return `Gave ${name} to the app you chose. ${again}`;
    } catch (reason) {
      if (reason instanceof DOMException && reason.name === "AbortError")
        return "Not shared. Everything is still on this phone.";
      // The browser forgot the tap while the file was written: a download needs none.
    }
  }
  download(file);
  return `Saved ${name} in Downloads. ${again}`;
}
