/** Registers every custom function by its id. Ids are a file format: never change one. */
import { coverage, gaps, pack, worth } from "./bag";
import { card, form, needed, practice, series, smooth, wear } from "./carry";
import { calibration, learn, putting } from "./rounds";
import { notes } from "./notes";
import { atPower, best, chance, compare, options, plan, scores, strokes } from "./pick";
import { air, drift, flight, playsBand, playsLike } from "./plays";
import { crosswind, headwind, level, rise } from "./sight";

const functions = {
  AIR: air,
  ATPOWER: atPower,
  BEST: best,
  CALIBRATION: calibration,
  CARD: card,
  CHANCE: chance,
  COMPARE: compare,
  COVERAGE: coverage,
  CROSSWIND: crosswind,
  DRIFT: drift,
  FLIGHT: flight,
  FORM: form,
  GAPS: gaps,
  HEADWIND: headwind,
  LEARN: learn,
  LEVEL: level,
  NEEDED: needed,
  NOTES: notes,
  OPTIONS: options,
  PACK: pack,
  PLAN: plan,
  PLAYSBAND: playsBand,
  PLAYSLIKE: playsLike,
  PRACTICE: practice,
  PUTTING: putting,
  RISE: rise,
  SCORES: scores,
  SERIES: series,
  SMOOTH: smooth,
  STROKES: strokes,
  WEAR: wear,
  WORTH: worth,
};

for (const [id, fn] of Object.entries(functions)) CustomFunctions.associate(id, fn);
