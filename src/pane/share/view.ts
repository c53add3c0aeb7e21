import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import type { Merge } from "../../workbook/merge";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { empty } from "../parts/blocks";
import { picker, textBox } from "../parts/boxes";
import { count } from "../words/figures";
import { addPartner, chooseTable, copyCard, freeze, open, save, setShare } from "./actions";
import { mergingOf, textCard } from "./model";

/** A partner's throws come in under their name, none of them twice. */
export function partnerView(desk: Desk, book: Book): TemplateResult {
  const { share: form } = desk.state;
  const merging = mergingOf(form, book);
  return html`<section aria-label="A partner's throws">
    <h2>A partner's throws</h2>
    ${textBox({
      id: "partner",
      label: "Their name",
      value: form.partner,
      onInput: (partner) => setShare(desk, { partner }),
    })}
    ${sourceView(desk, book)}
    <div class="two">
      ${picker({
        id: "partner-distances",
        label: "Their distances",
        value: form.distanceUnit ?? book.settings.distanceUnit,
        options: [
          ["ft", "feet"],
          ["m", "metres"],
        ],
        onChange: (unit) => setShare(desk, { distanceUnit: unit as "ft" | "m" }),
      })}
      ${picker({
        id: "partner-winds",
        label: "Their winds",
        value: form.windUnit ?? book.settings.windUnit,
        options: [
          ["mph", "mph"],
          ["km/h", "km/h"],
          ["m/s", "m/s"],
        ],
        onChange: (unit) => setShare(desk, { windUnit: unit as "mph" | "km/h" | "m/s" }),
      })}
    </div>
    <div role="status">
      ${
        merging === null
          ? nothing
          : merging.ok
            ? mergeView(desk, merging.value)
            : html`<p>${merging.why}</p>`
      }
    </div>
  </section>`;
}

function sourceView(desk: Desk, { raw }: Book): TemplateResult {
  const { share: form } = desk.state;
  return html`${
    raw.otherTables.length === 0
      ? nothing
      : picker({
          id: "partner-table",
          label: "Their throws are in",
          value: form.table,
          options: [
            ["", "the box below"],
            ...raw.otherTables.map((name) => [name, `table ${name}`] as const),
          ],
          onChange: (table) => void chooseTable(desk, table),
        })
  }
  ${
    form.table !== ""
      ? nothing
      : html`<label for="partner-text">Paste their throws, with the header row</label>
          <textarea
            id="partner-text"
            spellcheck="false"
            .value=${live(form.text)}
            @input=${(event: Event) =>
              setShare(desk, { text: (event.target as HTMLTextAreaElement).value })}
          ></textarea>`
  }`;
}

const mergeView = (desk: Desk, merge: Merge): TemplateResult =>
  html`<p>
      ${count(merge.add.length, "throw")} to add, ${merge.already} already there,
      ${merge.leftOut.length} left out.
    </p>
    ${
      merge.leftOut.length === 0
        ? nothing
        : html`<details>
            <summary>What is left out, and why</summary>
            <ul class="lines scroll" tabindex="0" role="region" aria-label="Left out">
              ${merge.leftOut.slice(0, 200).map(({ reason }) => html`<li>${reason}</li>`)}
            </ul>
          </details>`
    }
    <button
      class="main"
      ?disabled=${merge.add.length === 0 || desk.state.busy !== null}
      @click=${() => void addPartner(desk, merge)}
    >
      Add ${count(merge.add.length, "throw")}
    </button>`;

/** For the phone, for a message, for a partner, as a file. */
export function shareView(desk: Desk, book: Book): TemplateResult {
  if (book.card.rows.length === 0)
    return html`${empty("Nothing to share yet", "Log a few smooth throws first.")}
    ${partnerView(desk, book)} ${fileView(desk)}`;
  return html`${desk.options.onPhone ? nothing : pocketView(desk)} ${cardView(desk, book)}
  ${partnerView(desk, book)} ${fileView(desk)}`;
}

const pocketView = (desk: Desk): TemplateResult =>
  html`<section aria-label="For the phone">
    <h2>For the phone</h2>
    <p>
      A sheet that needs no add-in: type range, rise and wind, and it answers. It keeps the card as
      it is now.
    </p>
    <button class="main" ?disabled=${desk.state.busy !== null} @click=${() => void freeze(desk)}>
      Make the Pocket sheet
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

const plainCopyView = (
  desk: Desk,
  saveFile: NonNullable<Desk["options"]["saveFile"]>,
): TemplateResult =>
  html`<button
      ?disabled=${desk.state.busy !== null}
      @click=${() => void save(desk, () => saveFile(true))}
    >
      Save a plain copy
    </button>
    <p class="quiet">
      The plain copy has values in place of our formulas. Give it to a partner, and open it in
      LibreOffice.
    </p>`;

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
            ${desk.options.onPhone ? nothing : plainCopyView(desk, saveFile)}`
        : nothing
    }
    ${
      openFile
        ? html`<label for="open-file">Open a file (.xlsx or .csv)</label>
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
