import { PortError } from "../port";
import { sentences } from "../sentences";
import { asPortError } from "./faults";
import { inExcel } from "./session";

/**
 * Excel stops a request at the first call that fails and keeps what came before. So a change that
 * fails is taken back with `restore`, in a run of its own; where that fails too, the sentence says
 * that the workbook may be half changed.
 */
export async function wholeOrNone<Result>(
  change: () => Promise<Result>,
  restore: (context: Excel.RequestContext) => void | Promise<void>,
): Promise<Result> {
  try {
    return await change();
  } catch (error) {
    try {
      await inExcel("Taking back", async (context) => {
        await restore(context);
        await context.sync();
      });
    } catch {
      // A protected sheet refuses the first call of both: then nothing was written at all.
      const fault = asPortError("", error);
      if (fault.fault === "protected" || fault.fault === "busy") throw error;
      throw new PortError("failed", sentences.halfDone);
    }
    throw error;
  }
}
