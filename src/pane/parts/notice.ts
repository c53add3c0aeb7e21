import { html, nothing, type TemplateResult } from "lit";
import type { Desk } from "../desk";
import { share } from "../words/figures";
import { withNotice } from "../state";

/** What happened last in this place. The region stays, so that screen readers hear what enters it. */
export function noticeView(desk: Desk): TemplateResult {
  const { place, notices } = desk.state;
  const notice = notices[place];
  return html`<div role="status" class=${notice ? "notices" : "hidden"}>
    ${
      notice
        ? html`<div class="notice ${notice.tone}">
            <p>${notice.text}</p>
            ${
              notice.canUndo
                ? html`<button class="plain" @click=${() => void desk.undo(place)}>Undo</button>`
                : html`<button
                    class="plain"
                    @click=${() => desk.change((state) => withNotice(state, place, null))}
                  >
                    Close
                  </button>`
            }
          </div>`
        : nothing
    }
  </div>`;
}

/** Long work: how far it is, and the way to stop it. */
export function busyView({ state: { busy } }: Desk): unknown {
  if (!busy || busy.total === 0) return nothing;
  return html`<div class="notice">
    <label
      >${busy.doing}, ${share(busy.done / busy.total)}
      <progress max=${busy.total} value=${busy.done}></progress>
    </label>
    <button @click=${busy.stop}>Stop</button>
  </div>`;
}
