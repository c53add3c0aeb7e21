import { html, type TemplateResult } from "lit";
import { knownToM } from "../../core/carry/needed";
import type { Book } from "../book/book";
import { rowIn } from "../book/rowIn";
import type { Desk } from "../desk";
import { numberBox } from "../parts/box";
import { picker } from "../parts/picker";
import { count, distance } from "../words/figures";
import { add, setSession, skip } from "./actions";
import { OFFLINE_STEP } from "./entry";
import { onSessionKey, turn } from "./keys";
import { bagOf, type Session } from "./session";
import { stillNeeded } from "./worth";

/** The disc to throw now, and the box for where it stopped. */
export function throwView(desk: Desk, book: Book, session: Session, disc: string): TemplateResult {
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
