/** Set-up that heals: a few cells of the workbook are asked, and what shows #NAME? is repaired. */
import { emptyBlueprint } from "../../workbook/blueprint";
import type { Progress, WorkbookPort } from "../../workbook/port";
import { type Desk, sentenceOf } from "../controller";
import { count } from "../words/figures";

const WHY = "Cells showed #NAME?, as the spreadsheet met them without Carrybook.";

/**
 * Repairs formulas where the workbook needs it, and asks again.
 *
 * @returns What was wrong and what was done, in a sentence; "" where nothing was wrong.
 */
export async function healed(
  port: WorkbookPort,
  report?: Progress,
  stop?: AbortSignal,
): Promise<string> {
  const blueprint = emptyBlueprint();
  if (!(await port.health?.(blueprint))?.unanswered) return "";
  const repaired = await port.repairFormulas(report, stop);
  const after = await port.health!(blueprint);
  const done = `${WHY} Wrote ${count(repaired, "formula")} again.`;
  return after.unanswered && !stop?.aborted
    ? `${done} They still do: close this pane, open it again, and press Repair formulas in Set-up.`
    : done;
}

/** Looks at the workbook when the pane opens: keeps what is amiss for the view, and repairs. */
export async function heal(desk: Desk, port: WorkbookPort): Promise<void> {
  try {
    const health = await port.health?.(emptyBlueprint());
    if (!health) return;
    const { remarks } = health;
    desk.change((state) => ({ ...state, remarks }));
    if (health.unanswered)
      await desk.work(desk.state.place, "Repairing formulas", async (_, report, stop) => ({
        said: await healed(port, report, stop),
      }));
  } catch (error) {
    // The pane says by itself why a workbook cannot be read; this is for whoever looks into it.
    console.warn(sentenceOf(error));
  }
}
