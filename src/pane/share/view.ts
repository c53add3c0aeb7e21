import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { empty } from "../parts/empty";
import { copyCard, freeze, open, save } from "./actions";
import { partnerView } from "./partnerView";
import { textCard } from "./textCard";

/** For the phone, for a message, for a partner, as a file. */
export function shareView(desk: Desk, book: Book): TemplateResult {
  if (book.card.rows.length === 0)
    return html`${empty("Nothing to share yet", "Log a few smooth throws first.")}
    ${partnerView(desk, book)} ${fileView(desk)}`;
  return html`${pocketView(desk)} ${cardView(desk, book)} ${partnerView(desk, book)}
  ${fileView(desk)}`;
}

const pocketView = (desk: Desk): TemplateResult =>
  html`<section aria-label="For the phone">
    <h2>For the phone</h2>
    <p>
      A sheet that needs no add-in: type range, rise and wind, and it answers. It keeps the card as
      it is now.
    </p>
    <button class="main" ?disabled=${desk.state.busy !== null} @click=${() => void freeze(desk)}>
      Freeze the Pocket sheet
    </button>
  </section>`;

const cardView = (desk: Desk, book: Book): TemplateResult =>
  html`<section aria-label="As text">
    <h2>As text</h2>
    <label for="card-text" class="hidden">Card as text</label>
    <textarea
      id="card-text"
      class="fixed"
      readonly
      rows="8"
      .value=${live(textCard(book))}
    ></textarea>
    <button
      @click=${(event: Event) => {
        const root = (event.target as Element).getRootNode() as ShadowRoot;
        void copyCard(desk, root.getElementById("card-text") as HTMLTextAreaElement);
      }}
    >
      Copy the card
    </button>
  </section>`;

function fileView(desk: Desk): unknown {
  const { saveFile, openFile } = desk.options;
  if (!saveFile && !openFile) return nothing;
  return html`<section aria-label="As a file">
    <h2>As a file</h2>
    ${
      saveFile
        ? html`<button
              ?disabled=${desk.state.busy !== null}
              @click=${() => void save(desk, () => saveFile(false))}
            >
              Save .xlsx
            </button>
            <button
              ?disabled=${desk.state.busy !== null}
              @click=${() => void save(desk, () => saveFile(true))}
            >
              Save a plain copy
            </button>
            <p class="quiet">
              The plain copy has values in place of our formulas. Give it to a partner, and open it
              in LibreOffice.
            </p>`
        : nothing
    }
    ${
      openFile
        ? html`<label for="open-file">Go on with a file (.xlsx or .csv)</label>
            <input
              id="open-file"
              type="file"
              accept=".xlsx,.csv"
              @change=${(event: Event) => {
                const [file] = (event.target as HTMLInputElement).files ?? [];
                if (file) void open(desk, openFile, file);
              }}
            />`
        : nothing
    }
  </section>`;
}
