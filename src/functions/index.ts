/** Registers every custom function by its id. Ids are a file format: never change one. */
import { coverage, gaps, worth } from "./bag";
import { card, form, needed, practice, series, smooth, wear } from "./carry";
import { calibration, learn, putting } from "./rounds";
import { notes } from "./notes";
import { atPower, best, chance, options, plan, strokes } from "./pick";
import { air, drift, flight, playsBand, playsLike } from "./plays";
import { crosswind, headwind, level, rise } from "./sight";

const functions = {
  AIR: air,
  ATPOWER: atPower,
  BEST: best,
  CALIBRATION: calibration,
  CARD: card,
  CHANCE: chance,
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
  PLAN: plan,
  PLAYSBAND: playsBand,
  PLAYSLIKE: playsLike,
  PRACTICE: practice,
  PUTTING: putting,
  RISE: rise,
  SERIES: series,
  SMOOTH: smooth,
  STROKES: strokes,
  WEAR: wear,
  WORTH: worth,
};

for (const [id, fn] of Object.entries(functions)) CustomFunctions.associate(id, fn);
