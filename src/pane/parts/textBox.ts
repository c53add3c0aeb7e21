import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";

interface TextBox {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly type?: "text" | "date";
  readonly placeholder?: string;
}

/** A labelled box for a line of text, or for a day. */
export const textBox = (box: TextBox): TemplateResult =>
  html`<div class="box">
    <label for=${box.id}>${box.label}</label>
    <div class="inner">
      <input
        id=${box.id}
        type=${box.type ?? "text"}
        autocomplete="off"
        placeholder=${box.placeholder ?? nothing}
        .value=${live(box.value)}
        @input=${(event: Event) => box.onInput((event.target as HTMLInputElement).value)}
      />
    </div>
  </div>`;
