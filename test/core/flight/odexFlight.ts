/**
 * The equations of flight once more, from the physics and not from this project's code: in
 * ground axes with vectors, for the general-purpose ODE solver `odex` (Gragg-Bulirsch-Stoer).
 */
import { Solver } from "odex";
import { DISC_POLARS, PLATE_DRAG, RELEASE_HEIGHT_M } from "../../../src/core/constants";
import type { DiscType } from "../../../src/core/types";

type Vector = readonly [number, number, number];

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const plus = (a: Vector, share: number, b: Vector): Vector => [
  a[0] + share * b[0],
  a[1] + share * b[1],
  a[2] + share * b[2],
];
const scaled = (a: Vector, share: number): Vector => plus([0, 0, 0], share, a);

export interface OdexThrow {
  readonly type: DiscType;
  readonly speedMps: number;
  readonly elevationRad: number;
  readonly headwindMps: number;
  readonly crosswindMps: number;
  readonly densityKgM3: number;
  readonly massKg?: number;
}

/** Position and velocity: along, height, to the right, m and m/s. */
type Motion = number[];

/** Where the disc is after `timeS`: along, height, to the right, m. */
export const odexPosition = (thrown: OdexThrow, timeS: number): Vector =>
  fly(thrown, released(thrown), timeS).slice(0, 3) as unknown as Vector;

const released = ({ elevationRad, speedMps }: OdexThrow): Motion => [
  ...[0, RELEASE_HEIGHT_M, 0],
  ...[speedMps * Math.cos(elevationRad), speedMps * Math.sin(elevationRad), 0],
];

/** The flight goes on from there for `timeS`. */
function fly(thrown: OdexThrow, from: Motion, timeS: number): Motion {
  const { type, elevationRad, densityKgM3, massKg = 0.175 } = thrown;
  const polar = DISC_POLARS[type];
  const wind: Vector = [-thrown.headwindMps, 0, thrown.crosswindMps];
  const face: Vector = [-Math.sin(elevationRad), Math.cos(elevationRad), 0];
  const area = (Math.PI * polar.diameterM ** 2) / 4;
  const stall = (25 * Math.PI) / 180;

  const slope = (_time: number, state: number[]): number[] => {
    const velocity = state.slice(3) as unknown as Vector;
    const air = plus(velocity, -1, wind);
    const speed = Math.sqrt(dot(air, air));
    const along = scaled(air, 1 / speed);
    const attack = -Math.asin(dot(along, face));
    const flying = Math.max(-stall, Math.min(stall, attack));
    const share = Math.max(0, (Math.abs(attack) - stall) / (Math.PI / 2 - stall));
    let lift = polar.lift + polar.liftSlope * flying;
    let drag = polar.leastDrag + polar.dragRise * (flying - polar.leastDragRad) ** 2;
    lift *= Math.cos((Math.PI / 2) * share);
    drag += (PLATE_DRAG - drag) * Math.sin((Math.PI / 2) * share);
    const across = plus(face, -dot(face, along), along);
    const up = scaled(across, 1 / Math.sqrt(dot(across, across)));
    const pressure = (densityKgM3 * speed * speed * area) / (2 * massKg);
    const force = plus(scaled(up, pressure * lift), -pressure * drag, along);
    return [...velocity, force[0], force[1] - 9.80665, force[2]];
  };

  const solver = new Solver(6);
  solver.absoluteTolerance = solver.relativeTolerance = 1e-10;
  return solver.solve(slope, 0, [...from], timeS).y;
}

const HEIGHT = 1;
const CLIMB = 4;

/** Where the disc comes down to a height, m, as `odexPosition`; null where it never gets up there. */
export function odexLanding(thrown: OdexThrow, heightM: number): Vector | null {
  const stepS = 0.5;
  let before = released(thrown);
  let after = fly(thrown, before, stepS);
  while (after[HEIGHT]! >= heightM || after[CLIMB]! > 0) {
    before = after;
    after = fly(thrown, before, stepS);
  }
  if (before[HEIGHT]! < heightM) {
    // Still climbing when the step began: it may have been higher in between.
    let [climbing, falling] = [0, stepS];
    while (falling - climbing > 1e-6) {
      const timeS = (climbing + falling) / 2;
      if (fly(thrown, before, timeS)[CLIMB]! > 0) climbing = timeS;
      else falling = timeS;
    }
    if (fly(thrown, before, climbing)[HEIGHT]! < heightM) return null;
  }
  // Newton's method from below the height, falling.
  let timeS = stepS;
  for (let turn = 0; turn < 9; turn++) {
    const at = fly(thrown, before, timeS);
    const lateS = (heightM - at[HEIGHT]!) / -at[CLIMB]!;
    if (Math.abs(lateS) < 1e-8) break;
    timeS -= lateS;
  }
  return fly(thrown, before, timeS).slice(0, 3) as unknown as Vector;
}
