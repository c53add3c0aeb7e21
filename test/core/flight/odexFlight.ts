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

/** Where the disc is after `timeS`: along, height, to the right, m. */
export function odexPosition(thrown: OdexThrow, timeS: number): Vector {
  const { type, elevationRad, speedMps, densityKgM3, massKg = 0.175 } = thrown;
  const polar = DISC_POLARS[type];
  const wind: Vector = [-thrown.headwindMps, 0, thrown.crosswindMps];
  const nose: Vector = [Math.cos(elevationRad), Math.sin(elevationRad), 0];
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
  const start = [0, RELEASE_HEIGHT_M, 0, ...scaled(nose, speedMps)];
  return solver.solve(slope, 0, start, timeS).y.slice(0, 3) as unknown as Vector;
}
