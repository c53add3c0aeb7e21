/** Nothing that was typed is lost with the page: a question before leaving, and a copy for the next visit. */
import { sentenceOf } from "../../pane/controller";
import type { EmbeddedWorkbook } from "../../workbook/embedded";
import type { Engine } from "../../workbook/embedded/engine";
import { whenEdited } from "../files";
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
    () => port.plans(),
    (reason) => line.tell("trouble", noCopy(reason)),
  );
  whenEdited(engine, () => {
    leaving.changed();
    keeper.changed();
  });
  const goOn = async (copy: Copy): Promise<void> => {
    try {
      await port.replaceSheets(copy.sheets);
      keeper.goOnAs(copy.visit);
      const undo = takingBack(engine);
      line.tell("done", `Going on from ${whenMade(copy)}.`, {
        label: "Undo",
        press: () =>
          void undo().then(
            () => line.clear("done"),
            (reason: unknown) => line.tell("done", sentenceOf(reason)),
          ),
      });
    } catch (reason) {
      line.tell("done", `The copy could not be opened. ${sentenceOf(reason)}`);
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
