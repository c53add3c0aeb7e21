import { html, nothing, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { pickOf } from "../hole/sentences";
import { numberBox } from "../parts/box";
import { picker } from "../parts/picker";
import { distance, length, strokes } from "../words/figures";
import { bagOf } from "../field/session";
import { addResult, lookAt, setCourse } from "./actions";
import type { Planned } from "./plan";

/** A hole of the plan laid open: the reasons, and a place for what happened. */
export function openHoleView(
  desk: Desk,
  book: Book,
  entry: Planned,
  next: Planned | null,
): TemplateResult {
  return html`<div class="open stack tight">
    ${reasonsView(book, entry)}
    <button class="plain" @click=${() => lookAt(desk, entry)}>Look at it in Hole</button>
    ${resultView(desk, book, entry, next)}
  </div>`;
}

function reasonsView(
  { settings: { distanceUnit } }: Book,
  { hole, plan }: Planned,
): TemplateResult {
  const { option, second, why, lowM, highM } = plan;
  return html`<p>
    ${
      option
        ? `Leaves ${distance(option.leavesM, distanceUnit)}, ${strokes(option.strokes)} strokes in all. `
        : (why ?? "")
    }
    ${second ? `Second: ${pickOf(second)}. ` : ""}
    ${
      lowM !== null && highM !== null
        ? `Plays between ${length(lowM, distanceUnit)} and ${distance(highM, distanceUnit)}. `
        : ""
    }
    ${hole.note === "" ? nothing : html`<span class="quiet">${hole.note}</span>`}
  </p>`;
}

function resultView(desk: Desk, book: Book, entry: Planned, next: Planned | null): TemplateResult {
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
    <div class="two">
      ${numberBox({
        id: "result-finish",
        label: "Finish, short minus",
        unit: book.settings.distanceUnit,
        value: form.finish,
        signed: true,
        onInput: (finish) => setCourse(desk, { finish }),
        onKey: (event) => {
          if (event.key === "Enter") add();
        },
      })}
      ${numberBox({
        id: "result-power",
        label: "Power",
        unit: "%",
        value: form.power,
        placeholder: usualPower(form.disc, entry),
        onInput: (power) => setCourse(desk, { power }),
      })}
    </div>
    <button class="main" @click=${add}>Add the result</button>
  </fieldset>`;
}

/** The planned power for the planned disc; smooth for any other. */
const usualPower = (disc: string, { plan: { option } }: Planned): string =>
  option && (disc === "" || disc === option.disc) ? String(Math.round(option.power * 100)) : "100";
