import { html, type TemplateResult } from "lit";
import type { Desk } from "../desk";

/** Leads from the pane to a cell of the workbook. */
export const showSheet = (desk: Desk, ref: string, words: string): TemplateResult =>
  html`<button
    class="plain"
    @click=${() =>
      void desk.work(desk.state.place, words, async (port) => {
        await port.show(ref);
        return { said: "" };
      })}
  >
    ${words}
  </button>`;
