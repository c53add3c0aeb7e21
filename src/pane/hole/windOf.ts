/** The wind of a hole, by whichever way the player knows it. */
import { FLIGHT_WIND_SHARE } from "../../core/constants";
import { BEAUFORT, crosswindMps, headwindMps, parseDirection } from "../../core/flight/wind";
import type { Settings } from "../../core/types";
import { toMps } from "../../core/units";
import { needNumber } from "../words/numberIn";
import type { HoleForm } from "./form";

export interface Wind {
  readonly headwindMps: number;
  /** From the left positive; 0 where only the headwind is known. */
  readonly crosswindMps: number;
}

/** Where a wind comes from, for someone who faces the target: words and degrees to the right. */
export const SIDES = [
  ["0", "ahead"],
  ["45", "ahead right"],
  ["90", "the right"],
  ["135", "behind right"],
  ["180", "behind"],
  ["225", "behind left"],
  ["270", "the left"],
  ["315", "ahead left"],
] as const;

/** What each force looks like. */
export const FORCES = BEAUFORT.map(
  ({ force, name, sight }) => [String(force), `${sight} (${name})`] as const,
);

export function windOf(form: HoleForm, settings: Settings): Wind {
  if (form.windBy === "felt") {
    const felt = needNumber(form.headwind, "Headwind", 0);
    return { headwindMps: toMps(felt, settings.windUnit), crosswindMps: 0 };
  }
  return form.windBy === "forecast" ? byForecast(form, settings) : byEye(form);
}

function byForecast(form: HoleForm, settings: Settings): Wind {
  const speedMps =
    toMps(needNumber(form.speed, "Wind speed", 0), settings.windUnit) * FLIGHT_WIND_SHARE;
  if (speedMps === 0) return { headwindMps: 0, crosswindMps: 0 };
  const from = parseDirection(form.windFrom);
  const bearing = parseDirection(form.bearing);
  return {
    headwindMps: headwindMps(speedMps, from, bearing),
    crosswindMps: crosswindMps(speedMps, from, bearing),
  };
}

function byEye(form: HoleForm): Wind {
  const seen = BEAUFORT.find(({ force }) => String(force) === form.force);
  const speedMps = (seen?.usualMps ?? 0) * FLIGHT_WIND_SHARE;
  const from = Number(form.side);
  return {
    headwindMps: headwindMps(speedMps, from, 0),
    crosswindMps: crosswindMps(speedMps, from, 0),
  };
}
