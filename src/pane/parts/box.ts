import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { numberIn } from "../words/numberIn";

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
