import { nothing, svg, type TemplateResult } from "lit";
import type { DistanceUnit } from "../../core/units";
import { fromMetres } from "../../core/units";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { table } from "../parts/table";
import { plotFrame } from "../plots/frame";
import { nearestAt, scale } from "../plots/scale";
import { withLook } from "../state";
import { day, distance, length } from "../words/figures";
import { dotsOf, intervalOf, stacked, type Dot } from "./dots";

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
