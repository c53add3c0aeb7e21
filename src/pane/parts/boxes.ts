import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { numberIn } from "../words/figures";

export interface Box {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly unit?: string;
  /** Whether a minus may be typed: phones' decimal keypads have none. */
  readonly signed?: boolean;
  readonly large?: boolean;
  readonly placeholder?: string;
  readonly onKey?: (event: KeyboardEvent) => void;
  readonly describedBy?: string;
}

/** A labelled box for a number; what cannot be read as one is said at once, under the box. */
export function numberBox(box: Box): TemplateResult {
  const unclear = numberIn(box.value).kind === "unclear";
  return html`<div class=${box.large ? "box large" : "box"}>
    <label for=${box.id}>${box.label}</label>
    <div class="inner">
      ${inputOf(box, unclear)}
      ${box.unit ? html`<span class="unit" aria-hidden="true">${box.unit}</span>` : nothing}
    </div>
    ${
      unclear
        ? html`<p class="problem" id="${box.id}-problem">Type a number, such as 12.5.</p>`
        : nothing
    }
  </div>`;
}

function inputOf(box: Box, unclear: boolean): TemplateResult {
  const describedBy = [unclear ? `${box.id}-problem` : "", box.describedBy ?? ""].join(" ").trim();
  return html`<input
    id=${box.id}
    type="text"
    inputmode=${box.signed ? "text" : "decimal"}
    enterkeyhint="done"
    autocomplete="off"
    placeholder=${box.placeholder ?? nothing}
    aria-label=${box.unit ? `${box.label}, ${box.unit}` : nothing}
    aria-invalid=${unclear ? "true" : nothing}
    aria-describedby=${describedBy || nothing}
    .value=${live(box.value)}
    @input=${(event: Event) => box.onInput((event.target as HTMLInputElement).value)}
    @keydown=${box.onKey ?? nothing}
  />`;
}

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

interface Picker {
  readonly id: string;
  readonly label: string;
  readonly options: readonly (readonly [value: string, word: string])[];
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Where what stands around says the name already, for eyes. */
  readonly labelHidden?: boolean;
}

/** One of many, by the browser's own list. */
export const picker = (picker: Picker): TemplateResult =>
  html`<div class="box">
    <label for=${picker.id} class=${picker.labelHidden ? "hidden" : ""}>${picker.label}</label>
    <select
      id=${picker.id}
      .value=${live(picker.value)}
      @change=${(event: Event) => picker.onChange((event.target as HTMLSelectElement).value)}
    >
      ${picker.options.map(
        ([value, word]) =>
          html`<option value=${value} ?selected=${value === picker.value}>${word}</option>`,
      )}
    </select>
  </div>`;

interface Segments<Value extends string> {
  readonly name: string;
  readonly legend: string;
  readonly options: readonly (readonly [value: Value, word: string])[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}

/** One of a few, all in sight: native radio buttons, so arrow keys work as everywhere. */
export const segments = <Value extends string>(choice: Segments<Value>): TemplateResult =>
  html`<fieldset>
    <legend>${choice.legend}</legend>
    <div class="segments">
      ${choice.options.map(
        ([value, word]) =>
          html`<label
            ><input
              type="radio"
              id="${choice.name}-${value}"
              name=${choice.name}
              value=${value}
              .checked=${live(value === choice.value)}
              @change=${() => choice.onChange(value)}
            /><span>${word}</span></label
          >`,
      )}
    </div>
  </fieldset>`;
