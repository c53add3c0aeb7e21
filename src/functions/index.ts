/** Registers every custom function by its id. Ids are a file format: never change one. */
import { coverage, gaps, worth } from "./bag";
import { card, needed, smooth, wear } from "./carry";
import { learn } from "./rounds";
import { notes } from "./notes";
import { atPower, best, chance, options, plan, strokes } from "./pick";
import { air, drift, flight, playsBand, playsLike } from "./plays";
import { crosswind, headwind, level, rise } from "./sight";

const functions = {
  AIR: air,
  ATPOWER: atPower,
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
  RISE: rise,
  SMOOTH: smooth,
  STROKES: strokes,
  WEAR: wear,
  WORTH: worth,
};

for (const [id, fn] of Object.entries(functions)) CustomFunctions.associate(id, fn);
