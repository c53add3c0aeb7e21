/** From what was typed to the throw's task, in SI. What is missing or unclear is thrown as a sentence. */
import { levelM, riseM } from "../../core/flight/wind";
import type { Hole, Settings, Shot } from "../../core/types";
import { toMetres, toRadians } from "../../core/units";
import { numberIn, needNumber } from "../words/numberIn";
import type { HoleForm } from "./form";
import { windOf, type Wind } from "./windOf";

export type Task = Shot & Pick<Hole, "longTroubleM" | "shortTroubleM" | "line"> & Wind;

/** Whether there is nothing to answer yet, rather than something wrong. */
export const isBlankForm = (form: HoleForm): boolean =>
  numberIn(form.sight === "level" ? form.distance : form.range).kind === "blank";

export function taskOf(form: HoleForm, settings: Settings): Task {
  const metres = (text: string, name: string, blank: number | null = null): number =>
    toMetres(needNumber(text, name, blank), settings.distanceUnit);
  const trouble = (text: string, name: string): number | null =>
    numberIn(text).kind === "blank" ? null : metres(text, name);
  return {
    ...seen(form, metres),
    ...windOf(form, settings),
    longTroubleM: trouble(form.longTrouble, "Trouble behind"),
    shortTroubleM: trouble(form.shortTrouble, "Trouble in front"),
    line: form.line,
  };
}

type Metres = (text: string, name: string, blank?: number | null) => number;

function seen(form: HoleForm, metres: Metres): { distanceM: number; riseM: number } {
  if (form.sight === "level") {
    const distanceM = metres(form.distance, "Distance");
    if (distanceM <= 0) throw new Error("Distance must be above 0.");
    return { distanceM, riseM: metres(form.rise, "Rise", 0) };
  }
  const rangeM = metres(form.range, "Range");
  if (rangeM <= 0) throw new Error("Range must be above 0.");
  const angle = toRadians(needNumber(form.angle, "Angle", 0));
  return { distanceM: levelM(rangeM, angle), riseM: riseM(rangeM, angle) };
}
