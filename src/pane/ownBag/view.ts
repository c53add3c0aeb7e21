import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { discKey } from "../../core/log/names";
import { type BagList, type ListedDisc, readBagList } from "../../core/notes/readBagList";
import type { DiscType } from "../../core/types";
import { type Book, oncePerPair } from "../book/book";
import type { Desk } from "../controller";
import type { OwnBagForm } from "../forms";
import { showSheet, table } from "../parts/blocks";
import { picker } from "../parts/boxes";
import type { Place } from "../places";
import { goTo } from "../state";
import { count, length, list } from "../words/figures";
import {
  addOwnBag,
  addStrangers,
  emptyInvented,
  lookAround,
  openOwnBag,
  setOwnBag,
} from "./actions";
import { inventedIn, isInvented, strangersIn, typeOf } from "./model";

/** While all figures are invented, every place says so and leads to the player's own bag. */
export function inventedView(desk: Desk, book: Book): unknown {
  const { place, ownBag } = desk.state;
  if (place === "setup" || ownBag.lookingAround || !isInvented(book)) return nothing;
  return html`<section class="offer" aria-label="Invented data">
    <p>These discs and throws are invented.</p>
    <div class="row">
      <button class="main" @click=${() => openOwnBag(desk)}>Start with my own bag</button>
      <button @click=${() => lookAround(desk)}>Look around</button>
    </div>
  </section>`;
}

const listOf = oncePerPair((form: OwnBagForm, { settings }: Book) =>
  readBagList(form.text, settings),
);

/** The box for a list, what was understood of it, and after that the card. */
export function ownBagView(desk: Desk, book: Book): TemplateResult {
  const form = desk.state.ownBag;
  const understood = listOf(form, book);
  return html`${form.added && form.text === "" ? startedView(desk, book) : nothing}
    <section aria-label="My own bag">
      <h2>${form.added ? "Add more discs" : "Start with my own bag"}</h2>
      <label for="own-bag">One disc a line. Type and carries are welcome, not needed.</label>
      <textarea
        id="own-bag"
        spellcheck="false"
        placeholder=${"Copper mid 271 268\nSteel, fairway driver, 310\nSlate putter"}
        .value=${live(form.text)}
        @input=${(event: Event) =>
          setOwnBag(desk, { text: (event.target as HTMLTextAreaElement).value })}
      ></textarea>
      ${form.text.trim() === "" ? emptyView(desk, book) : understoodView(desk, book, understood)}
    </section>`;
}

function emptyView(desk: Desk, book: Book): TemplateResult {
  return html`<p class="quiet">
      Notes or rows from a sheet both work, with or without a header. You see what was understood
      before anything changes.
    </p>
    ${
      inventedIn(book.raw).length === 0
        ? nothing
        : html`<button
            ?disabled=${desk.state.busy !== null}
            @click=${() => void emptyInvented(desk)}
          >
            Remove the invented data
          </button>`
    }`;
}

function understoodView(desk: Desk, book: Book, { discs, unread }: BagList): TemplateResult {
  const carries = discs.reduce((sum, { carriesM }) => sum + carriesM.length, 0);
  const what = `${count(discs.length, "disc")} and ${count(carries, "carry", "carries")}`;
  const replaces = inventedIn(book.raw).length > 0;
  return html`<h3 role="status">Understood: ${what}</h3>
    ${
      unread.length === 0
        ? nothing
        : html`<ul class="lines" aria-label="Not understood">
            ${unread.map(
              ({ fromLine, text, reason }) =>
                html`<li><b>Line ${fromLine}</b> “${text}” ${reason}</li>`,
            )}
          </ul>`
    }
    ${
      discs.length === 0
        ? nothing
        : html`<ul class="lines">
              ${discs.map((listed, at) => listedView(desk, book, listed, at))}
            </ul>
            <button
              class="main"
              ?disabled=${desk.state.busy !== null}
              @click=${() => void addOwnBag(desk)}
            >
              ${replaces ? `Replace the invented data with ${what}` : `Add ${what}`}
            </button>`
    }`;
}

const TYPES: readonly (readonly [DiscType | "", string])[] = [
  ["", "type not known"],
  ["putter", "putter"],
  ["midrange", "midrange"],
  ["fairway", "fairway"],
  ["distance", "distance"],
];

function listedView(
  desk: Desk,
  { settings: { distanceUnit } }: Book,
  listed: ListedDisc,
  at: number,
): TemplateResult {
  const { disc, carriesM, guessedFrom } = listed;
  const { types } = desk.state.ownBag;
  const carries = carriesM.map((carryM) => length(carryM, distanceUnit)).join(", ");
  const isGuess = guessedFrom !== null && types[discKey(disc)] === undefined;
  return html`<li class="listed">
    <span
      ><b>${disc}</b>
      <span class="quiet"
        >${carries === "" ? "no carry yet" : `${carries} ${distanceUnit}`}${
          isGuess ? `; type guessed from “${guessedFrom}”` : ""
        }</span
      ></span
    >
    ${picker({
      id: `own-type-${at}`,
      label: `Type of ${disc}`,
      labelHidden: true,
      options: TYPES,
      value: typeOf(listed, types),
      onChange: (type) =>
        setOwnBag(desk, { types: { ...types, [discKey(disc)]: type as DiscType | "" } }),
    })}
  </li>`;
}

/** Longest first, and what to do next. */
function startedView(desk: Desk, book: Book): TemplateResult {
  const { rows } = book.card;
  const { distanceUnit } = book.settings;
  const known = new Set(rows.map(({ disc }) => discKey(disc)));
  const waiting = book.bag.filter(({ disc }) => !known.has(discKey(disc)));
  const go = (place: Place) => () => desk.change((state) => goTo(state, place));
  return html`<section aria-label="Your card">
    <h2>Your card</h2>
    ${
      rows.length === 0
        ? html`<p>
            Your discs are in the bag. Throw each a few times, and their carries stand here.
          </p>`
        : html`${table(
            "Your card",
            [["Disc"], [`Carry, ${distanceUnit}`, "number"], ["Throws", "number"]],
            rows.map((row) => [
              row.disc,
              length(Math.exp(row.mu), distanceUnit),
              String(row.throws),
            ]),
          )}
          ${showSheet(desk, "Card!A5", "Open the sheet Card")}`
    }
    ${
      waiting.length === 0
        ? nothing
        : html`<p>Without a carry so far: ${list(waiting.map(({ disc }) => disc))}.</p>`
    }
    <h3>What to do next</h3>
    <div class="row">
      <button class="grow" @click=${go("field")}>Throw in Field</button>
      <button class="grow" @click=${go("notes")}>Paste old notes</button>
      <button class="grow" ?disabled=${rows.length === 0} @click=${go("hole")}>Pick a disc</button>
    </div>
  </section>`;
}

/** Discs of the log that the bag lacks. */
export function strangersView(desk: Desk, book: Book): unknown {
  const strangers = strangersIn(book);
  const { place, busy } = desk.state;
  if (strangers.length === 0 || !book.raw.bag) return nothing;
  return html`<section aria-label="Not in your bag">
    <h2>Thrown, but not in your bag</h2>
    <p>${list(strangers)}</p>
    <button ?disabled=${busy !== null} @click=${() => void addStrangers(desk, place)}>
      Add to my bag
    </button>
  </section>`;
}
