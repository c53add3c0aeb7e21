/** Registers every custom function by its id. Ids are a file format: never change one. */
import { coverage, gaps, worth } from "./bag";
import { card, needed, smooth, trend } from "./carry";
import { learn } from "./learn";
import { notes } from "./notes";
import { best, chance, options, plan, power, strokes } from "./pick";
import { air, drift, flight, playsBand, playsLike } from "./plays";
import { crosswind, headwind, level, rise } from "./sight";

const functions = {
  AIR: air,
  BEST: best,
  CARD: card,
  CHANCE: chance,
  COVERAGE: coverage,
  CROSSWIND: crosswind,
  DRIFT: drift,
  FLIGHT: flight,
  GAPS: gaps,
  HEADWIND: headwind,
  LEARN: learn,
  LEVEL: level,
  NEEDED: needed,
  NOTES: notes,
  OPTIONS: options,
  PLAN: plan,
  PLAYSBAND: playsBand,
  PLAYSLIKE: playsLike,
  POWER: power,
  RISE: rise,
  SMOOTH: smooth,
  STROKES: strokes,
  TREND: trend,
  WORTH: worth,
};

for (const [id, fn] of Object.entries(functions)) CustomFunctions.associate(id, fn);
