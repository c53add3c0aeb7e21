import { svg, type SVGTemplateResult, type TemplateResult } from "lit";
import { type DistanceUnit, toMetres } from "../../core/units";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { table } from "../parts/blocks";
import { plotFrame } from "../plots/frame";
import { nearestAt, pathThrough, scale, type Scale } from "../plots/scale";
import { withLook } from "../state";
import { count, distance, length, share } from "../words/figures";
import {
  type Covered,
  type Ladder,
  ladderOf,
  type Rung,
  RUNG_PX,
  rungsOf,
  verdictWords,
} from "./model";

const ID = "ladder";

/** Every disc with its throws as dots and the interval of the next throw as a bar. */
export function ladderPlot(desk: Desk, book: Book): TemplateResult {
  const unit = book.settings.distanceUnit;
  const unitM = toMetres(1, unit);
  const rungs = rungsOf(book);
  const ladder = ladderOf(rungs, desk.state.plotWidth, unitM);
  const looked = desk.state.looked[ID] ?? null;
  return plotFrame({
    id: ID,
    label: "Smooth carry of each disc",
    width: ladder.width,
    height: ladder.height,
    drawing: svg`${axis(ladder)}${rungs.map((rung, at) => rungDrawing(rung, at, ladder, unitM, unit, looked === at))}`,
    facts: rungs.map((rung) => factOf(rung, unit)),
    looked,
    onLook: (at) => desk.change((state) => withLook(state, ID, at)),
    nearest: (_x, y) => nearestAt(ladder.ys, y),
    hint: "Dot: a throw, level and calm. Bar: where eight of ten next throws stop.",
    table: table(
      "Smooth carry of each disc",
      [
        ["Disc"],
        [`Carry, ${unit}`, "number"],
        ["8 of 10", "number"],
        ["± known", "number"],
        ["Throws", "number"],
      ],
      rungs.map(({ row, next, knownM }) => [
        row.disc,
        length(next.carryM, unit),
        `${length(next.lowM, unit)} to ${length(next.highM, unit)}`,
        length(knownM, unit),
        String(row.throws),
      ]),
    ),
  });
}

const axis = ({ x, height }: Ladder): SVGTemplateResult =>
  svg`${x.ticks.map(
    (tick) => svg`<line class="axis" x1=${x(tick)} x2=${x(tick)} y1="0" y2=${height - 20}></line>
      <text class="soft middle" x=${x(tick)} y=${height - 5}>${tick}</text>`,
  )}`;

/** Letters that fit left of the carry. */
const fitting = (name: string, width: number): string => {
  const letters = Math.floor((width - 60) / 8);
  return name.length > letters ? `${name.slice(0, letters - 1)}…` : name;
};

function rungDrawing(
  { row, next, dots }: Rung,
  at: number,
  { x, ys, width }: Ladder,
  unitM: number,
  unit: DistanceUnit,
  looked: boolean,
): SVGTemplateResult {
  const y = ys[at]!;
  const place = (metres: number): number => x(metres / unitM);
  return svg`<g>
    ${looked ? svg`<rect class="looked" x="-4" y=${y - RUNG_PX + 14} width=${width + 8} height=${RUNG_PX} rx="3"></rect>` : ""}
    <text class="halo" x="0" y=${y - 10}>${fitting(row.disc, width)}</text>
    <text class="strong end halo" x=${width} y=${y - 10}>${length(next.carryM, unit)}</text>
    <line class="span" x1=${place(next.lowM)} x2=${place(next.highM)} y1=${y} y2=${y}></line>
    ${dots.map(({ carryM }) => svg`<circle class="dot" cx=${place(carryM)} cy=${y} r="3.5"></circle>`)}
    <line class="carry" x1=${place(next.carryM)} x2=${place(next.carryM)} y1=${y - 6} y2=${y + 6}></line>
  </g>`;
}

function factOf({ row, next, knownM }: Rung, unit: DistanceUnit): string {
  const range = `${length(next.lowM, unit)} and ${distance(next.highM, unit)}`;
  return `${row.disc}: ${distance(next.carryM, unit)}, eight of ten between ${range}. Known to ± ${distance(knownM, unit)} from ${count(row.throws, "throw")}${verdictWords(row.verdict)}.`;
}

const COVERAGE_PLOT_ID = "coverage";
const HEIGHT = 190;
const TOP = 26;
const FOOT = HEIGHT - 24;
const LEFT = 38;
/** Of the curve's points the table shows each second one. */
const EVERY_ROW = 2;

interface Axes {
  readonly x: Scale;
  readonly y: Scale;
  readonly width: number;
}

/** Best chance of the circle by distance, against a disc made for that distance; gaps are shaded and named. */
export function coveragePlot(desk: Desk, book: Book, { rows, gaps }: Covered): TemplateResult {
  const unit = book.settings.distanceUnit;
  const unitM = toMetres(1, unit);
  const width = desk.state.plotWidth;
  const first = rows[0]!;
  const last = rows.at(-1)!;
  const ends = [first.distanceM / unitM, last.distanceM / unitM] as const;
  const axes = { x: scale(ends, [LEFT, width - 2]), y: scale([0, 1], [FOOT, TOP], 4), width };
  const looked = desk.state.looked[COVERAGE_PLOT_ID] ?? null;
  const xs = rows.map(({ distanceM }) => axes.x(distanceM / unitM));
  return plotFrame({
    id: COVERAGE_PLOT_ID,
    label: "Chance to finish in the circle by distance",
    width,
    height: HEIGHT,
    drawing: svg`
      ${gaps.map(({ fromM, toM }) => gapBand(axes.x(fromM / unitM), axes.x(toM / unitM)))}
      ${axesDrawing(axes)}
      <path class="curve other" d=${pathThrough(rows.map(({ ideal }, at) => [xs[at]!, axes.y(ideal)]))}></path>
      <path class="curve" d=${pathThrough(rows.map(({ chance }, at) => [xs[at]!, axes.y(chance)]))}></path>
      <text class="soft end halo" x=${width} y=${axes.y(last.ideal) + beside(last.ideal > last.chance)}>a disc made for it</text>
      <text class="strong halo" x=${LEFT + 4} y=${axes.y(first.chance) + beside(first.chance >= first.ideal)}>your bag</text>
      ${looked === null ? "" : lookedAt(xs[Math.min(looked, rows.length - 1)]!, axes.y(rows[Math.min(looked, rows.length - 1)]!.chance))}`,
    facts: rows.map(
      ({ distanceM, chance, ideal, disc }) =>
        `${distance(distanceM, unit)}: ${share(chance)} with ${disc}; a disc made for it ${share(ideal)}.`,
    ),
    looked,
    onLook: (at) => desk.change((state) => withLook(state, COVERAGE_PLOT_ID, at)),
    nearest: (x) => nearestAt(xs, x),
    hint:
      gaps.length === 0
        ? "Level and calm. No gap: the bag is nowhere far behind a disc made for it."
        : "Level and calm. Shaded: where the bag gives chance away.",
    table: coverageTable(rows, unit),
  });
}

/** The words of the higher curve stand above it, those of the lower one below. */
const beside = (above: boolean): number => (above ? -8 : 19);

const gapBand = (from: number, to: number): SVGTemplateResult =>
  svg`<rect class="gap" x=${from} width=${Math.max(1, to - from)} y=${TOP} height=${FOOT - TOP}></rect>
    <text class="soft middle" x=${(from + to) / 2} y=${TOP - 8}>gap</text>`;

const axesDrawing = ({ x, y, width }: Axes): SVGTemplateResult =>
  svg`${y.ticks.map(
    (tick) => svg`<line class="axis" x1=${LEFT} x2=${width} y1=${y(tick)} y2=${y(tick)}></line>
      <text class="soft end" x=${LEFT - 6} y=${y(tick) + 4}>${share(tick)}</text>`,
  )}${x.ticks.map(
    (tick) =>
      svg`<text class="soft middle" x=${Math.min(x(tick), width - 12)} y=${HEIGHT - 4}>${tick}</text>`,
  )}`;

const lookedAt = (x: number, y: number): SVGTemplateResult =>
  svg`<line class="at" x1=${x} x2=${x} y1=${TOP} y2=${FOOT}></line>
    <circle class="dot now" cx=${x} cy=${y} r="5"></circle>`;

const coverageTable = (rows: Covered["rows"], unit: DistanceUnit): TemplateResult =>
  table(
    "Chance to finish in the circle by distance",
    [[`Distance, ${unit}`], ["Your bag", "number"], ["Made for it", "number"], ["Disc"]],
    rows
      .filter((_, at) => at % EVERY_ROW === 0)
      .map(({ distanceM, chance, ideal, disc }) => [
        length(distanceM, unit),
        share(chance),
        share(ideal),
        disc,
      ]),
  );
