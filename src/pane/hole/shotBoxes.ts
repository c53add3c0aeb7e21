/** The boxes of Hole for distance and wind, one set for each way to know them. */
import { html, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import { numberBox } from "../parts/box";
import { picker } from "../parts/picker";
import { textBox } from "../parts/textBox";
import type { HoleForm } from "./form";
import { FORCES, SIDES } from "./windOf";

export type Set = (part: Partial<HoleForm>) => void;

export const levelView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
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

export const sightView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
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

export const feltView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
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

export const eyeView = (form: HoleForm, set: Set): TemplateResult =>
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

export const forecastView = (form: HoleForm, set: Set, { settings }: Book): TemplateResult =>
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
