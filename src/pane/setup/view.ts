import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { ownBagView, strangersView } from "../ownBag/view";
import { count } from "../words/figures";
import { build, fillWithStarter, recalculate, repair } from "./actions";
import { type Part, partsOf } from "./model";

/** The sheets, and what keeps them working. */
export function setupView(desk: Desk, book: Book): TemplateResult {
  const parts = partsOf(book);
  const missing = parts.filter(({ there }) => !there).length;
  const idle = desk.state.busy === null;
  return html`${ownBagView(desk, book)} ${strangersView(desk, book)}
    <section aria-label="Sheets">
      <h2>${missing === 0 ? "Ready" : `${missing} of ${parts.length} missing`}</h2>
      <ul class="lines">
        ${parts.map(partView)}
      </ul>
      ${
        missing === 0
          ? nothing
          : html`<button class="main" ?disabled=${!idle} @click=${() => void build(desk)}>
              Make what is missing
            </button>`
      }
      <p class="quiet">What is there is never touched.</p>
    </section>
    <section aria-label="Starter data">
      <h2>Try it with invented data</h2>
      <p>Fills the tables that are still empty. Every row is invented.</p>
      <button ?disabled=${!idle} @click=${() => void fillWithStarter(desk)}>
        Fill empty tables
      </button>
    </section>
    ${desk.options.onPhone ? nothing : formulasView(desk)} ${leftOutView(book)}`;
}

const formulasView = (desk: Desk): TemplateResult => {
  const idle = desk.state.busy === null;
  return html`<section aria-label="Formulas">
    <h2>If a cell shows #NAME? or an old figure</h2>
    <div class="row">
      <button class="grow" ?disabled=${!idle} @click=${() => void repair(desk)}>
        Repair formulas
      </button>
      <button class="grow" ?disabled=${!idle} @click=${() => void recalculate(desk)}>
        Recalculate
      </button>
    </div>
    <p class="quiet">
      Repair writes each Carrybook formula again, as it stands. Neither changes what you typed.
    </p>
  </section>`;
};

const partView = ({ name, what, there }: Part): TemplateResult =>
  html`<li class="split">
    <span><b>${name}</b> <span class="quiet">${what}</span></span>
    <span
      >${there ? "✓" : html`<b>missing</b>`}${there ? html`<span class="hidden">there</span>` : nothing}</span
    >
  </li>`;

/** More than this nobody reads. */
const MOST_SHOWN = 200;

/** The player's own rows of the log that do not count, and why. */
function leftOutView({ card }: Book): unknown {
  const leftOut = card.leftOut.filter(({ otherPlayer }) => otherPlayer === undefined);
  return leftOut.length === 0
    ? nothing
    : html`<section aria-label="Left out">
        <details>
          <summary>
            ${count(leftOut.length, "row")} of the log ${leftOut.length === 1 ? "does" : "do"} not
            count
          </summary>
          <ul class="lines scroll" tabindex="0" role="region" aria-label="Rows that do not count">
            ${leftOut
              .slice(0, MOST_SHOWN)
              .map(({ disc, reason }) => html`<li><b>${disc}</b> ${reason}</li>`)}
            ${
              leftOut.length > MOST_SHOWN
                ? html`<li>and ${count(leftOut.length - MOST_SHOWN, "more", "more")}</li>`
                : nothing
            }
          </ul>
        </details>
      </section>`;
}
