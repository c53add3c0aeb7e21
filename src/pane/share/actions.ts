import { addRows, cellsOf } from "../book/book";
import { DATA_TABLES } from "../../workbook/blueprint/dataTables";
import type { Desk, Done, OpenedFile } from "../controller";
import { withNotice } from "../state";
import { todayOf } from "../today";
import { count } from "../words/figures";
import type { Merge } from "../../workbook/merge";
import { pocketSteps } from "../../workbook/pocket/pocketSheet";
import { EMPTY_SHARE, type ShareForm } from "../forms";

export const setShare = (desk: Desk, part: Partial<ShareForm>): void =>
  desk.change((state) => ({ ...state, share: { ...state.share, ...part } }));

const say = (desk: Desk, tone: "done" | "fault", text: string): void =>
  desk.change((state) => withNotice(state, "share", { tone, text, canUndo: false }));

/** Where the host keeps the clipboard to itself, the text is selected for the player to copy. */
export async function copyCard(desk: Desk, box: HTMLTextAreaElement): Promise<void> {
  try {
    await navigator.clipboard.writeText(box.value);
    say(desk, "done", "The card is on the clipboard.");
  } catch {
    box.focus();
    box.select();
    say(desk, "fault", "The clipboard is not open to Carrybook. The text is selected: copy it.");
  }
}

/** The throws of a partner that lie in another table of this workbook. */
export async function chooseTable(desk: Desk, table: string): Promise<void> {
  if (table === "") return setShare(desk, { table, cells: [] });
  await desk.work("share", "Reading the table", async (port): Promise<Done> => {
    setShare(desk, { table, cells: cellsOf(await port.readTable(table)) });
    return { said: "" };
  });
}

export async function addPartner(desk: Desk, merge: Merge): Promise<void> {
  const { partner } = desk.state.share;
  const done = await desk.work("share", "Adding the throws", async (port) => {
    const what = `${count(merge.add.length, "throw")} of ${partner.trim()}`;
    const changes = [await addRows(port, DATA_TABLES.throws, merge.add)];
    return { said: `Added ${what}.`, step: { place: "share", what, changes } };
  });
  if (done) desk.change((state) => ({ ...state, share: EMPTY_SHARE }));
}

/** How long the flights may keep the pane from answering, ms. */
const PATIENCE_MS = 40;

/** Freezes the Pocket sheet, with pauses in which the pane answers and may be stopped. */
export const freeze = (desk: Desk): Promise<boolean> =>
  desk.work("share", "Making the Pocket sheet", async (port, report, stop): Promise<Done> => {
    const { book } = desk.state;
    if (!book) return { said: "" };
    const frozen = { who: book.settings.player ?? "", day: todayOf(desk.options) };
    const steps = pocketSteps(book.card, book.settings, frozen);
    let since = performance.now();
    for (;;) {
      const step = steps.next();
      if (step.done) {
        await port.replaceSheet(step.value);
        await port.show(`${step.value.name}!A1`);
        const undo = port.undoable
          ? "The spreadsheet's own Undo brings the old one back."
          : "The sheet it replaced cannot be brought back.";
        return { said: `The sheet Pocket is ready for a phone. ${undo}` };
      }
      if (performance.now() - since < PATIENCE_MS) continue;
      report(Math.round(step.value * 100), 100);
      await new Promise((resolve) => setTimeout(resolve));
      if (stop.aborted) return { said: "Stopped. The sheet Pocket is as it was." };
      since = performance.now();
    }
  });

export const save = (desk: Desk, saveFile: () => Promise<string>): Promise<boolean> =>
  desk.work("share", "Saving", async () => ({ said: await saveFile() }));

export function open(
  desk: Desk,
  openFile: (file: File) => Promise<OpenedFile>,
  file: File,
): Promise<boolean> {
  say(desk, "done", `Opening ${file.name} …`);
  return desk.work("share", "Opening", async (): Promise<Done> => {
    const { said, undo } = await openFile(file);
    const changes = [{ kind: "replaced", bringBack: undo }] as const;
    return { said, step: { place: "share", what: `opening ${file.name}`, changes } };
  });
}
