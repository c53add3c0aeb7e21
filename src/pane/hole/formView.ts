import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { numberBox } from "../parts/box";
import { picker } from "../parts/picker";
import { segments } from "../parts/segments";
import { textBox } from "../parts/textBox";
import { fillFrom } from "./fill";
import type { HoleForm } from "./form";
import { FORCES, SIDES } from "./windOf";

type Set = (part: Partial<HoleForm>) => void;

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

const levelView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
  html`${numberBox({
    id: "distance",
    label: "Distance",
    unit: settings.distanceUnit,
    value: form.distance,
    large: true,
    onInput: (distance) => set({ distance, from: "" }),
  })}
  ${numberBox({
    id: "rise",
    label: "Rise",
    unit: settings.distanceUnit,
    value: form.rise,
    placeholder: "0",
    signed: true,
    large: true,
    onInput: (rise) => set({ rise, from: "" }),
  })}`;

const sightView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
  html`${numberBox({
    id: "range",
    label: "Range",
    unit: settings.distanceUnit,
    value: form.range,
    large: true,
    onInput: (range) => set({ range, from: "" }),
  })}
  ${numberBox({
    id: "angle",
    label: "Angle",
    unit: "°",
    value: form.angle,
    placeholder: "0",
    signed: true,
    large: true,
    onInput: (angle) => set({ angle, from: "" }),
  })}`;

const feltView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
  numberBox({
    id: "headwind",
    label: "Headwind",
    unit: settings.windUnit,
    value: form.headwind,
    placeholder: "0",
    signed: true,
    large: true,
    onInput: (headwind) => set({ headwind, from: "" }),
  });

const eyeView = (form: HoleForm, set: Set): TemplateResult =>
  html`<div class="stack tight">
    ${picker({
      id: "force",
      label: "You see",
      value: form.force,
      options: FORCES,
      onChange: (force) => set({ force }),
    })}
    ${picker({
      id: "side",
      label: "Wind from",
      value: form.side,
      options: SIDES,
      onChange: (side) => set({ side }),
    })}
  </div>`;

const forecastView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
  html`<div class="three">
    ${numberBox({
      id: "speed",
      label: "Wind speed",
      unit: settings.windUnit,
      value: form.speed,
      onInput: (speed) => set({ speed }),
    })}
    ${textBox({
      id: "wind-from",
      label: "Wind from",
      value: form.windFrom,
      placeholder: "NW or 315",
      onInput: (windFrom) => set({ windFrom }),
    })}
    ${textBox({
      id: "bearing",
      label: "Throwing to",
      value: form.bearing,
      placeholder: "W or 270",
      onInput: (bearing) => set({ bearing }),
    })}
  </div>`;

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
