import { html, type TemplateResult } from "lit";
import type { Factors } from "../../core/learn/learnFactors";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { table } from "../parts/table";
import { plain, share } from "../words/figures";
import { useFactors } from "./actions";
import { factorsToUse, inUse, learntOf } from "./learnt";

/** What the rounds taught, and how sure it is. */
export function learntView(desk: Desk, book: Book): TemplateResult {
  const learnt = learntOf(book);
  return html`<section aria-label="Learnt">
    <h2>Learnt from your rounds</h2>
    ${
      book.rounds.length === 0
        ? html`<p class="quiet">
            Open a hole above and add where the throw finished. Your own slope and wind factors then
            stand here.
          </p>`
        : learnt.ok
          ? factorsView(desk, book, learnt.value)
          : html`<p>${learnt.why}</p>`
    }
  </section>`;
}

function factorsView(desk: Desk, book: Book, factors: Factors): TemplateResult {
  const { uphill, wind, course } = factors;
  const used = inUse(factors, book);
  return html`${table(
      "Learnt factors",
      [["Factor"], ["Mean", "number"], ["Plus or minus", "number"], ["Rows", "number"]],
      [
        ["Uphill factor", plain(uphill.mean, 2), plain(uphill.sd, 2), String(uphill.rows)],
        ["Headwind factor", plain(wind.mean, 2), plain(wind.sd, 2), String(wind.rows)],
        ["Course bias", share(course.mean), share(course.sd), String(course.rows)],
      ],
    )}
    <p class="quiet">
      Factors: 1 means the model is right for you. Course bias: how much farther you throw there
      than in the field; it is told, not used. Trust a figure when its plus or minus is small.
    </p>
    <button
      ?disabled=${used || desk.state.busy !== null}
      @click=${() => void useFactors(desk, factorsToUse(factors, book))}
    >
      ${used ? "In use" : "Use both factors in Settings"}
    </button>`;
}
