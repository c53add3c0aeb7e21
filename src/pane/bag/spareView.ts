import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import { shareBar } from "../parts/bar";
import { list, share, strokes } from "../words/figures";
import { barShare, isMissed, twinsOf, worthOf } from "./spare";

/** Discs that do the same work. */
export function twinsView(book: Book): unknown {
  const twins = twinsOf(book);
  if (!twins.ok || twins.value.length === 0) return nothing;
  return html`<section aria-label="Twins">
    <h2>Twins</h2>
    <ul class="lines">
      ${twins.value.map(
        ({ a, b, costA, costB, overlap }) =>
          html`<li>
            <b>${a}</b> and <b>${b}</b> share ${share(overlap)} of their carries. Without the first
            a round costs ${strokes(costA)} strokes more, without the second ${strokes(costB)}.
          </li>`,
      )}
    </ul>
  </section>`;
}

/** What each disc is worth on the course of the workbook. */
export function worthView(book: Book): TemplateResult {
  const worths = worthOf(book);
  const missed = worths.ok ? worths.value.filter(isMissed) : [];
  const spare = worths.ok ? worths.value.filter((worth) => !isMissed(worth)) : [];
  return html`<section aria-label="Worth">
    <h2>Worth on your course</h2>
    ${
      book.holes.length === 0
        ? html`<p class="quiet">Write the holes on the sheet Holes first.</p>`
        : worths.ok
          ? html`<p class="quiet">Strokes a round lost if the disc stays at home.</p>
              <ol class="ranked">
                ${missed.map(
                  (worth) =>
                    html`<li>
                      <span class="name">${worth.disc}</span>
                      <span class="chance">${strokes(worth.strokes)}</span>
                      ${shareBar(barShare(worth, missed))}
                    </li>`,
                )}
              </ol>
              ${
                spare.length === 0
                  ? nothing
                  : html`<p class="quiet">
                      Not missed there: ${list(spare.map(({ disc }) => disc))}.
                    </p>`
              }`
          : html`<p>${worths.why}</p>`
    }
  </section>`;
}
