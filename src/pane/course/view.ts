import { html, nothing, type TemplateResult } from "lit";
import type { Option, Settings } from "../../core/types";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { pickOf, unfitSentence } from "../hole/model";
import { empty, PICK_CAUTION, showSheet } from "../parts/blocks";
import { count, distance, length, share, strokes } from "../words/figures";
import { lookAt, toggle } from "./actions";
import { learntView } from "./learntView";
import { type Planned, planOf, totalsOf } from "./model";
import { puttingView } from "./puttingView";
import { resultView } from "./resultView";
import { cameTrueView, finishesView } from "./toldView";

/** A hole of the plan laid open: the reasons, and a place for what happened. */
export function openHoleView(
  desk: Desk,
  book: Book,
  entry: Planned,
  next: Planned | null,
): TemplateResult {
  return html`<div class="open stack tight">
    ${reasonsView(book, entry)}
    <button class="plain" @click=${() => lookAt(desk, entry)}>Look at it in Hole</button>
    ${resultView(desk, book, entry, next)}
  </div>`;
}

function reasonsView(
  { settings: { distanceUnit } }: Book,
  { hole, plan }: Planned,
): TemplateResult {
  const { option, second, why, lowM, highM } = plan;
  return html`<p>
    ${
      option
        ? `Leaves ${distance(option.leavesM, distanceUnit)}, ${strokes(option.strokes)} strokes in all. `
        : (why ?? "")
    }
    ${second ? `Second: ${pickOf(second)}. ` : ""}
    ${
      lowM !== null && highM !== null
        ? `Plays between ${length(lowM, distanceUnit)} and ${distance(highM, distanceUnit)}. `
        : ""
    }
    ${hole.note === "" ? nothing : html`<span class="quiet">${hole.note}</span>`}
  </p>`;
}

/** The disc for each hole; results go in hole by hole. */
export function courseView(desk: Desk, book: Book): TemplateResult {
  if (book.holes.length === 0)
    return empty(
      "No holes yet",
      "Write them on the sheet Holes: distance, rise and wind are enough.",
      showSheet(desk, "Holes!A6", "Go to Holes"),
    );
  const plan = planOf(book);
  return html`${plan.ok ? planView(desk, book, plan.value) : html`<p>${plan.why}</p>`}
  ${learntView(desk, book)} ${cameTrueView(desk, book)} ${finishesView(desk, book)}
  ${puttingView(desk, book)}`;
}

function planView(desk: Desk, book: Book, planned: readonly Planned[]): TemplateResult {
  const totals = totalsOf(planned);
  return html`<section aria-label="Plan">
    <div>
      <p class="eyebrow">Expected for ${count(totals.answered, "hole")}</p>
      <p class="great">
        ${strokes(totals.strokes)}<small>
          strokes${totals.par === null ? "" : `, par ${totals.par}`}</small
        >
      </p>
    </div>
    ${PICK_CAUTION}
    <ol class="holes">
      ${planned.map((entry, at) => holeView(desk, book, entry, planned[at + 1] ?? null))}
    </ol>
  </section>`;
}

function holeView(desk: Desk, book: Book, entry: Planned, next: Planned | null): TemplateResult {
  const { hole, plan } = entry;
  const open = desk.state.course.open === hole.row;
  return html`<li>
    <button
      class="hole"
      id="hole-${hole.row}"
      aria-expanded=${open}
      @click=${() => toggle(desk, hole.row)}
    >
      <span class="which">${hole.hole}</span>
      <span class="what">
        <b>${plan.option ? pickOf(plan.option) : "No disc gets there"}</b>
        <span class="quiet">${lengthWords(entry, book.settings)}</span>
      </span>
      <span class="chance">${plan.option ? share(plan.option.chance) : nothing}</span>
    </button>
    ${open ? openHoleView(desk, book, entry, next) : nothing}
  </li>`;
}

function lengthWords({ hole, plan }: Planned, settings: Settings): string {
  const { distanceUnit } = settings;
  const plays =
    plan.playsLikeM === null ? "" : `, plays like ${length(plan.playsLikeM, distanceUnit)}`;
  return `${distance(hole.distanceM, distanceUnit)}${plays}${endWords(plan.option, settings)}`;
}

function endWords(option: Option | null, settings: Settings): string {
  if (!option) return "";
  const unfit = unfitSentence(option, settings);
  return unfit === "" ? `, leaves ${length(option.leavesM, settings.distanceUnit)}` : `; ${unfit}`;
}
