/** Cards made by hand, for tests that want to say what is known of a disc. */
import { DEFAULT_SETTINGS } from "../../src/core/log/readSettings";
import type { Card, CardRow, Hole, Settings } from "../../src/core/types";

/** A disc known so well that the next throw has exactly the spread given. */
export const disc = (name: string, carryM: number, change: Partial<CardRow> = {}): CardRow => ({
  disc: name,
  type: null,
  line: "",
  softest: 0.8,
  inBag: true,
  mu: Math.log(carryM),
  scale: 0.07,
  freedom: 6,
  evidence: Infinity,
  side: { biasRad: 0, scaleRad: 0.06, freedom: 6, throws: 0 },
  throws: 9,
  leftOut: 0,
  lastDay: null,
  verdict: "too few",
  ...change,
});

export const cardOf = (...rows: CardRow[]): Card => ({
  rows: [...rows].sort((a, b) => b.mu - a.mu),
  population: { scale: 0.07, freedom: 4 },
  leftOut: [],
});

export const holeOf = (distanceM: number, change: Partial<Hole> = {}): Hole => ({
  row: 2,
  course: "",
  hole: "1",
  par: null,
  distanceM,
  riseM: 0,
  headwindMps: 0,
  longTroubleM: null,
  shortTroubleM: null,
  leftTroubleM: null,
  rightTroubleM: null,
  bearingDegrees: null,
  crosswindMps: 0,
  line: "",
  note: "",
  ...change,
});

export const settingsWith = (change: Partial<Settings>): Settings => ({
  ...DEFAULT_SETTINGS,
  ...change,
});
