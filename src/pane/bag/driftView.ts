import { html, type TemplateResult } from "lit";
import type { DistanceUnit } from "../../core/units";
import type { Book } from "../book/book";
import { distance, list, plain } from "../words/figures";
import { driftsOf, type Drift } from "./drift";

export function driftView(book: Book): TemplateResult {
  const drifts = driftsOf(book);
  const changing = drifts.filter(({ trend }) => trend.verdict === "changing");
  const steady = drifts.filter(({ trend }) => trend.verdict !== "changing");
  const unit = book.settings.distanceUnit;
  return html`<section aria-label="Drift">
    <h2>${changing.length === 0 ? "No disc is changing" : "Changing"}</h2>
    <ul class="lines">
      ${changing.map((drift) => html`<li><b>${drift.disc}</b> ${driftWords(drift, unit)}</li>`)}
    </ul>
    <p class="quiet">
      ${
        steady.length === 0
          ? "A disc shows here after five throws over thirty days."
          : `Steady: ${list(steady.map(({ disc }) => disc))}.`
      }
    </p>
  </section>`;
}

function driftWords({ trend: { changePerMonthM, p, throws } }: Drift, unit: DistanceUnit): string {
  if (changePerMonthM === null) return "";
  const way = changePerMonthM < 0 ? "loses" : "gains";
  const chance = p === null ? "" : `, p ${p < 0.001 ? "below 0.001" : plain(p, 3)}`;
  return `${way} ${distance(Math.abs(changePerMonthM), unit)} a month, from ${throws} throws${chance}.`;
}
