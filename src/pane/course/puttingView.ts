/** Putting: made or missed by a tap, and what that teaches. */
import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { numberBox } from "../parts/boxes";
import { count } from "../words/figures";
import { addPutt, setCourse, usePutting } from "./actions";
import { puttingPlot } from "./plots";
import { puttingInUse } from "./putting";
import { puttingCurveOf, puttsByDistance } from "./told";

export function puttingView(desk: Desk, book: Book): TemplateResult {
  const { distanceUnit } = book.settings;
  const busy = desk.state.busy !== null;
  return html`<section aria-label="Putting">
    <h2>Putting</h2>
    ${numberBox({
      id: "putt-distance",
      label: "Distance",
      unit: distanceUnit,
      value: desk.state.course.putt,
      onInput: (putt) => setCourse(desk, { putt }),
    })}
    <div class="row">
      <button class="grow" ?disabled=${busy} @click=${() => void addPutt(desk, true)}>Made</button>
      <button class="grow" ?disabled=${busy} @click=${() => void addPutt(desk, false)}>
        Missed
      </button>
    </div>
    ${curveView(desk, book, busy)}
  </section>`;
}

function curveView(desk: Desk, book: Book, busy: boolean): TemplateResult {
  const curve = puttingCurveOf(book);
  if (!curve.ok)
    return html`<p class="quiet">
      Type how far the putt is, then press what happened. How often you make it from each distance
      then stands here.
    </p>`;
  const putts = puttsByDistance(book);
  const tried = putts.reduce((sum, at) => sum + at.tried, 0);
  const used = puttingInUse(book);
  return html`<p class="quiet">Learnt from ${count(tried, "putt")}.</p>
    ${puttingPlot(desk, curve.value, putts, book.settings)}
    ${
      used === null
        ? nothing
        : html`<button ?disabled=${used || busy} @click=${() => void usePutting(desk)}>
            ${used ? "In use" : "Use this putting table"}
          </button>`
    }`;
}
