import { html, nothing, svg, type TemplateResult } from "lit";
import { knownToM } from "../../core/carry/needed";
import { dayFromIso } from "../../core/log/cell";
import { type DistanceUnit, fromMetres } from "../../core/units";
import { type Book, rowIn } from "../book/book";
import type { Desk } from "../controller";
import { empty, FIELD_CAUTION, showSheet, table } from "../parts/blocks";
import { numberBox, picker, segments, textBox } from "../parts/boxes";
import { plotFrame } from "../plots/frame";
import { nearestAt, scale } from "../plots/scale";
import { goTo, withLook } from "../state";
import { todayOf } from "../today";
import { count, day, distance, length, wind } from "../words/figures";
import { formOfDayView } from "./formView";
import {
  add,
  again,
  end,
  onSessionKey,
  setSession,
  skip,
  start,
  takeBackLast,
  turn,
} from "./actions";
import {
  bagOf,
  type Dot,
  dotsOf,
  intervalOf,
  leastKnownFirst,
  type LoggedRow,
  loggedRows,
  OFFLINE_STEP,
  type Progress,
  progressOf,
  type Session,
  stacked,
  type StartForm,
  stillNeeded,
  usualMargin,
} from "./model";

const ID = "dots";
const SIZE = 9;
const MARGIN = 16;

/** The carries of one disc, earlier ones and this session's, over the interval of the next throw. */
export function dotPlot(desk: Desk, book: Book, disc: string, today: number): unknown {
  const dots = dotsOf(book, disc);
  const interval = intervalOf(book, disc);
  if (dots.length === 0 || !interval) return nothing;
  const unit = book.settings.distanceUnit;
  const width = desk.state.plotWidth;
  const carries = dots.map(({ carryM }) => carryM);
  const low = Math.min(interval.lowM, ...carries);
  const high = Math.max(interval.highM, ...carries);
  const x = scale([low, high], [MARGIN, width - MARGIN]);
  const xs = carries.map((carryM) => x(carryM));
  const levels = stacked(xs, SIZE + 1);
  const base = 14 + Math.max(...levels) * SIZE;
  const looked = desk.state.looked[ID] ?? null;
  return plotFrame({
    id: ID,
    label: `Carries of ${disc}`,
    width,
    height: base + 40,
    drawing: svg`
        ${dots.map(({ thrown }, at) => {
          const now = thrown.day === today ? "now" : "";
          const latest = at === dots.length - 1 && now ? "latest" : "";
          return svg`<circle class="dot ${now} ${latest}" cx=${xs[at]!} cy=${base - levels[at]! * SIZE}
            r=${looked === at ? 6 : SIZE / 2}></circle>`;
        })}
        <line class="span" x1=${x(interval.lowM)} x2=${x(interval.highM)} y1=${base + 14} y2=${base + 14}></line>
        <line class="carry" x1=${x(interval.carryM)} x2=${x(interval.carryM)} y1=${base + 8} y2=${base + 20}></line>
        <text class="soft" x=${x(interval.lowM)} y=${base + 36}>${length(interval.lowM, unit)}</text>
        <text class="strong middle" x=${x(interval.carryM)} y=${base + 36}>${length(interval.carryM, unit)}</text>
        <text class="soft end" x=${x(interval.highM)} y=${base + 36}>${length(interval.highM, unit)}</text>`,
    facts: dots.map((dot) => factOf(dot, unit)),
    looked,
    onLook: (at) => desk.change((state) => withLook(state, ID, at)),
    nearest: (to) => nearestAt(xs, to),
    hint: "Dark dots: this session. Bar: where eight of ten next throws stop, level and calm.",
    table: tableOf(disc, dots, unit),
  });
}

const factOf = ({ thrown, carryM }: Dot, unit: DistanceUnit): string => {
  const asThrown =
    Math.abs(fromMetres(carryM - thrown.carryM, unit)) < 0.5
      ? ""
      : `, thrown ${distance(thrown.carryM, unit)}`;
  return `${distance(carryM, unit)} level and calm${asThrown}${thrown.day === null ? "" : `, on ${day(thrown.day)}`}.`;
};

const tableOf = (disc: string, dots: readonly Dot[], unit: DistanceUnit): TemplateResult =>
  table(
    `Carries of ${disc}`,
    [["Day"], [`Thrown, ${unit}`, "number"], ["Level and calm", "number"]],
    dots.map(({ thrown, carryM }) => [
      day(thrown.day) || "no date",
      length(thrown.carryM, unit),
      length(carryM, unit),
    ]),
  );

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

/** A session under way: what to throw, the last throw, the disc's carries, what comes then. */
export function sessionView(desk: Desk, book: Book, session: Session): TemplateResult {
  const progress = progressOf(session, book, leastKnownFirst(book));
  const logged = loggedRows(session, book);
  const { disc } = progress;
  return html`<div class="stack">
    ${headView(desk, book, session, progress)}
    ${disc === null ? nothing : throwView(desk, book, session, disc)}
    ${lastView(desk, book, logged.at(-1))} ${FIELD_CAUTION}
    ${formOfDayView(desk, book, session.day)}
    ${
      disc === null
        ? nothing
        : html`<section aria-label="Carries">
            <h2>${disc} so far</h2>
            ${dotPlot(desk, book, disc, session.day)}
          </section>`
    }
    ${todayView(book, progress, logged)}
  </div>`;
}

function headView(
  desk: Desk,
  { settings }: Book,
  session: Session,
  { thrown, discs, round }: Progress,
): TemplateResult {
  const felt =
    session.headwindMps === 0 ? "" : `, headwind ${wind(session.headwindMps, settings.windUnit)}`;
  const rise =
    session.riseM === 0 ? "" : `, rise ${distance(session.riseM, settings.distanceUnit)}`;
  const again = round > 1 ? `, time ${round} through the bag` : "";
  return html`<div>
    <div class="split">
      <p><b>${thrown} of ${discs}</b>${again}</p>
      <button class="plain" @click=${() => end(desk)}>End session</button>
    </div>
    <progress max=${discs} value=${thrown} aria-label="Discs thrown"></progress>
    <p class="quiet">${day(session.day)}${felt}${rise}</p>
  </div>`;
}

const lastView = (desk: Desk, { settings }: Book, last: LoggedRow | undefined): unknown =>
  last
    ? html`<div class="split notice">
        <p role="status" id="last">
          <span class="quiet">Last</span> ${last.disc}, ${String(last.carry)}
          ${settings.distanceUnit}${last.off ? ", off" : ""}
        </p>
        <span>
          <button class="plain" ?disabled=${last.off} @click=${() => void again(desk)}>
            Again
          </button>
          <button class="plain" @click=${() => void takeBackLast(desk)}>Undo</button>
        </span>
      </div>`
    : nothing;

const todayView = (
  { settings }: Book,
  { after }: Progress,
  logged: readonly LoggedRow[],
): TemplateResult =>
  html`<section aria-label="This session">
    ${
      after.length === 0
        ? nothing
        : html`<p>
            <span class="quiet">Then</span>
            ${after.slice(0, 4).join(", ")}${after.length > 4 ? " …" : ""}
          </p>`
    }
    ${
      logged.length === 0
        ? nothing
        : html`<details>
            <summary>${count(logged.length, "throw")} of this day</summary>
            <ul class="lines">
              ${[...logged]
                .reverse()
                .map(
                  ({ disc, carry, off }) =>
                    html`<li>
                      <b>${disc}</b> ${String(carry)} ${settings.distanceUnit}${off ? ", off" : ""}
                    </li>`,
                )}
            </ul>
          </details>`
    }
  </section>`;

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
  return html`${formOfDayView(desk, book, chosen)}
    <section aria-label="Start a session">
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

/** Fieldwork: through the bag, one throw after the other. */
export const fieldView = (desk: Desk, book: Book): TemplateResult =>
  desk.state.session ? sessionView(desk, book, desk.state.session) : startView(desk, book);
