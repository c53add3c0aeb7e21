import { html, nothing, type TemplateResult } from "lit";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePerPair } from "../book/oncePer";
import type { Desk } from "../desk";
import { PICK_CAUTION } from "../parts/cautions";
import { empty } from "../parts/empty";
import { length } from "../words/figures";
import { answerHole, type HoleAnswer } from "./answer";
import { flightPlot } from "./flightPlot";
import type { HoleForm } from "./form";
import { formView } from "./formView";
import { rankedView } from "./rankedView";
import {
  aimSentence,
  doubtSentence,
  driftSentence,
  oddWindSentence,
  pickOf,
  pickSentence,
  unfitSentence,
  whySentence,
} from "./sentences";
import { isBlankForm, taskOf } from "./task";

/** Worked out once for the same boxes over the same workbook, however often the pane is drawn. */
const answersOf = oncePerPair((book: Book, form: HoleForm) =>
  attempt(() => answerHole(taskOf(form, book.settings), book.card, book.settings)),
);

/** What does this throw play like, and which disc gets there? */
export function holeView(desk: Desk, book: Book): TemplateResult {
  const { hole } = desk.state;
  const answer: Answer<HoleAnswer> | null = isBlankForm(hole) ? null : answersOf(book, hole);
  return html`<div class="side stack">
    ${formView(desk, book)}
    <section aria-label="Answer" aria-live="polite">${answerView(answer, book)}</section>
    ${answer?.ok ? detailView(desk, book, answer.value) : nothing}
  </div>`;
}

function answerView(answer: Answer<HoleAnswer> | null, book: Book): unknown {
  if (!answer) return empty("How far is it?", "Type the distance to the target.");
  if (!answer.ok) return html`<p>${answer.why}</p>`;
  if (isPutt(answer.value, book))
    return html`<p class="pick" id="pick">Putt</p>
      <p>The target is inside the circle.</p>`;
  return html`${pickView(answer.value, book)} ${playsView(answer.value, book)} ${PICK_CAUTION}`;
}

const isPutt = ({ task }: HoleAnswer, { settings }: Book): boolean =>
  task.distanceM <= settings.circleM;

function pickView({ options }: HoleAnswer, book: Book): unknown {
  if (book.card.rows.length === 0)
    return empty("No throws yet", "Log a few smooth throws in Field, and the disc stands here.");
  if (!options.ok) return html`<p>${options.why}</p>`;
  const [best] = options.value;
  if (!best) return html`<p>No disc in the bag gets there.</p>`;
  return html`<div>
    <p class="eyebrow">Throw</p>
    <p class="pick" id="pick">${pickOf(best)}</p>
    <p>
      ${pickSentence(options.value, book.settings)}
      ${unfitSentence(best, book.settings) === "" ? aimSentence(best, book.settings) : nothing}
    </p>
  </div>`;
}

function playsView({ task, plays, drift }: HoleAnswer, { settings }: Book): unknown {
  if (!plays.ok) return html`<p>${plays.why}</p>`;
  const { parts, band } = plays.value;
  const { distanceUnit } = settings;
  return html`<div>
    <p class="eyebrow">Plays like</p>
    <p class="great" id="plays-like">
      ${length(parts.totalM, distanceUnit)}<small> ${distanceUnit}</small>
    </p>
    <p>
      Between ${length(band.lowM, distanceUnit)} and ${length(band.highM, distanceUnit)}
      ${distanceUnit}. ${doubtSentence(band, settings)} ${whySentence(parts, settings)}
      ${oddWindSentence(parts, task.headwindMps)}
      ${drift.ok ? driftSentence(drift.value, settings) : nothing}
    </p>
  </div>`;
}

function detailView(desk: Desk, book: Book, answer: HoleAnswer): unknown {
  const { options, path, task } = answer;
  const [best] = options.ok ? options.value : [];
  if (isPutt(answer, book) || !options.ok || !best) return nothing;
  // A flight that no disc of the bag can make would promise too much.
  const getsThere = unfitSentence(best, book.settings) === "";
  return html`${rankedView(options.value, book.settings)}
  ${path.ok && getsThere ? flightPlot(desk, book, task, path.value) : nothing}`;
}
