import { html, svg, type SVGTemplateResult, type TemplateResult } from "lit";
import type { flightPath } from "../../core/flight/path";
import type { Settings } from "../../core/types";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { table } from "../parts/table";
import { plotFrame } from "../plots/frame";
import { nearestAt, pathThrough } from "../plots/scale";
import { withLook } from "../state";
import { distance, length, plain } from "../words/figures";
import { flightSide, type FlightSide } from "./flightSide";
import type { Task } from "./task";

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
      hint: `Heights are drawn ${side.stretch} times. A typical disc that gets there with the least effort.`,
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
