/** Pictures of what happened: told against happened, finishes from above, putts made. */
import { svg, type SVGTemplateResult, type TemplateResult } from "lit";
import type { Calibration } from "../../core/learn/calibration";
import type { Ellipse, Scatter } from "../../core/learn/finishes";
import type { LearntPutt } from "../../core/learn/learnPutting";
import type { PuttingRow, Settings } from "../../core/types";
import { type DistanceUnit, fromMetres } from "../../core/units";
import type { Desk } from "../controller";
import { table } from "../parts/blocks";
import { plotFrame } from "../plots/frame";
import { nearestAt, pathThrough, scale, type Scale } from "../plots/scale";
import { withLook } from "../state";
import { count, distance, length, share } from "../words/figures";
import type { PuttsAt } from "./told";

const LEFT = 40;
const FOOT = 24;

const lookAt =
  (desk: Desk, id: string) =>
  (at: number | null): void =>
    desk.change((state) => withLook(state, id, at));

const percentAxis = (y: Scale, from: number, to: number): SVGTemplateResult =>
  svg`${y.ticks.map(
    (tick) => svg`<line class="axis" x1=${from} x2=${to} y1=${y(tick)} y2=${y(tick)}></line>
      <text class="soft" x="0" y=${y(tick) + 4}>${share(tick)}</text>`,
  )}`;

/** Chances told from left to right, what happened upwards: on the line both are the same. */
export function reliabilityPlot(desk: Desk, { bins }: Calibration): TemplateResult {
  const id = "reliability";
  const width = desk.state.plotWidth;
  const height = Math.min(width, 300);
  const x = scale([0, 1], [LEFT, width - 12]);
  const y = scale([0, 1], [height - FOOT - 16, 10], 4);
  const looked = desk.state.looked[id] ?? null;
  const xs = bins.map(({ told }) => x(told));
  return plotFrame({
    id,
    label: "Chances told and what happened",
    width,
    height,
    drawing: svg`${percentAxis(y, LEFT, width)}
      ${x.ticks.map((tick) => svg`<text class="soft middle" x=${x(tick)} y=${height - FOOT}>${share(tick)}</text>`)}
      <path class="curve other" d=${pathThrough([
        [x(0), y(0)],
        [x(1), y(1)],
      ])}></path>
      ${bins.map(
        (
          { happened, low, high },
          at,
        ) => svg`<line class="span" x1=${xs[at]!} x2=${xs[at]!} y1=${y(low)} y2=${y(high)}></line>
        <circle class="dot now" cx=${xs[at]!} cy=${y(happened)} r=${looked === at ? 7 : 5}></circle>`,
      )}
      <text class="soft halo" x=${LEFT + 4} y="22">happened</text>
      <text class="soft end" x=${width - 2} y=${height - 6}>told</text>`,
    facts: bins.map(
      ({ told, happened, low, high, rows }) =>
        `Told ${share(told)}, happened ${share(happened)} (${share(low)} to ${share(high)}), ${count(rows, "throw")}.`,
    ),
    looked,
    onLook: lookAt(desk, id),
    nearest: (to) => nearestAt(xs, to),
    hint: "Dot: throws of like chances. Bar: 80 % interval. On the dashed line the chance came true.",
    table: table(
      "Chances told and what happened",
      [["Told"], ["Happened", "number"], ["80 % interval", "number"], ["Throws", "number"]],
      bins.map(({ told, happened, low, high, rows }) => [
        share(told),
        share(happened),
        `${share(low)} to ${share(high)}`,
        String(rows),
      ]),
    ),
  });
}

const outline = (
  { alongM, sideM, longM, shortM, turnRad }: Ellipse,
  at: (alongM: number, sideM: number) => readonly [number, number],
): string =>
  `${pathThrough(
    Array.from({ length: 73 }, (_, step) => {
      const angle = (step / 72) * 2 * Math.PI;
      const [long, across] = [longM * Math.cos(angle), shortM * Math.sin(angle)];
      return at(
        alongM + long * Math.cos(turnRad) - across * Math.sin(turnRad),
        sideM + long * Math.sin(turnRad) + across * Math.cos(turnRad),
      );
    }),
  )}Z`;

/** Finishes from above, thrown from below, the target in the middle of its circle. */
export function finishPlot(
  desk: Desk,
  { finishes, half, eightTenths }: Scatter,
  { circleM, distanceUnit }: Pick<Settings, "circleM" | "distanceUnit">,
): TemplateResult {
  const id = "finishes";
  const width = desk.state.plotWidth;
  const height = Math.min(width, 340);
  const sides = finishes.map(({ sideM }) => Math.abs(sideM));
  const alongs = finishes.map(({ alongM }) => Math.abs(alongM));
  const reach = eightTenths ? eightTenths.longM : 0;
  const wide = Math.max(circleM * 1.1, reach, ...sides) / (width / 2 - 12);
  const high = Math.max(circleM * 1.1, reach, ...alongs) / (height / 2 - 20);
  const metresPx = Math.max(wide, high);
  const place = (alongM: number, sideM: number): readonly [number, number] => [
    width / 2 + sideM / metresPx,
    height / 2 - alongM / metresPx,
  ];
  const [middleX, middleY] = place(0, 0);
  const spots = finishes.map(({ alongM, sideM }) => place(alongM, sideM));
  const looked = desk.state.looked[id] ?? null;
  const words = finishes.map((finish) => whereWords(finish, distanceUnit));
  return plotFrame({
    id,
    label: "Finishes around the target, from above",
    width,
    height,
    drawing: svg`<circle class="ground" cx=${middleX} cy=${middleY} r=${circleM / metresPx}></circle>
      <line class="axis" x1=${middleX} x2=${middleX} y1="14" y2=${height - 14}></line>
      ${eightTenths ? svg`<path class="curve other" d=${outline(eightTenths, place)}></path>` : ""}
      ${half ? svg`<path class="curve" d=${outline(half, place)}></path>` : ""}
      ${spots.map(
        ([cx, cy], at) =>
          svg`<circle class="dot" cx=${cx} cy=${cy} r=${looked === at ? 7 : 4}></circle>`,
      )}
      <circle class="bar" cx=${middleX} cy=${middleY} r="4"></circle>
      <text class="soft middle halo" x=${middleX} y="11">long</text>
      <text class="soft middle halo" x=${middleX} y=${height - 3}>short</text>
      <text class="soft halo" x="0" y=${middleY + 4}>left</text>
      <text class="soft end halo" x=${width} y=${middleY + 4}>right</text>
      <text class="soft halo" x=${middleX + (circleM / metresPx) * 0.71 + 3} y=${middleY + (circleM / metresPx) * 0.71 + 10}>circle</text>`,
    facts: words.map((where) => `${where}.`),
    looked,
    onLook: lookAt(desk, id),
    nearest: (x, y) =>
      nearestAt(
        spots.map(([cx, cy]) => Math.hypot(cx - x, cy - y)),
        0,
      ),
    hint: half
      ? "From above. Full line: half of your finishes; dashed: eight of ten."
      : "From above. From five finishes on, ellipses show where most of them are.",
    table: table(
      "Finishes around the target",
      [["Finish"], [`Long, ${distanceUnit}`, "number"], [`Right, ${distanceUnit}`, "number"]],
      finishes.map(({ alongM, sideM }, at) => [
        String(at + 1),
        length(alongM, distanceUnit),
        length(sideM, distanceUnit),
      ]),
    ),
  });
}

/** "12 ft short, 8 ft left" */
function whereWords({ alongM, sideM }: Scatter["finishes"][number], unit: DistanceUnit): string {
  const along = `${distance(Math.abs(alongM), unit)} ${alongM < 0 ? "short" : "long"}`;
  return `${along}, ${distance(Math.abs(sideM), unit)} ${sideM < 0 ? "left" : "right"}`;
}

/** The share of putts made by distance: what was learnt, what the settings say, and what was made. */
export function puttingPlot(
  desk: Desk,
  curve: readonly LearntPutt[],
  putts: readonly PuttsAt[],
  { putting, distanceUnit }: { putting: readonly PuttingRow[]; distanceUnit: DistanceUnit },
): TemplateResult {
  const id = "putting";
  const width = desk.state.plotWidth;
  const height = 210;
  const far = fromMetres(curve.at(-1)!.distanceM, distanceUnit);
  const x = scale([0, far], [LEFT, width - 6]);
  const y = scale([0, 1], [height - FOOT, 12], 4);
  const px = (metres: number): number => x(fromMetres(metres, distanceUnit));
  const within = putts.filter(({ distanceM }) => fromMetres(distanceM, distanceUnit) <= far);
  const settled = putting.filter(({ distanceM }) => fromMetres(distanceM, distanceUnit) <= far);
  const band = [
    ...curve.map(({ distanceM, high }) => [px(distanceM), y(high)] as const),
    ...[...curve].reverse().map(({ distanceM, low }) => [px(distanceM), y(low)] as const),
  ];
  const xs = curve.map(({ distanceM }) => px(distanceM));
  const looked = desk.state.looked[id] ?? null;
  return plotFrame({
    id,
    label: "Putts made by distance",
    width,
    height,
    drawing: svg`<path class="gap" d="${pathThrough(band)}Z"></path>
      ${percentAxis(y, LEFT, width)}
      ${x.ticks.map((tick) => svg`<text class="soft middle" x=${x(tick)} y=${height - 6}>${tick}</text>`)}
      <path class="curve other" d=${pathThrough(settled.map((row) => [px(row.distanceM), y(row.share)]))}></path>
      <path class="curve" d=${pathThrough(curve.map((putt) => [px(putt.distanceM), y(putt.share)]))}></path>
      ${within.map(
        ({ distanceM, made, tried }) =>
          svg`<circle class="dot" cx=${px(distanceM)} cy=${y(made / tried)} r=${Math.min(9, 2 + Math.sqrt(tried))}></circle>`,
      )}
      ${looked === null ? "" : svg`<line class="at" x1=${xs[looked] ?? LEFT} x2=${xs[looked] ?? LEFT} y1="12" y2=${height - FOOT}></line>`}`,
    facts: curve.map(
      (putt) =>
        `${distance(putt.distanceM, distanceUnit)}: ${share(putt.share)} (${share(putt.low)} to ${share(putt.high)}).`,
    ),
    looked,
    onLook: lookAt(desk, id),
    nearest: (to) => nearestAt(xs, to),
    hint: "Line: learnt, with its 80 % interval shaded. Dashed: the table in Settings. Dots: putts, larger for more of them.",
    table: table(
      "Putts made by distance",
      [[`Distance, ${distanceUnit}`], ["Made", "number"], ["80 % interval", "number"]],
      curve.map(({ distanceM, share: made, low, high }) => [
        length(distanceM, distanceUnit),
        share(made),
        `${share(low)} to ${share(high)}`,
      ]),
    ),
  });
}
