import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { FIELD_CAUTION } from "../parts/cautions";
import { count, day, distance, wind } from "../words/figures";
import { again, end, takeBackLast } from "./actions";
import { dotPlot } from "./dotPlot";
import { loggedRows, type LoggedRow } from "./entry";
import { progressOf, type Progress, type Session } from "./session";
import { throwView } from "./throwView";
import { leastKnownFirst } from "./worth";

/** A session under way: what to throw, the last throw, the disc's carries, what comes then. */
export function sessionView(desk: Desk, book: Book, session: Session): TemplateResult {
  const progress = progressOf(session, book, leastKnownFirst(book));
  const logged = loggedRows(session, book);
  const { disc } = progress;
  return html`<div class="stack">
    ${headView(desk, book, session, progress)}
    ${disc === null ? nothing : throwView(desk, book, session, disc)}
    ${lastView(desk, book, logged.at(-1))} ${FIELD_CAUTION}
    ${
      disc === null
        ? nothing
        : html`<section aria-label="Carries">
            <h2>${disc} so far</h2>
            ${dotPlot(desk, book, disc, session.day)}
          </section>`
    }
    ${todayView(book, progress, logged)}
  </div>`;
}

function headView(
  desk: Desk,
  { settings }: Book,
  session: Session,
  { thrown, discs, round }: Progress,
): TemplateResult {
  const felt =
    session.headwindMps === 0 ? "" : `, headwind ${wind(session.headwindMps, settings.windUnit)}`;
  const rise =
    session.riseM === 0 ? "" : `, rise ${distance(session.riseM, settings.distanceUnit)}`;
  const again = round > 1 ? `, time ${round} through the bag` : "";
  return html`<div>
    <div class="split">
      <p><b>${thrown} of ${discs}</b>${again}</p>
      <button class="plain" @click=${() => end(desk)}>End session</button>
    </div>
    <progress max=${discs} value=${thrown} aria-label="Discs thrown"></progress>
    <p class="quiet">${day(session.day)}${felt}${rise}</p>
  </div>`;
}

const lastView = (desk: Desk, { settings }: Book, last: LoggedRow | undefined): unknown =>
  last
    ? html`<div class="split notice">
        <p role="status" id="last">
          <span class="quiet">Last</span> ${last.disc}, ${String(last.carry)}
          ${settings.distanceUnit}${last.off ? ", off" : ""}
        </p>
        <span>
          <button class="plain" ?disabled=${last.off} @click=${() => void again(desk)}>
            Again
          </button>
          <button class="plain" @click=${() => void takeBackLast(desk)}>Undo</button>
        </span>
      </div>`
    : nothing;

const todayView = (
  { settings }: Book,
  { after }: Progress,
  logged: readonly LoggedRow[],
): TemplateResult =>
  html`<section aria-label="This session">
    ${
      after.length === 0
        ? nothing
        : html`<p>
            <span class="quiet">Then</span>
            ${after.slice(0, 4).join(", ")}${after.length > 4 ? " …" : ""}
          </p>`
    }
    ${
      logged.length === 0
        ? nothing
        : html`<details>
            <summary>${count(logged.length, "throw")} of this day</summary>
            <ul class="lines">
              ${[...logged]
                .reverse()
                .map(
                  ({ disc, carry, off }) =>
                    html`<li>
                      <b>${disc}</b> ${String(carry)} ${settings.distanceUnit}${off ? ", off" : ""}
                    </li>`,
                )}
            </ul>
          </details>`
    }
  </section>`;
