import { html, nothing, type TemplateResult } from "lit";
import { discKey } from "../../core/log/names";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { empty } from "../parts/empty";
import { list } from "../words/figures";
import { coverView } from "./coverView";
import { driftView } from "./driftView";
import { ladderPlot } from "./ladderPlot";
import { twinsView, worthView } from "./spareView";

/** The bag as a whole: how far each disc goes, where it leaves holes, and what each is worth. */
export function bagView(desk: Desk, book: Book): TemplateResult {
  if (book.card.rows.every(({ inBag }) => !inBag))
    return empty("No throws yet", "Log a few smooth throws in Field, and your bag stands here.");
  return html`<section aria-label="Carry">
      <h2>Smooth carry, ${book.settings.distanceUnit}</h2>
      ${ladderPlot(desk, book)} ${neverThrown(book)}
    </section>
    ${
      desk.state.settled
        ? html`${coverView(desk, book)} ${twinsView(book)} ${driftView(book)} ${worthView(book)}`
        : html`<p class="quiet" role="status">Working out what the bag covers …</p>`
    }`;
}

function neverThrown({ bag, card }: Book): unknown {
  const known = new Set(card.rows.map(({ disc }) => discKey(disc)));
  const unknown = bag.filter(({ disc, inBag }) => inBag && !known.has(discKey(disc)));
  if (unknown.length === 0) return nothing;
  return html`<p class="quiet">Never thrown: ${list(unknown.map(({ disc }) => disc))}.</p>`;
}
