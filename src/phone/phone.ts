/** The page for the field and the tee: the pane over a workbook that this browser keeps. */
import type { OpenedFile } from "../pane/controller";
import { PortError } from "../workbook/port";
import type { LightBook } from "../workbook/light/lightBook";
import { type LightChange, LightPort } from "../workbook/light/lightPort";
import { questions } from "./ask";
import { keepAwake } from "./awake";
import { openFile, saveFile } from "./files";
import { haveToOneself } from "./oneTab";
import { rememberedIn, remembering } from "./remember";
import { BookStore } from "./store";
import { keepOffline } from "./update";
import { portOf } from "./waitingPort";

/** Comes while the workbook is read. */
const pane = import("../pane/mount");

const element = (id: string): HTMLElement => document.getElementById(id)!;

/** A line above the pane, with at most one button. */
function say(text: string, button?: { readonly label: string; readonly press: () => void }): void {
  const line = element("line");
  line.replaceChildren(text);
  if (button) {
    const pressed = document.createElement("button");
    pressed.textContent = button.label;
    pressed.addEventListener("click", button.press);
    line.append(" ", pressed);
  }
  line.hidden = text === "";
}

/** The starter workbook, as its file has it. */
async function starter(): Promise<LightBook> {
  const answer = await fetch("starter.json");
  if (!answer.ok) throw new Error("The starter workbook could not be loaded.");
  const { sheets, names } = (await answer.json()) as LightBook;
  // JSON writes null for what an array leaves out.
  const filled = (rows: LightBook["sheets"][number]["rows"]) =>
    rows.map((row) => (row ?? []).map((cell) => cell ?? ""));
  return { sheets: sheets.map((sheet) => ({ ...sheet, rows: filled(sheet.rows) })), names };
}

/** A full disk and other refusals of the database, in words. */
function inWords(reason: unknown): Error {
  const isFull = reason instanceof DOMException && reason.name === "QuotaExceededError";
  if (isFull)
    return new PortError(
      "failed",
      "This phone has no room left, so nothing was written. Free some space and try again; what you typed is still in its box.",
    );
  return reason instanceof Error ? reason : new Error(String(reason));
}

/** A file that another app shared with this page, once. */
async function sharedFile(): Promise<File | null> {
  if (!location.search.includes("shared")) return null;
  history.replaceState(null, "", location.pathname);
  const cache = await caches.open("carrybook-phone-shared");
  const address = new URL("shared", location.href).href;
  const answer = await cache.match(address);
  if (!answer) return null;
  await cache.delete(address);
  const name = decodeURIComponent(answer.headers.get("X-Name") ?? "shared.xlsx");
  return new File([await answer.blob()], name);
}

const idle = (work: () => void): void =>
  "requestIdleCallback" in window
    ? void requestIdleCallback(work, { timeout: 5000 })
    : void setTimeout(work, 500);

async function openBook(store: BookStore): Promise<LightPort> {
  let book = await store.find();
  if (!book) {
    book = await starter();
    await store.replace({ book, name: "carrybook.xlsx", file: null }, null);
  }
  const keeper = {
    keep: (change: LightChange) =>
      store.keep(change).catch((reason: unknown) => {
        throw inWords(reason);
      }),
    load: () => store.load(),
  };
  const port = new LightPort(book, keeper);
  port.onChange(() => {
    // Asked for once there is something to lose; a browser that asks the player then has a reason to show.
    void navigator.storage?.persist?.();
    idle(() => void store.tidy(port.book).catch(() => undefined));
  });
  return port;
}

async function start(): Promise<void> {
  const storing = BookStore.open();
  const memo = storing.then((store) => store.readMemo());
  const opening = storing.then(openBook);
  const open = async (file: File): Promise<OpenedFile> => {
    const port = await opening;
    const opened = await openFile(file, port, store, questions).catch((reason: unknown) => {
      throw inWords(reason);
    });
    say("");
    return opened;
  };
  const store = await storing;
  const write = remembering((state) => store.writeMemo(state));
  const { mountPane } = await pane;
  const mounted = mountPane(element("pane"), portOf(opening), {
    onPhone: true,
    saveFile: async () => {
      return saveFile(await opening, store);
    },
    openFile: open,
    remembered: rememberedIn(await memo),
    onState: (state) => {
      if (state.book) write(state);
      keepAwake(state.session !== null && state.place === "field");
    },
  });
  const port = await opening;
  Object.assign(window, { carrybook: { port } });
  lost = () => {
    mounted.close();
    store.close();
    say("Another tab has taken the workbook over.", {
      label: "Use it here",
      press: () => location.reload(),
    });
  };
  const shared = await sharedFile();
  if (shared)
    await open(shared).then(
      ({ said, undo }) =>
        say(said, { label: "Undo", press: () => void undo().then(() => say("")) }),
      (reason: unknown) => say(inWords(reason).message),
    );
}

let lost = (): void => say("Another tab has taken the workbook over.");

async function begin(): Promise<void> {
  await haveToOneself(
    (takeOver) =>
      say("Carrybook is open in another tab.", {
        label: "Use it here",
        press: () => {
          say("");
          takeOver();
        },
      }),
    () => lost(),
  );
  await start();
  document.body.dataset["ready"] = "";
}

begin().catch((reason: unknown) => {
  say(
    `Carrybook could not open the workbook: ${inWords(reason).message} Your data can still be saved: `,
  );
  const link = document.createElement("a");
  link.href = "rescue.html";
  link.textContent = "Save it";
  element("line").append(link);
});
addEventListener("load", () => {
  keepOffline((update) =>
    say("A new version of Carrybook is ready.", { label: "Update", press: update }),
  ).catch(() => say("This browser does not let Carrybook work without a connection."));
});
