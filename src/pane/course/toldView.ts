/** Did it come true: chances against what happened, and where the throws finished. */
import { html, nothing } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { picker } from "../parts/boxes";
import { setCourse } from "./actions";
import { finishPlot, reliabilityPlot } from "./plots";
import { calibrationOf, discsWithFinishes, scatterOf } from "./told";

/** What was told and what happened, in a sentence and, from ten throws on, as a picture. */
export function cameTrueView(desk: Desk, book: Book): unknown {
  if (book.rounds.length === 0) return nothing;
  const told = calibrationOf(book);
  return html`<section aria-label="Did it come true">
    <h2>Did it come true?</h2>
    <p>${told.ok ? told.value.sentence : told.why}</p>
    ${told.ok && told.value.verdict !== "too few" ? reliabilityPlot(desk, told.value) : nothing}
  </section>`;
}

/** The finishes that rounds hold, of all discs or of one. */
export function finishesView(desk: Desk, book: Book): unknown {
  const discs = discsWithFinishes(book);
  if (discs.length === 0) return nothing;
  const { shown } = desk.state.course;
  const scatter = scatterOf(book, shown);
  return html`<section aria-label="Finishes">
    <h2>Where they finished</h2>
    ${picker({
      id: "finishes-disc",
      label: "Disc",
      value: shown,
      options: [["", "all discs"], ...discs.map((disc) => [disc, disc] as const)],
      onChange: (disc) => setCourse(desk, { shown: disc }),
    })}
    ${scatter.ok ? finishPlot(desk, scatter.value, book.settings) : html`<p>${scatter.why}</p>`}
  </section>`;
}
