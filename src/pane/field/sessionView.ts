import { html, nothing, type TemplateResult } from "lit";
import { knownToM } from "../../core/carry/needed";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { numberBox } from "../parts/box";
import { FIELD_CAUTION } from "../parts/cautions";
import { picker } from "../parts/picker";
import { count, day, distance, wind } from "../words/figures";
import { add, again, end, setSession, skip, takeBackLast } from "./actions";
import { dotPlot } from "./dotPlot";
import { loggedRows, OFFLINE_STEP, type LoggedRow } from "./entry";
import { onSessionKey, turn } from "./keys";
import { bagOf, progressOf, type Progress, type Session } from "./session";
import { leastKnownFirst, rowIn, stillNeeded } from "./worth";

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

function throwView(desk: Desk, book: Book, session: Session, disc: string): TemplateResult {
  const { distanceUnit } = book.settings;
  return html`<section aria-label="Throw">
    <div aria-live="polite">
      <p class="eyebrow">Throw</p>
      <p class="pick" id="next-disc">${disc}</p>
      <p>${knownSentence(book, session, disc)}</p>
    </div>
    ${numberBox({
      id: "carry",
      label: "Carry",
      unit: distanceUnit,
      value: session.carry,
      large: true,
      onInput: (carry) => setSession(desk, { carry }),
      onKey: (event) => onSessionKey(desk, event),
      describedBy: "field-keys",
    })}
    <div class="offline" role="group" aria-label="Sideways">
      <button aria-label="More to the left" @click=${() => turn(desk, -1)}>←</button>
      <p role="status">${offlineWords(session, book)}</p>
      <button aria-label="More to the right" @click=${() => turn(desk, 1)}>→</button>
    </div>
    <div class="row">
      <button class="main grow" @click=${() => void add(desk)}>Add</button>
      <button @click=${() => skip(desk)}>Not now</button>
    </div>
    <p class="quiet" id="field-keys">Enter adds. ← → sideways. A again, U undo, N not now.</p>
    <details>
      <summary>Another disc</summary>
      ${picker({
        id: "disc",
        label: "Throw this one next",
        value: disc,
        options: bagOf(book).map((name) => [name, name]),
        onChange: (chosen) => setSession(desk, { chosen }),
      })}
    </details>
  </section>`;
}

function knownSentence(book: Book, session: Session, disc: string): string {
  const row = rowIn(book, disc);
  if (!row) return "Never thrown yet.";
  const { distanceUnit } = book.settings;
  const known = `Known to ± ${distance(knownToM(row), distanceUnit)} from ${count(row.throws, "throw")}.`;
  const needed = stillNeeded(book, disc, session.marginM);
  const margin = distance(session.marginM, distanceUnit);
  if (needed === null) return known;
  return needed === 0
    ? `${known} That is within ± ${margin}.`
    : `${known} ${needed} more for ± ${margin}.`;
}

function offlineWords({ offline }: Session, { settings }: Book): string {
  const unit = settings.distanceUnit;
  if (offline === null) return "sideways not noted";
  if (offline === 0) return "straight";
  return `${Math.abs(offline * OFFLINE_STEP[unit])} ${unit} ${offline < 0 ? "left" : "right"}`;
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
    <details>
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
    </details>
  </section>`;
