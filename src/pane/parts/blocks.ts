import { html, nothing, svg, type TemplateResult } from "lit";
import type { Desk } from "../controller";
import { withNotice } from "../state";
import { share } from "../words/figures";

/** A share from 0 to 1 as a thin bar; the figure stands beside it in words. */
export const shareBar = (part: number): TemplateResult =>
  html`<svg viewBox="0 0 100 6" height="6" preserveAspectRatio="none" aria-hidden="true">
    ${svg`<rect class="bar back" width="100" height="6" rx="1"></rect>
      <rect class="bar" width=${Math.max(0, Math.min(100, part * 100)).toFixed(1)} height="6" rx="1"></rect>`}
  </svg>`;

/** Where one throws. */
export const FIELD_CAUTION = html`<p class="caution">
  Throw only on a clear field, with nobody within range.
</p>`;

/** Where one picks. */
export const PICK_CAUTION = html`<p class="caution">
  Throw only when the way is clear. Slope and wind figures are estimates: trust your eyes. The
  course's and the event's rules and officials decide.
</p>`;

/** What an empty place says: what is missing, and what to do first. */
export const empty = (title: string, first: string, action: unknown = ""): TemplateResult =>
  html`<div class="empty"><strong>${title}</strong>${first} ${action}</div>`;

/** What happened last in this place. The region stays, so that screen readers hear what enters it. */
export function noticeView(desk: Desk): TemplateResult {
  const { place, notices } = desk.state;
  const notice = notices[place];
  return html`<div role="status" class=${notice ? "notices" : "hidden"}>
    ${
      notice
        ? html`<div class="notice ${notice.tone}">
            <p>${notice.text}</p>
            ${notice.details === undefined ? nothing : copyDetails(notice.details)}
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

const copyDetails = (details: string): TemplateResult =>
  html`<button class="plain" @click=${() => void navigator.clipboard.writeText(details)}>
    Copy details
  </button>`;

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

/** A column's words, and whether it holds figures. */
export type Head = readonly [title: string, figures?: "number"];

/** A plain table; the first cell of a row is its header. */
export const table = (
  caption: string,
  heads: readonly Head[],
  rows: readonly (readonly unknown[])[],
): TemplateResult =>
  html`<table>
    <caption class="hidden">
      ${caption}
    </caption>
    <thead>
      <tr>
        ${heads.map(([title, figures]) => html`<th scope="col" class=${figures ?? ""}>${title}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) =>
          html`<tr>
            ${row.map((cell, at) =>
              at === 0
                ? html`<th scope="row">${cell}</th>`
                : html`<td class=${heads[at]?.[1] ?? ""}>${cell}</td>`,
            )}
          </tr>`,
      )}
    </tbody>
  </table>`;

export const READING = html`<p class="quiet" role="status">Reading the workbook …</p>`;
