/** Nothing that was typed is lost with the page: a question before leaving, and a copy for the next visit. */
import { sentenceOf } from "../../pane/attempt";
import type { EmbeddedWorkbook } from "../../workbook/embedded";
import type { Engine } from "../../workbook/embedded/engine";
import { whenEdited } from "../edits";
import { download, takeOver, workbookBytes } from "../files";
import type { Line } from "../line";
import { takingBack } from "../takingBack";
import type { Copy } from "./copies";
import { Keeper } from "./keeper";
import { Leaving } from "./leaving";
import { offerCopies, whenMade } from "./offer";

/** Answers whom to tell when the workbook is as a file has it. */
export function keepSafe(engine: Engine, port: EmbeddedWorkbook, line: Line): Leaving {
  const leaving = new Leaving();
  const keeper = new Keeper(
    () => workbookBytes(port, false),
    (reason) => line.tell("trouble", noCopy(reason)),
  );
  whenEdited(engine, () => {
    leaving.changed();
    keeper.changed();
  });
  const goOn = async (copy: Copy): Promise<void> => {
    try {
      const { leftOut } = await takeOver(port, copy.bytes);
      // What could not come along stays in its copy.
      if (leftOut === "") keeper.goOnAs(copy.visit);
      const undo = takingBack(engine);
      line.tell("done", `Going on from ${whenMade(copy)}.${leftOut}`, {
        label: "Undo",
        press: () =>
          void undo().then(
            () => line.clear("done"),
            (reason: unknown) => line.tell("done", sentenceOf(reason)),
          ),
      });
    } catch (reason) {
      line.tell("done", `The copy could not be opened. ${sentenceOf(reason)}`, {
        label: "Save it as a file",
        press: () => download("carrybook.xlsx", copy.bytes),
      });
    }
  };
  void offerCopies(line, (copy) => void goOn(copy));
  return leaving;
}

function noCopy(reason: unknown): string {
  const isFull = reason instanceof DOMException && reason.name === "QuotaExceededError";
  const why = isFull ? "its storage is full" : sentenceOf(reason).replace(/\.$/, "");
  return `This browser keeps no copy of the workbook: ${why}. Save it as a file under Share before you leave.`;
}
