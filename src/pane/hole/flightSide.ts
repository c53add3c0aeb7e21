/** Where the flight, the slope, the target and the circle stand on the plot. */
import type { flightPath } from "../../core/flight/path";
import type { Shot } from "../../core/types";
import { pathThrough, scale } from "../plots/scale";

type PathPoint = ReturnType<typeof flightPath>[number];

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface FlightSide {
  readonly width: number;
  readonly height: number;
  readonly points: readonly (PathPoint & Spot)[];
  readonly apex: PathPoint & Spot;
  /** Near and far edge of the circle on the slope. */
  readonly circle: readonly [Spot, Spot];
  /** The slope down to the plot's foot, as a path. */
  readonly ground: string;
  /** How many times heights are drawn. */
  readonly stretch: number;
  /** Which points the table shows: each so manieth. */
  readonly everyRow: number;
}

const STRETCH = 3;
const HEAD_ROOM = 22;
const FOOT = 30;
const TABLE_ROWS = 12;

export function flightSide(
  shot: Shot,
  path: readonly PathPoint[],
  circleM: number,
  width: number,
): FlightSide {
  const { distanceM, riseM } = shot;
  const farM = distanceM + circleM * 1.2;
  const x = scale([0, farM], [0, width]);
  const perM = (width / farM) * STRETCH;
  const slope = (alongM: number): number => (riseM * alongM) / distanceM;
  const heights = [...path.map(({ heightM }) => heightM), 0, slope(farM)];
  const highM = Math.max(...heights);
  const lowM = Math.min(...heights);
  const height = Math.round((highM - lowM) * perM) + HEAD_ROOM + FOOT;
  const y = (heightM: number): number => HEAD_ROOM + (highM - heightM) * perM;
  const onSlope = (alongM: number): Spot => ({ x: x(alongM), y: y(slope(alongM)) });
  const points = path.map((point) => ({ ...point, x: x(point.alongM), y: y(point.heightM) }));
  const corners = [onSlope(0), onSlope(farM), { x: width, y: height }, { x: 0, y: height }];
  return {
    width,
    height,
    points,
    apex: points.reduce((top, point) => (point.heightM > top.heightM ? point : top)),
    circle: [onSlope(distanceM - circleM), onSlope(distanceM + circleM)],
    ground: `${pathThrough(corners.map((corner) => [corner.x, corner.y]))}Z`,
    stretch: STRETCH,
    everyRow: Math.max(1, Math.ceil(points.length / TABLE_ROWS)),
  };
}
