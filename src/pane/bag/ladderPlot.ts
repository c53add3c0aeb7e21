import { svg, type SVGTemplateResult, type TemplateResult } from "lit";
import { toMetres, type DistanceUnit } from "../../core/units";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { table } from "../parts/table";
import { plotFrame } from "../plots/frame";
import { nearestAt } from "../plots/scale";
import { withLook } from "../state";
import { count, distance, length } from "../words/figures";
import { ladderOf, RUNG_PX, rungsOf, type Ladder, type Rung } from "./ladder";
import { verdictWords } from "./words";

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
