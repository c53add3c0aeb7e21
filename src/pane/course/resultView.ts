/** What happened on a hole: the disc, in or out, and where, each by one tap. */
import { html, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { bagOf } from "../field/model";
import { numberBox, picker, segments } from "../parts/boxes";
import { addResult, setCourse } from "./actions";
import { type Planned, pressed } from "./model";

export function resultView(
  desk: Desk,
  book: Book,
  entry: Planned,
  next: Planned | null,
): TemplateResult {
  const { course: form } = desk.state;
  const { option } = entry.plan;
  const add = (): void => void addResult(desk, entry, next?.hole.row ?? null);
  return html`<fieldset class="stack tight">
    <legend>What happened</legend>
    ${picker({
      id: "result-disc",
      label: "Disc",
      value: form.disc === "" ? (option?.disc ?? "") : form.disc,
      options: [
        ...(option ? [] : [["", "choose"] as const]),
        ...bagOf(book).map((disc) => [disc, disc] as const),
      ],
      onChange: (disc) => setCourse(desk, { disc }),
    })}
    ${segments<"in" | "out" | "">({
      name: "result",
      legend: "Finished",
      options: [
        ["in", "in the circle"],
        ["out", "outside"],
      ],
      value: form.inCircle === null ? "" : form.inCircle ? "in" : "out",
      onChange: (where) => setCourse(desk, { inCircle: where === "in" }),
    })}
    ${missView(desk, book, "finish", add)} ${missView(desk, book, "offline", add)}
    <details>
      <summary>Power</summary>
      ${numberBox({
        id: "result-power",
        label: "Power",
        unit: "%",
        value: form.power,
        placeholder: usualPower(form.disc, entry),
        onInput: (power) => setCourse(desk, { power }),
      })}
    </details>
    <button class="main" @click=${add}>Add the result</button>
  </fieldset>`;
}

const MISSES = {
  finish: { label: "Long or short, if you know", less: "Short", more: "Long" },
  offline: { label: "Left or right, if you know", less: "Left", more: "Right" },
} as const;

/** A box for the figure between two buttons that count it up. */
function missView(
  desk: Desk,
  { settings: { distanceUnit } }: Book,
  field: keyof typeof MISSES,
  add: () => void,
): TemplateResult {
  const { course: form } = desk.state;
  const { label, less, more } = MISSES[field];
  const press = (sign: 1 | -1): void =>
    setCourse(desk, { [field]: pressed(form, field, sign, distanceUnit) });
  return html`<div class="counted">
    <button @click=${() => press(-1)}>${less}</button>
    ${numberBox({
      id: `result-${field}`,
      label,
      unit: distanceUnit,
      value: form[field],
      signed: true,
      placeholder: "not noted",
      onInput: (text) => setCourse(desk, { [field]: text }),
      onKey: (event) => {
        if (event.key === "Enter") add();
      },
    })}
    <button @click=${() => press(1)}>${more}</button>
  </div>`;
}

/** The planned power for the planned disc; smooth for any other. */
const usualPower = (disc: string, { plan: { option } }: Planned): string =>
  option && (disc === "" || disc === option.disc) ? String(Math.round(option.power * 100)) : "100";
