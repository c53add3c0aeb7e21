import { html, nothing, type TemplateResult } from "lit";
import { bagView } from "./bag/view";
import type { Book } from "./book/book";
import type { Desk } from "./controller";
import { courseView } from "./course/view";
import { fieldView } from "./field/view";
import { holeView } from "./hole/view";
import { notesView } from "./notes/view";
import { busyView, noticeView } from "./parts/blocks";
import { PLACES, placeAfter, type Place } from "./places";
import { shareView } from "./share/view";
import { setupView } from "./setup/view";
import { goTo } from "./state";

const VIEWS: Readonly<Record<Place, (desk: Desk, book: Book) => TemplateResult>> = {
  field: fieldView,
  notes: notesView,
  bag: bagView,
  hole: holeView,
  course: courseView,
  share: shareView,
  setup: setupView,
};

/** Tabs above, the place below. */
export const paneView = (desk: Desk): TemplateResult =>
  html`<div class="tabs" role="tablist" aria-label="Carrybook">
      ${PLACES.map(({ id, title }) => tab(desk, id, title))}
    </div>
    <div class="place" id="place" role="tabpanel" aria-labelledby="tab-${desk.state.place}">
      ${noticeView(desk)} ${busyView(desk)} ${placeView(desk)}
    </div>`;

function tab(desk: Desk, id: Place, title: string): TemplateResult {
  const chosen = desk.state.place === id;
  return html`<button
    id="tab-${id}"
    role="tab"
    aria-selected=${chosen}
    aria-controls="place"
    tabindex=${chosen ? 0 : -1}
    @click=${() => desk.change((state) => goTo(state, id))}
    @keydown=${(event: KeyboardEvent) => step(desk, id, event)}
  >
    ${title}
  </button>`;
}

/** Arrow keys go round the tabs, and focus goes with them. */
function step(desk: Desk, from: Place, event: KeyboardEvent): void {
  const next = placeAfter(from, event.key);
  if (!next) return;
  event.preventDefault();
  const root = (event.currentTarget as Element).getRootNode() as ShadowRoot;
  desk.change((state) => goTo(state, next));
  root.getElementById(`tab-${next}`)?.focus();
}

function placeView(desk: Desk): unknown {
  const { book, unread, place } = desk.state;
  if (unread !== null)
    return html`<div class="notice fault" role="alert">
      <p>${unread}</p>
      <button @click=${() => void desk.refresh()}>Read again</button>
    </div>`;
  if (!book) return html`<p class="quiet" role="status">Reading the workbook …</p>`;
  return html`${faultsView(book)} ${VIEWS[place](desk, book)}`;
}

/** Parts of the workbook that cannot be read, wherever one is: every answer may miss them. */
const faultsView = ({ faults }: Book): unknown =>
  faults.length === 0
    ? nothing
    : html`<div class="notice fault" role="alert">
        <div>${faults.map((fault) => html`<p>${fault}</p>`)}</div>
      </div>`;
