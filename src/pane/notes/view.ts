import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { discKey, isOff } from "../../core/log/names";
import type { Settings } from "../../core/types";
import type { Book } from "../book/book";
import type { NewThrow } from "../book/newThrows";
import type { Desk } from "../controller";
import { picker, textBox } from "../parts/boxes";
import { todayOf } from "../today";
import { without } from "../state";
import { count, day, distance, power } from "../words/figures";
import { addNotes, setNotes } from "./actions";
import { type StrangeName, understand, type Understood, type UnderstoodRow } from "./model";

/** Phone notes in, rows of the log out; nothing goes in before it is confirmed. */
export function notesView(desk: Desk, book: Book): TemplateResult {
  const { notes: form } = desk.state;
  const today = todayOf(desk.options);
  const understood = understand(form, book, today);
  return html`<section aria-label="Your notes">
      <label for="notes-text">Paste your notes, or rows from another sheet</label>
      <textarea
        id="notes-text"
        spellcheck="false"
        placeholder=${"mint fairway 318, 305, 270 x\ncopper mid 271 10 left"}
        .value=${live(form.text)}
        @input=${(event: Event) =>
          setNotes(desk, { text: (event.target as HTMLTextAreaElement).value, ticked: {} })}
      ></textarea>
      ${textBox({
        id: "notes-day",
        label: "Day, where the notes give none",
        type: "date",
        value: form.day ?? day(today),
        onInput: (text) => setNotes(desk, { day: text }),
      })}
    </section>
    ${form.text.trim() === "" ? hint : resultView(desk, book, understood)}`;
}

const hint = html`<p class="quiet">
  A disc and its carries, as you type them. An x marks off the carry after it, as in “x 270”; before
  a comma or at the end of a line it marks the one before it, as in “270 x”. “10 left” is sideways.
  A date stands on a line of its own or before the disc. You see what was understood before anything
  is added.
</p>`;

function resultView(desk: Desk, book: Book, understood: Understood): TemplateResult {
  const { rows, unread, strange } = understood;
  const taken = rows.filter((row) => row.taken).length;
  return html`${
      unread.length === 0
        ? nothing
        : html`<section aria-label="Not understood">
            <h2>Not understood</h2>
            <ul class="lines">
              ${unread.map(
                ({ fromLine, text, reason }) =>
                  html`<li><b>Line ${fromLine}</b> “${text}” ${reason}</li>`,
              )}
            </ul>
          </section>`
    }
    ${strange.length === 0 ? nothing : strangeView(desk, book, strange)}
    <section aria-label="Understood">
      <h2 role="status">Understood: ${count(rows.length, "throw")}</h2>
      ${rowsView(desk, book, rows)}
      <button class="main" ?disabled=${taken === 0} @click=${() => void addNotes(desk, rows)}>
        Add ${count(taken, "throw")}
      </button>
    </section>`;
}

const strangeView = (desk: Desk, { bag }: Book, strange: readonly StrangeName[]): TemplateResult =>
  html`<section aria-label="Names">
    <h2>Not in your bag</h2>
    ${strange.map(({ written, suggestion }, at) =>
      picker({
        id: `name-${at}`,
        label: suggestion ? `${written}: is it ${suggestion}?` : written,
        value: desk.state.notes.renamed[written] ?? "",
        options: [
          ["", "keep as written"],
          ...(suggestion ? [[suggestion, suggestion] as const] : []),
          ...bag.filter(({ disc }) => disc !== suggestion).map(({ disc }) => [disc, disc] as const),
        ],
        onChange: (disc) => rename(desk, written, disc),
      }),
    )}
  </section>`;

function rename(desk: Desk, written: string, disc: string): void {
  const others = without(desk.state.notes.renamed, written);
  setNotes(desk, { renamed: disc === "" ? others : { ...others, [written]: disc } });
}

/** Under each line of the notes what came of it. */
function rowsView(desk: Desk, { settings }: Book, rows: readonly UnderstoodRow[]): TemplateResult {
  const lines = desk.state.notes.text.split(/\r\n?|\n/);
  return html`<ul class="understood">
    ${rows.map(
      (row, at) =>
        html`${
            row.fromLine === rows[at - 1]?.fromLine
              ? nothing
              : html`<li class="quiet">${lines[row.fromLine - 1]}</li>`
          }
          <li>
            <label class="tick"
              ><input
                type="checkbox"
                .checked=${live(row.taken)}
                @change=${() => tick(desk, row)}
              /><span
                ><b>${row.thrown.disc}</b> ${rowWords(row.thrown, settings)}${hintsOf(row).map(
                  (hint) => html`<br /><span class="quiet">${hint}</span>`,
                )}</span
              ></label
            >
          </li>`,
    )}
  </ul>`;
}

const tick = (desk: Desk, { at, taken }: UnderstoodRow): void =>
  setNotes(desk, { ticked: { ...desk.state.notes.ticked, [at]: !taken } });

/** What stands behind a row in small print. */
const hintsOf = ({ double, readAs, doubts }: UnderstoodRow): string[] =>
  [double ? "in the log already" : "", readAs, doubts].filter((hint) => hint !== "");

function rowWords(thrown: NewThrow, { distanceUnit }: Settings): string {
  const { carryM, offlineM, power: part, line, note } = thrown;
  const side =
    offlineM === null
      ? ""
      : offlineM === 0
        ? "straight"
        : `${distance(Math.abs(offlineM), distanceUnit)} ${offlineM < 0 ? "left" : "right"}`;
  const words = [
    distance(carryM, distanceUnit),
    side,
    part === 1 ? "" : power(part),
    isOff(discKey(line)) ? "off, does not count" : line,
    day(thrown.day) || "no date",
    note,
  ];
  return words.filter((word) => word !== "").join(", ");
}
