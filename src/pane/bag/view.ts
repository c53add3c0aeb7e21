import { html, nothing, type TemplateResult } from "lit";
import { discKey } from "../../core/log/names";
import type { DistanceUnit } from "../../core/units";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { strangersView } from "../ownBag/view";
import { empty, shareBar } from "../parts/blocks";
import { count, distance, length, list, plain, share, strokes } from "../words/figures";
import {
  AT_ONCE,
  barShare,
  coveredOf,
  type Drift,
  driftsOf,
  isMissed,
  isThin,
  twinsOf,
  worthOf,
} from "./model";
import { coveragePlot, ladderPlot } from "./plots";

/** Coverage and gaps. */
export function coverView(desk: Desk, book: Book): TemplateResult {
  const covered = coveredOf(book);
  if (!covered.ok) return html`<section aria-label="Coverage"><p>${covered.why}</p></section>`;
  const { gaps } = covered.value;
  const unit = book.settings.distanceUnit;
  return html`<section aria-label="Coverage">
    <h2>Chance in the circle, by distance</h2>
    ${coveragePlot(desk, book, covered.value)}
    ${
      isThin(book)
        ? html`<p class="quiet">Gaps and twins show once most of your discs have three throws.</p>`
        : nothing
    }
    ${fewLines(
      gaps.map(
        ({ fromM, toM, worstM, loss }) =>
          html`<li>
            <b>Gap, ${length(fromM, unit)} to ${distance(toM, unit)}:</b> up to ${share(loss)} less
            than a disc made for it, most at ${distance(worstM, unit)}.
          </li>`,
      ),
      "gap",
    )}
  </section>`;
}

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

/** The first few lines; the others when asked for. */
const fewLines = (lines: readonly TemplateResult[], one: string): TemplateResult =>
  html`<ul class="lines">
      ${lines.slice(0, AT_ONCE)}
    </ul>
    ${
      lines.length <= AT_ONCE
        ? nothing
        : html`<details>
            <summary>Show ${count(lines.length - AT_ONCE, `more ${one}`)}</summary>
            <ul class="lines">
              ${lines.slice(AT_ONCE)}
            </ul>
          </details>`
    }`;

/** Discs that do the same work. */
export function twinsView(book: Book): unknown {
  const twins = twinsOf(book);
  if (!twins.ok || twins.value.length === 0) return nothing;
  return html`<section aria-label="Twins">
    <h2>Twins</h2>
    ${fewLines(
      twins.value.map(
        ({ a, b, costA, costB, overlap }) =>
          html`<li>
            <b>${a}</b> and <b>${b}</b> share ${share(overlap)} of their carries. Without the first
            a round costs ${strokes(costA)} strokes more, without the second ${strokes(costB)}.
          </li>`,
      ),
      "pair",
    )}
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

/** The bag as a whole: how far each disc goes, where it leaves holes, and what each is worth. */
export function bagView(desk: Desk, book: Book): TemplateResult {
  if (book.card.rows.every(({ inBag }) => !inBag))
    return empty("No throws yet", "Log a few smooth throws in Field, and your bag stands here.");
  return html`<section aria-label="Carry">
      <h2>Smooth carry, ${book.settings.distanceUnit}</h2>
      ${ladderPlot(desk, book)} ${neverThrown(book)}
    </section>
    ${strangersView(desk, book)}
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
