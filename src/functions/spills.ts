/** How each answer spills: a header row, then one row a record, in the units of the settings. */
import type { CoverageRow } from "../core/bag/coverage";
import type { Gap } from "../core/bag/gaps";
import type { Twins } from "../core/bag/twins";
import type { Worth } from "../core/bag/worth";
import type { Trend } from "../core/carry/trend";
import type { PlannedHole } from "../core/choice/plan";
import type { FlightPoint } from "../core/flight/path";
import type { Factors } from "../core/learn/learnFactors";
import type { Option, Settings } from "../core/types";
import { fromMetres } from "../core/units";
import { noAnswer, type Spill } from "./answer";

type Metres = (metres: number) => number;
const inUnitOf =
  ({ distanceUnit }: Settings): Metres =>
  (metres) =>
    fromMetres(metres, distanceUnit);

export function optionCells(options: readonly Option[], settings: Settings): Spill {
  const unit = inUnitOf(settings);
  return [
    ["Disc", "Power", "Chance", "Leaves", "Strokes", "Long/short", "Aim"],
    ...options.map((option) => [
      option.disc,
      option.power,
      option.chance,
      unit(option.leavesM),
      option.strokes,
      unit(option.longM),
      unit(option.aimM),
    ]),
  ];
}

export function planCells(plan: readonly PlannedHole[], settings: Settings): Spill {
  const unit = inUnitOf(settings);
  const picked = ({ option, second }: PlannedHole, chosen: Option): Spill[number] => [
    chosen.disc,
    chosen.power,
    chosen.chance,
    unit(chosen.leavesM),
    option === null ? "" : chosen.strokes,
    second?.disc ?? "",
  ];
  return [
    [
      "Hole",
      "Plays like",
      "Low",
      "High",
      "Disc",
      "Power",
      "Chance",
      "Leaves",
      "Strokes",
      "Second choice",
    ],
    ...plan.map((planned) => {
      const plays = [planned.playsLikeM, planned.lowM, planned.highM].map((metres) =>
        metres === null ? "" : unit(metres),
      );
      const pick = planned.option
        ? picked(planned, planned.option)
        : [noAnswer(planned.why ?? ""), "", "", "", "", ""];
      return [planned.hole, ...plays, ...pick];
    }),
  ];
}
