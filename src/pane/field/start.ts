/** The boxes from which a session starts. */
import { dayFromIso } from "../../core/log/cell";
import { toMetres, toMps } from "../../core/units";
import type { Settings } from "../../core/types";
import { needNumber } from "../words/numberIn";
import type { Order, Session } from "./session";

export interface StartForm {
  /** yyyy-mm-dd; "" for today. */
  readonly day: string;
  readonly headwind: string;
  readonly rise: string;
  readonly order: Order;
  readonly margin: string;
}

export const EMPTY_START: StartForm = {
  day: "",
  headwind: "",
  rise: "",
  order: "worth",
  margin: "",
};

/** Usual margin, in the distance unit: near enough to choose between neighbours in a bag. */
export const usualMargin = ({ distanceUnit }: Settings): string =>
  distanceUnit === "ft" ? "10" : "3";

/** A session out of the boxes; what is unclear is thrown as a sentence. */
export function sessionFrom(form: StartForm, settings: Settings, today: number): Session {
  const { distanceUnit, windUnit } = settings;
  const margin = needNumber(form.margin, "Known to ±", Number(usualMargin(settings)));
  if (margin <= 0) throw new Error("Known to ± must be above 0.");
  return {
    day: dayFromIso(form.day) ?? today,
    headwindMps: toMps(needNumber(form.headwind, "Headwind", 0), windUnit),
    riseM: toMetres(needNumber(form.rise, "Rise", 0), distanceUnit),
    order: form.order,
    marginM: toMetres(margin, distanceUnit),
    chosen: null,
    skipped: [],
    carry: "",
    doubted: null,
    offline: null,
  };
}
