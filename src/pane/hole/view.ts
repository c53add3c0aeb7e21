/** The boxes of Hole for distance and wind, one set for each way to know them. */
import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit";
import type { flightPath } from "../../core/flight/path";
import type { Hole, Option, Settings } from "../../core/types";
import { type Book, oncePerPair, UNREAD_BOOK } from "../book/book";
import { type Answer, attempt, type Desk } from "../controller";
import { empty, PICK_CAUTION, READING, shareBar, table } from "../parts/blocks";
import { numberBox, picker, segments, textBox } from "../parts/boxes";
import { plotFrame } from "../plots/frame";
import { nearestAt, pathThrough } from "../plots/scale";
import { withLook } from "../state";
import { distance, length, plain, power, share, strokes } from "../words/figures";
import {
  aimSentence,
  answerHole,
  doubtSentence,
  driftSentence,
  fillFrom,
  flightSide,
  type FlightSide,
  FORCES,
  type HoleAnswer,
  type HoleForm,
  isBlankForm,
  oddWindSentence,
  pickOf,
  pickSentence,
  SIDES,
  type Task,
  taskOf,
  holeBeside,
  thenSentence,
  unfitSentence,
  whySentence,
} from "./model";

const ID = "flight";

/** The flight from the side, over the real slope, with the circle at the target. */
export function flightPlot(
  desk: Desk,
  { settings }: Book,
  task: Task,
  path: ReturnType<typeof flightPath>,
): TemplateResult {
  const side = flightSide(task, path, settings.circleM, desk.state.plotWidth);
  const looked = desk.state.looked[ID] ?? null;
  const { distanceUnit } = settings;
  const facts = side.points.map(
    ({ alongM, heightM, timeS }) =>
      `${distance(alongM, distanceUnit)} out: ${distance(heightM, distanceUnit)} above the throwing spot, after ${plain(timeS, 1)} s.`,
  );
  return html`<section class="whole" aria-label="Flight from the side">
    <h2>From the side</h2>
    ${plotFrame({
      id: ID,
      label: "Flight from the side",
      width: side.width,
      height: side.height,
      drawing: drawingOf(side, looked, task, settings),
      facts,
      looked,
      onLook: (at) => desk.change((state) => withLook(state, ID, at)),
      nearest: (x) =>
        nearestAt(
          side.points.map((point) => point.x),
          x,
        ),
      hint: `Heights are stretched ${side.stretch}×. A typical disc that gets there with the least effort.`,
      table: table(
        "Flight from the side",
        [["Out"], ["Above the spot", "number"], ["Seconds", "number"]],
        side.points
          .filter((_, at) => at % side.everyRow === 0)
          .map(({ alongM, heightM, timeS }) => [
            length(alongM, distanceUnit),
            length(heightM, distanceUnit),
            plain(timeS, 1),
          ]),
      ),
    })}
  </section>`;
}

function drawingOf(
  side: FlightSide,
  looked: number | null,
  task: Task,
  settings: Settings,
): SVGTemplateResult {
  const at = looked === null ? undefined : side.points[Math.min(looked, side.points.length - 1)];
  const { circle, apex } = side;
  const [left, right] = circle;
  return svg`
    <path class="ground" d=${side.ground}></path>
    <path class="curve" d=${pathThrough(side.points.map(({ x, y }) => [x, y]))}></path>
    <line class="target" x1=${left.x} y1=${left.y} x2=${right.x} y2=${right.y}></line>
    <text class="soft middle" x=${apex.x} y=${apex.y - 8}>
      ${distance(apex.heightM, settings.distanceUnit)} high
    </text>
    <text class="soft end" x=${side.width - 6} y=${side.height - 8}>
      circle, ${distance(task.distanceM, settings.distanceUnit)} out
    </text>
    ${at ? svg`<circle class="dot now" cx=${at.x} cy=${at.y} r="5"></circle>` : ""}
  `;
}

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
        legend: "Wind",
        options: [
          ["felt", "I feel it"],
          ["forecast", "forecast"],
          ["eye", "I see it"],
        ],
        value: form.windBy,
        onChange: (windBy) => set({ windBy }),
      })}
      ${troubleView(form, set, book)}
    </div>
  </details>`;

function courseView(desk: Desk, { holes, settings }: Book): unknown {
  if (holes.length === 0) return nothing;
  const fill = (hole: Hole): void =>
    desk.change((state) => ({ ...state, hole: fillFrom(hole, settings) }));
  const beside = (step: 1 | -1, words: string): unknown => {
    const hole = holeBeside(holes, desk.state.hole.from, step);
    return html`<button ?disabled=${hole === null} @click=${() => hole && fill(hole)}>
      ${words}
    </button>`;
  };
  return html`${holePicker(desk, holes, fill)}
    <div class="row">${beside(-1, "Previous hole")} ${beside(1, "Next hole")}</div>`;
}

const holePicker = (
  desk: Desk,
  holes: readonly Hole[],
  fill: (hole: Hole) => void,
): TemplateResult =>
  picker({
    id: "hole-from",
    label: "From the course",
    value: desk.state.hole.from,
    options: [
      ["", "none: type it below"],
      ...holes.map((hole) => [String(hole.row), `Hole ${hole.hole}${note(hole.note)}`] as const),
    ],
    onChange: (from) => {
      const hole = holes.find(({ row }) => String(row) === from);
      if (hole) fill(hole);
      else desk.change((state) => ({ ...state, hole: { ...state.hole, from } }));
    },
  });

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

/** Discs that are seen without asking. */
const AT_ONCE = 5;

/** Every disc for this throw, best first: the fit ones as a list, the others with the reason. */
export function rankedView(options: readonly Option[], settings: Settings): TemplateResult {
  const reaching = options.filter((option) => unfitSentence(option, settings) === "");
  // Where no disc gets there in one, what follows is what tells them apart.
  const fit = reaching.length > 0 ? reaching : options.filter(({ then }) => then.length > 0);
  const unfit = options.filter((option) => !fit.includes(option));
  return html`<section class="whole" aria-label="Ranked">
    <h2>Ranked by strokes</h2>
    ${
      fit.length === 0
        ? nothing
        : html`<ol class="ranked">
            ${fit.slice(0, AT_ONCE).map((option) => ranked(option, settings))}
          </ol>`
    }
    ${
      fit.length <= AT_ONCE
        ? nothing
        : html`<details>
            <summary>${fit.length - AT_ONCE} more that get there</summary>
            <ol class="ranked">
              ${fit.slice(AT_ONCE).map((option) => ranked(option, settings))}
            </ol>
          </details>`
    }
    ${
      unfit.length === 0
        ? nothing
        : html`<details>
            <summary>${unfit.length} ${missesOf(unfit)}</summary>
            <ul class="lines">
              ${unfit.map(
                (option) =>
                  html`<li><b>${option.disc}</b>: ${unfitSentence(option, settings)}.</li>`,
              )}
            </ul>
          </details>`
    }
  </section>`;
}

/** What discs that do not fit have in common. */
function missesOf(unfit: readonly Option[]): string {
  const short = unfit.some(({ longM }) => longM < 0);
  const past = unfit.some(({ longM }) => longM > 0);
  return [short ? "stop short" : [], past ? "go past" : []].flat().join(" or ");
}

const ranked = (option: Option, settings: Settings): TemplateResult =>
  option.then.length > 0 ? rankedPlan(option, settings) : rankedThrow(option, settings);

const rankedPlan = (option: Option, settings: Settings): TemplateResult =>
  html`<li>
    <span class="name"><b>${option.disc}</b> ${power(option.power)}</span>
    <span class="chance">${strokes(option.strokes)}</span>
    <span class="quiet">
      leaves ${distance(option.leavesM, settings.distanceUnit)}, strokes in all on the right. Then
      ${option.then.map((next) => thenSentence(next, settings)).join(" ")}
    </span>
  </li>`;

const rankedThrow = (option: Option, { distanceUnit }: Settings): TemplateResult =>
  html`<li>
    <span class="name"><b>${option.disc}</b> ${power(option.power)}</span>
    <span class="chance">${share(option.chance)}</span>
    ${shareBar(option.chance)}
    <span class="quiet"
      >leaves ${distance(option.leavesM, distanceUnit)}, ${strokes(option.strokes)} strokes in
      all</span
    >
  </li>`;

/** Worked out once for the same boxes over the same workbook, however often the pane is drawn. */
const answersOf = oncePerPair((book: Book, form: HoleForm) =>
  attempt(() => answerHole(taskOf(form, book.settings), book.card, book.settings)),
);

/**
 * What does this throw play like, and which disc gets there? The boxes are there, and keep what is typed,
 * before the workbook has been read.
 */
export function holeView(desk: Desk, read: Book | null): TemplateResult {
  const { hole } = desk.state;
  const book = read ?? UNREAD_BOOK;
  const answer = !read || isBlankForm(hole) ? null : answersOf(read, hole);
  return html`<div class="side stack">
    ${formView(desk, book)}
    <section aria-label="Answer" aria-live="polite">
      ${read ? answerView(desk, answer, read) : READING}
    </section>
    ${answer?.ok ? detailView(desk, book, answer.value) : nothing}
  </div>`;
}

function answerView(desk: Desk, answer: Answer<HoleAnswer> | null, book: Book): unknown {
  if (!answer) return empty("How far is it?", "Type the distance to the target.");
  if (!answer.ok) return html`<p>${answer.why}</p>`;
  if (isPutt(answer.value, book)) return puttView(answer.value, book);
  return html`${pickView(answer.value, book)} ${playsView(answer.value, book)} ${cautionView(desk)}`;
}

const puttView = ({ options }: HoleAnswer, { settings }: Book): TemplateResult =>
  html`<p class="pick" id="pick">Putt</p>
    <p>
      The target is inside the circle.
      ${options.ok ? pickSentence(options.value, settings) : nothing}
    </p>`;

/** In full until the place was left once; from then on one tap away. */
const cautionView = ({ state }: Desk): TemplateResult =>
  html`<details class="caution" ?open=${!state.cautioned}>
    <summary>Before you throw</summary>
    ${PICK_CAUTION}
  </details>`;

const isPutt = ({ task }: HoleAnswer, { settings }: Book): boolean =>
  task.distanceM <= settings.circleM;

function pickView({ options }: HoleAnswer, book: Book): unknown {
  if (book.card.rows.length === 0)
    return empty("No throws yet", "Log a few smooth throws in Field, and the disc stands here.");
  if (!options.ok) return html`<p>${options.why}</p>`;
  const [best] = options.value;
  if (!best) return html`<p>No disc in the bag gets there.</p>`;
  return html`<div>
    <p class="eyebrow">Throw</p>
    <p class="pick" id="pick">${pickOf(best)}</p>
    <p>
      ${pickSentence(options.value, book.settings)}
      ${unfitSentence(best, book.settings) === "" ? aimSentence(best, book.settings) : nothing}
    </p>
    ${
      best.then.length === 0
        ? nothing
        : html`<p class="eyebrow">Then</p>
            <ol class="steps" start="2">
              ${best.then.map((next) => html`<li>${thenSentence(next, book.settings)}</li>`)}
            </ol>`
    }
  </div>`;
}

function playsView({ task, plays, drift }: HoleAnswer, { settings }: Book): unknown {
  if (!plays.ok) return html`<p>${plays.why}</p>`;
  const { parts, band } = plays.value;
  const { distanceUnit } = settings;
  return html`<div>
    <p class="eyebrow">Plays like</p>
    <p class="great" id="plays-like">
      ${length(parts.totalM, distanceUnit)}<small> ${distanceUnit}</small>
    </p>
    <p>
      Between ${length(band.lowM, distanceUnit)} and ${length(band.highM, distanceUnit)}
      ${distanceUnit}. ${doubtSentence(band, settings)} ${whySentence(parts, settings)}
      ${oddWindSentence(parts, task.headwindMps)}
      ${drift.ok ? driftSentence(drift.value, settings) : nothing}
    </p>
  </div>`;
}

function detailView(desk: Desk, book: Book, answer: HoleAnswer): unknown {
  const { options, path, task } = answer;
  const [best] = options.ok ? options.value : [];
  if (isPutt(answer, book) || !options.ok || !best) return nothing;
  // A flight that no disc of the bag can make would promise too much.
  const getsThere = unfitSentence(best, book.settings) === "";
  return html`${rankedView(options.value, book.settings)}
  ${path.ok && getsThere ? flightPlot(desk, book, task, path.value) : nothing}`;
}
