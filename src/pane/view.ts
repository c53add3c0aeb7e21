import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "./book/book";
import type { Desk } from "./controller";
import { holeView } from "./hole/view";
import { busyView, noticeView, READING } from "./parts/blocks";
import { PLACES, placeAfter, type Place } from "./places";
import { goTo } from "./state";

type View = (desk: Desk, book: Book) => unknown;

/** Where the data is invented, what leads to one's own. */
const INVENTED = "invented";
type Part = Exclude<Place, "hole"> | typeof INVENTED;

/** Hole is there from the start; the others come when they are asked for. */
const LATER: Readonly<Record<Part, () => Promise<View>>> = {
  [INVENTED]: async () => (await import(/* webpackMode: "eager" */ "./ownBag/view")).inventedView,
  field: async () => (await import(/* webpackMode: "eager" */ "./field/view")).fieldView,
  notes: async () => (await import(/* webpackMode: "eager" */ "./notes/view")).notesView,
  bag: async () => (await import(/* webpackMode: "eager" */ "./bag/view")).bagView,
  course: async () => (await import(/* webpackMode: "eager" */ "./course/view")).courseView,
  share: async () => (await import(/* webpackMode: "eager" */ "./share/view")).shareView,
  setup: async () => (await import(/* webpackMode: "eager" */ "./setup/view")).setupView,
};

const views = new Map<Part, View>();

const couldNotOpen =
  (part: Part): View =>
  (desk) =>
    html`<div class="notice fault" role="alert">
      <p>This place could not be loaded.</p>
      <button
        @click=${() => {
          views.delete(part);
          desk.change((state) => ({ ...state }));
        }}
      >
        Try again
      </button>
    </div>`;

/** The view of a part; null while it is on its way, after which the pane is drawn again. */
function viewOf(part: Part, drawAgain: () => void): View | null {
  const view = views.get(part);
  if (view) return view;
  void LATER[part]()
    .catch(() => couldNotOpen(part))
    .then((loaded) => {
      views.set(part, loaded);
      drawAgain();
    });
  return null;
}

/** Tabs above, the place below. */
export const paneView = (desk: Desk): TemplateResult =>
  html`<div class="tabs" role="tablist" aria-label="Carrybook">
      ${PLACES.map(({ id, title }) => tab(desk, id, title))}
    </div>
    <div class="place" id="place" role="tabpanel" aria-labelledby="tab-${desk.state.place}">
      ${waitingView(desk)} ${noticeView(desk)} ${busyView(desk)} ${remarksView(desk)}
      ${placeView(desk)}
    </div>`;

/** The region stays, so that screen readers hear what enters it. */
const waitingView = ({ state: { waiting } }: Desk): TemplateResult =>
  html`<div role="status" class=${waiting ? "notices" : "hidden"}>
    ${
      waiting
        ? html`<div class="notice">
            <p>
              Excel waits: press Enter in the cell being edited. What you typed here is kept, and
              written after.
            </p>
          </div>`
        : nothing
    }
  </div>`;

/** What the player should know of this workbook, until it is put away. */
const remarksView = (desk: Desk): unknown =>
  desk.state.remarks.length === 0
    ? nothing
    : html`<div class="notice" role="note">
        <div>${desk.state.remarks.map((remark) => html`<p>${remark}</p>`)}</div>
        <button class="plain" @click=${() => desk.change((state) => ({ ...state, remarks: [] }))}>
          Close
        </button>
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
  const { book, unread, place, settled } = desk.state;
  if (unread !== null)
    return html`<div class="notice fault" role="alert">
      <p>${unread}</p>
      <button @click=${() => void desk.refresh()}>Read again</button>
    </div>`;
  const drawAgain = (): void => desk.change((state) => ({ ...state }));
  // The first answer does not wait for it.
  const invented = book && settled ? viewOf(INVENTED, drawAgain) : views.get(INVENTED);
  const view = place === "hole" ? null : viewOf(place, drawAgain);
  return html`${book ? html`${faultsView(book)} ${invented?.(desk, book)}` : nothing}
  ${
    place === "hole"
      ? holeView(desk, book)
      : !book
        ? READING
        : view
          ? view(desk, book)
          : html`<p class="quiet" role="status">Opening …</p>`
  }`;
}

/** Parts of the workbook that cannot be read, wherever one is: every answer may miss them. */
const faultsView = ({ faults }: Book): unknown =>
  faults.length === 0
    ? nothing
    : html`<div class="notice fault" role="alert">
        <div>${faults.map((fault) => html`<p>${fault}</p>`)}</div>
      </div>`;
