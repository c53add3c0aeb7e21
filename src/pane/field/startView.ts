import { html, nothing, type TemplateResult } from "lit";
import { dayFromIso } from "../../core/log/cell";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { numberBox } from "../parts/box";
import { FIELD_CAUTION } from "../parts/cautions";
import { empty } from "../parts/empty";
import { showSheet } from "../parts/showSheet";
import { segments } from "../parts/segments";
import { textBox } from "../parts/textBox";
import { goTo } from "../state";
import { todayOf } from "../today";
import { count, day } from "../words/figures";
import { start } from "./actions";
import { bagOf } from "./session";
import { usualMargin, type StartForm } from "./start";

export function startView(desk: Desk, book: Book): TemplateResult {
  if (!book.raw.throws)
    return empty(
      "No throw log yet",
      "Make the sheets first.",
      html`<button class="plain" @click=${() => desk.change((state) => goTo(state, "setup"))}>
        Go to Set-up
      </button>`,
    );
  if (bagOf(book).length === 0)
    return empty(
      "No discs yet",
      "Write your discs on the sheet Discs, one a row.",
      showSheet(desk, "Discs!A6", "Go to Discs"),
    );
  return formView(desk, book);
}

function formView(desk: Desk, book: Book): TemplateResult {
  const form = desk.state.startForm;
  const set = (part: Partial<StartForm>): void =>
    desk.change((state) => ({ ...state, startForm: { ...state.startForm, ...part } }));
  const { distanceUnit, windUnit } = book.settings;
  const today = todayOf(desk.options);
  const chosen = dayFromIso(form.day) ?? today;
  const already = book.log.throws.filter((thrown) => thrown.day === chosen).length;
  return html`<section aria-label="Start a session">
    <h2>Throw the whole bag, smoothly</h2>
    <p>
      Each disc comes up in turn. Type where it stopped and press Enter: the throw is in the log.
    </p>
    <div class="two">
      ${textBox({
        id: "day",
        label: "Day",
        type: "date",
        value: form.day || day(today),
        onInput: (text) => set({ day: text }),
      })}
      ${numberBox({
        id: "margin",
        label: "Know each disc to ±",
        unit: distanceUnit,
        value: form.margin,
        placeholder: usualMargin(book.settings),
        onInput: (margin) => set({ margin }),
      })}
      ${numberBox({
        id: "field-headwind",
        label: "Headwind",
        unit: windUnit,
        value: form.headwind,
        placeholder: "0",
        signed: true,
        onInput: (headwind) => set({ headwind }),
      })}
      ${numberBox({
        id: "field-rise",
        label: "Rise",
        unit: distanceUnit,
        value: form.rise,
        placeholder: "0",
        signed: true,
        onInput: (rise) => set({ rise }),
      })}
    </div>
    ${segments({
      name: "order",
      legend: "Next disc",
      options: [
        ["worth", "least known first"],
        ["listed", "as listed"],
      ],
      value: form.order,
      onChange: (order) => set({ order }),
    })}
    ${FIELD_CAUTION}
    <button class="main" @click=${() => start(desk, today)}>
      ${already > 0 ? "Go on" : "Start"}
    </button>
    ${
      already > 0
        ? html`<p class="quiet">
            ${count(already, "throw")} of that day ${already === 1 ? "is" : "are"} in the log; the
            session goes on from there.
          </p>`
        : nothing
    }
  </section>`;
}
