import { html, nothing, type SVGTemplateResult, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";

export interface Frame {
  readonly id: string;
  /** What the plot shows, for screen readers and as the name of its slider. */
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly drawing: SVGTemplateResult;
  /** The things on the plot that have figures, in order, each as a sentence. */
  readonly facts: readonly string[];
  /** Which of them is looked at. */
  readonly looked: number | null;
  readonly onLook: (at: number | null) => void;
  /** Which one is nearest to a point of the drawing. */
  readonly nearest: (x: number, y: number) => number;
  /** How to read the plot; stands where the figures come. */
  readonly hint: string;
  /** The same facts as a table. */
  readonly table: TemplateResult;
}

/**
 * A plot whose figures can be had by pointing, by keyboard (a slider steps through them) and as a
 * table. The slider is native, so screen readers speak each fact as its value.
 */
export function plotFrame(frame: Frame): TemplateResult {
  const { facts, looked, onLook } = frame;
  const at = looked === null ? null : Math.min(looked, facts.length - 1);
  const point = (event: PointerEvent): void => {
    const area = (event.currentTarget as Element).getBoundingClientRect();
    const grow = area.width > 0 ? frame.width / area.width : 1;
    onLook(frame.nearest((event.clientX - area.left) * grow, (event.clientY - area.top) * grow));
  };
  return html`<figure>
    <div
      class="plot"
      @pointermove=${point}
      @pointerdown=${point}
      @pointerleave=${() => onLook(null)}
    >
      <svg viewBox="0 0 ${frame.width} ${frame.height}" aria-hidden="true">${frame.drawing}</svg>
      ${
        facts.length === 0
          ? nothing
          : html`<input
              class="scrub"
              id=${frame.id}
              type="range"
              min="0"
              max=${facts.length - 1}
              step="1"
              aria-label=${frame.label}
              aria-valuetext=${facts[at ?? 0] ?? ""}
              .value=${live(String(at ?? 0))}
              @focus=${() => onLook(at ?? 0)}
              @blur=${() => onLook(null)}
              @input=${(event: Event) => onLook(Number((event.target as HTMLInputElement).value))}
            />`
      }
    </div>
    <figcaption class="readout">${at === null ? frame.hint : facts[at]}</figcaption>
    <details>
      <summary>As a table</summary>
      <div class="scroll" tabindex="0" role="region" aria-label="${frame.label}, as a table">
        ${frame.table}
      </div>
    </details>
  </figure>`;
}
