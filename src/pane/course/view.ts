import { html, nothing, type TemplateResult } from "lit";
import type { Factors } from "../../core/learn/learnFactors";
import { settingRule } from "../../core/log/settingsTable";
import type { Option, Settings } from "../../core/types";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { bagOf } from "../field/model";
import { pickOf, unfitSentence } from "../hole/model";
import { empty, PICK_CAUTION, showSheet, table } from "../parts/blocks";
import { numberBox, picker } from "../parts/boxes";
import { count, distance, length, plain, share, strokes } from "../words/figures";
import { addResult, lookAt, setCourse, toggle, useFactors } from "./actions";
import { factorsToUse, inUse, learntOf, USES } from "./learnt";
import { type Planned, planOf, totalsOf } from "./model";

/** What the rounds taught, and how sure it is. */
export function learntView(desk: Desk, book: Book): TemplateResult {
  const learnt = learntOf(book);
  return html`<section aria-label="Learnt">
    <h2>Learnt from your rounds</h2>
    ${
      book.rounds.length === 0
        ? html`<p class="quiet">
            Open a hole above and add where the throw finished. Your own slope and wind factors then
            stand here.
          </p>`
        : learnt.ok
          ? factorsView(desk, book, learnt.value)
          : html`<p>${learnt.why}</p>`
    }
  </section>`;
}

function factorsView(desk: Desk, book: Book, factors: Factors): TemplateResult {
  const used = inUse(factors, book);
  return html`${table(
      "Learnt factors",
      [["Setting"], ["Value", "number"], ["±", "number"], ["Rows", "number"]],
      USES.map(({ learnt, setting, decimals }) => {
        const { value, sd, rows } = learnt(factors);
        return [
          settingRule(setting).label,
          plain(value, decimals),
          plain(sd, decimals),
          String(rows),
        ];
      }),
    )}
    <p>${scatterSentence(factors)}</p>
    <p class="quiet">
      Factors: 1 means the model is right for you. Trust a figure when its ± is small.
    </p>
    <button
      ?disabled=${used || desk.state.busy !== null}
      @click=${() => void useFactors(desk, factorsToUse(factors, book))}
    >
      ${used ? "In use" : "Use these"}
    </button>`;
}

const scatterSentence = ({ scatter }: Factors): string =>
  `On the course your throws scatter ${plain(scatter, 1)} times as far as in the field.`;

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

/** The disc for each hole; results go in hole by hole. */
export function courseView(desk: Desk, book: Book): TemplateResult {
  if (book.holes.length === 0)
    return empty(
      "No holes yet",
      "Write them on the sheet Holes: distance, rise and wind are enough.",
      showSheet(desk, "Holes!A6", "Go to Holes"),
    );
  const plan = planOf(book);
  return html`${plan.ok ? planView(desk, book, plan.value) : html`<p>${plan.why}</p>`}
  ${learntView(desk, book)}`;
}

function planView(desk: Desk, book: Book, planned: readonly Planned[]): TemplateResult {
  const totals = totalsOf(planned);
  return html`<section aria-label="Plan">
    <div>
      <p class="eyebrow">Expected for ${count(totals.answered, "hole")}</p>
      <p class="great">
        ${strokes(totals.strokes)}<small>
          strokes${totals.par === null ? "" : `, par ${totals.par}`}</small
        >
      </p>
    </div>
    ${PICK_CAUTION}
    <ol class="holes">
      ${planned.map((entry, at) => holeView(desk, book, entry, planned[at + 1] ?? null))}
    </ol>
  </section>`;
}

function holeView(desk: Desk, book: Book, entry: Planned, next: Planned | null): TemplateResult {
  const { hole, plan } = entry;
  const open = desk.state.course.open === hole.row;
  return html`<li>
    <button
      class="hole"
      id="hole-${hole.row}"
      aria-expanded=${open}
      @click=${() => toggle(desk, hole.row)}
    >
      <span class="which">${hole.hole}</span>
      <span class="what">
        <b>${plan.option ? pickOf(plan.option) : "No disc gets there"}</b>
        <span class="quiet">${lengthWords(entry, book.settings)}</span>
      </span>
      <span class="chance">${plan.option ? share(plan.option.chance) : nothing}</span>
    </button>
    ${open ? openHoleView(desk, book, entry, next) : nothing}
  </li>`;
}

function lengthWords({ hole, plan }: Planned, settings: Settings): string {
  const { distanceUnit } = settings;
  const plays =
    plan.playsLikeM === null ? "" : `, plays like ${length(plan.playsLikeM, distanceUnit)}`;
  return `${distance(hole.distanceM, distanceUnit)}${plays}${endWords(plan.option, settings)}`;
}

function endWords(option: Option | null, settings: Settings): string {
  if (!option) return "";
  const unfit = unfitSentence(option, settings);
  return unfit === "" ? `, leaves ${length(option.leavesM, settings.distanceUnit)}` : `; ${unfit}`;
}
