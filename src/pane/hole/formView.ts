import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { numberBox } from "../parts/box";
import { picker } from "../parts/picker";
import { segments } from "../parts/segments";
import { textBox } from "../parts/textBox";
import { fillFrom } from "./fill";
import type { HoleForm } from "./form";
import { eyeView, feltView, forecastView, levelView, sightView, type Set } from "./shotBoxes";

export function formView(desk: Desk, book: Book): TemplateResult {
  const { hole: form } = desk.state;
  const set: Set = (part) =>
    desk.change((state) => ({ ...state, hole: { ...state.hole, ...part } }));
  return html`<section aria-label="The throw">
    ${courseView(desk, book)}
    <div class="three">
      ${form.sight === "level" ? levelView(form, set, book) : sightView(form, set, book)}
      ${form.windBy === "felt" ? feltView(form, set, book) : nothing}
    </div>
    ${form.windBy === "forecast" ? forecastView(form, set, book) : nothing}
    ${form.windBy === "eye" ? eyeView(form, set) : nothing} ${moreView(form, set, book)}
  </section>`;
}

/** Other ways to say the same, and what is rarely needed. */
const moreView = (form: HoleForm, set: Set, book: Book): TemplateResult =>
  html`<details>
    <summary>Range finder, forecast, trouble</summary>
    <div class="stack tight">
      ${segments({
        name: "sight",
        legend: "Distance is measured",
        options: [
          ["level", "level"],
          ["line", "along the line of sight"],
        ],
        value: form.sight,
        onChange: (sight) => set({ sight }),
      })}
      ${segments({
        name: "wind-by",
        legend: "Wind is known",
        options: [
          ["felt", "as felt"],
          ["forecast", "by forecast"],
          ["eye", "by eye"],
        ],
        value: form.windBy,
        onChange: (windBy) => set({ windBy }),
      })}
      ${troubleView(form, set, book)}
    </div>
  </details>`;

function courseView(desk: Desk, { holes, settings }: Book): unknown {
  if (holes.length === 0) return nothing;
  return picker({
    id: "hole-from",
    label: "From the course",
    value: desk.state.hole.from,
    options: [
      ["", "none: type it below"],
      ...holes.map((hole) => [String(hole.row), `Hole ${hole.hole}${note(hole.note)}`] as const),
    ],
    onChange: (from) => {
      const hole = holes.find(({ row }) => String(row) === from);
      desk.change((state) => ({
        ...state,
        hole: hole ? fillFrom(hole, settings) : { ...state.hole, from },
      }));
    },
  });
}

const note = (text: string): string => (text === "" ? "" : `, ${text}`);

const troubleView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
  html`<div class="three">
      ${numberBox({
        id: "long-trouble",
        label: "Trouble behind",
        unit: settings.distanceUnit,
        value: form.longTrouble,
        onInput: (longTrouble) => set({ longTrouble }),
      })}
      ${numberBox({
        id: "short-trouble",
        label: "In front",
        unit: settings.distanceUnit,
        value: form.shortTrouble,
        onInput: (shortTrouble) => set({ shortTrouble }),
      })}
      ${textBox({
        id: "line",
        label: "Line",
        value: form.line,
        placeholder: "any",
        onInput: (line) => set({ line }),
      })}
    </div>
    <p class="quiet">
      Down and with the wind is minus. Trouble: distance from the target to it. A line keeps to the
      discs that fly it.
    </p>`;
