/**
 * Cures: letters vanish from a formula while it is typed (`Throws[#All]` arrives as `Throws]`). Seen in
 * 0.25.1.
 *
 * To colour a formula the editor writes its whole text again, from the state at which the colouring
 * began; what was typed since is lost. Here such a colouring leaves the text as it is. The next one,
 * which what was typed has brought about already, colours it.
 */
import { IUniverInstanceService, UniverInstanceType, type DocumentDataModel } from "@univerjs/core";
import { ReplaceTextRunsCommand } from "@univerjs/docs-ui";
import type { Engine } from "../../workbook/embedded/engine";

interface Colouring {
  readonly unitId: string;
  readonly body: { readonly dataStream: string };
  /** Where the cursor is to go. */
  readonly textRanges?: readonly object[];
}

const END = /\r\n$/;

export function mendColouredFormulas({ injector, commands }: Engine): void {
  const units = injector.get(IUniverInstanceService);
  commands.beforeCommandExecuted(({ id, params }) => {
    if (id !== ReplaceTextRunsCommand.id) return;
    const colouring = params as Colouring;
    // A chosen function or cell is meant to change the text, and says where the cursor goes.
    if (colouring.textRanges) return;
    const { unitId, body } = colouring;
    const text = units.getUnit<DocumentDataModel>(unitId, UniverInstanceType.UNIVER_DOC)?.getBody();
    const now = text?.dataStream.replace(END, "");
    if (now === undefined || body.dataStream.replace(END, "") === now) return;
    Object.assign(colouring, { body: { dataStream: now, textRuns: text?.textRuns ?? [] } });
  });
}
