import { html, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";

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
