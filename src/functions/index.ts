/** Registers every custom function by its id. Ids are a file format: never change one. */
import { card, needed, smooth, trend } from "./carry";
import { notes } from "./notes";
import { best, chance, options, plan, power, strokes } from "./pick";
import { air, drift, flight, playsBand, playsLike } from "./plays";
import { crosswind, headwind, level, rise } from "./sight";

const functions = {
  AIR: air,
  BEST: best,
  CARD: card,
  CHANCE: chance,
  CROSSWIND: crosswind,
  DRIFT: drift,
  FLIGHT: flight,
  HEADWIND: headwind,
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
};

for (const [id, fn] of Object.entries(functions)) CustomFunctions.associate(id, fn);
