import { html, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";

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
              name=${choice.name}
              value=${value}
              .checked=${live(value === choice.value)}
              @change=${() => choice.onChange(value)}
            /><span>${word}</span></label
          >`,
      )}
    </div>
  </fieldset>`;
