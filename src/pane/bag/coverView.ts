import { html, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { distance, length, share } from "../words/figures";
import { coveredOf } from "./cover";
import { coveragePlot } from "./coveragePlot";

/** Coverage and gaps. */
export function coverView(desk: Desk, book: Book): TemplateResult {
  const covered = coveredOf(book);
  if (!covered.ok) return html`<section aria-label="Coverage"><p>${covered.why}</p></section>`;
  const { gaps } = covered.value;
  const unit = book.settings.distanceUnit;
  return html`<section aria-label="Coverage">
    <h2>Chance in the circle, by distance</h2>
    ${coveragePlot(desk, book, covered.value)}
    <ul class="lines">
      ${gaps.map(
        ({ fromM, toM, worstM, loss }) =>
          html`<li>
            <b>Gap, ${length(fromM, unit)} to ${distance(toM, unit)}:</b> up to ${share(loss)} less
            than a disc made for it, most at ${distance(worstM, unit)}.
          </li>`,
      )}
    </ul>
  </section>`;
}
