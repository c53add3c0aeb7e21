import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import type { Merge } from "../../workbook/merge";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { picker } from "../parts/picker";
import { textBox } from "../parts/textBox";
import { count } from "../words/figures";
import { addPartner, chooseTable, setShare } from "./actions";
import { mergingOf } from "./merging";

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
