/** A result on its way into the table Results. */
import { planCourse, type PlannedHole } from "../../core/choice/plan";
import type { Hole, Settings } from "../../core/types";
import { missContradicts } from "../../core/log/readRounds";
import { type DistanceUnit, fromMetres, fromMps, toMetres } from "../../core/units";
import type { CellValue, Row } from "../../workbook/port";
import { type Book, oncePer } from "../book/book";
import { type Answer, attempt } from "../controller";
import { needNumber, numberIn } from "../words/figures";

/** What stands in Course. */
export interface CourseForm {
  /** Row of the hole that is open; null for none. */
  readonly open: number | null;
  /** Disc thrown there; "" for the planned one. */
  readonly disc: string;
  /** Per cent of smooth; "" for the planned power. */
  readonly power: string;
  /** null where it was not noted. */
  readonly inCircle: boolean | null;
  /** Long plus, short minus; right plus, left minus; "" where it was not noted. */
  readonly finish: string;
  readonly offline: string;
  /** Distance of the putts being noted. */
  readonly putt: string;
  /** Whose finishes are shown; "" for those of all discs. */
  readonly shown: string;
}

export const EMPTY_COURSE: CourseForm = {
  open: null,
  disc: "",
  power: "",
  inCircle: null,
  finish: "",
  offline: "",
  putt: "",
  shown: "",
};

/** The form for a result of that hole, with what does not belong to a hole kept. */
export const opened = ({ putt, shown }: CourseForm, row: number | null): CourseForm => ({
  ...EMPTY_COURSE,
  open: row,
  putt,
  shown,
});

/** One press of Short, Long, Left or Right, and what the first press makes of a throw outside the circle. */
const STEPS: Readonly<Record<DistanceUnit, { readonly step: number; readonly outside: number }>> = {
  ft: { step: 10, outside: 40 },
  m: { step: 3, outside: 12 },
};

/**
 * A finish or offline after one press: on by a step, or, for the first press after a throw outside the
 * circle, just outside it, as long as nothing was noted the other way.
 */
export function pressed(
  form: CourseForm,
  field: "finish" | "offline",
  sign: 1 | -1,
  unit: DistanceUnit,
): string {
  const { step, outside } = STEPS[unit];
  const now = numberIn(form[field]);
  if (now.kind === "number") return String(now.value + sign * step);
  const other = numberIn(form[field === "finish" ? "offline" : "finish"]);
  return String(sign * (form.inCircle === false && other.kind !== "number" ? outside : step));
}

// The plan of the course, and what it adds up to.

export interface Planned {
  readonly hole: Hole;
  readonly plan: PlannedHole;
}

/** One entry a hole, in the order of the course. */
export const planOf = oncePer(({ holes, card, settings }: Book): Answer<readonly Planned[]> =>
  attempt(() => planCourse(holes, card, settings).map((plan, at) => ({ hole: holes[at]!, plan }))),
);

export interface Totals {
  readonly holes: number;
  /** Holes that have an answer, and their expected strokes. */
  readonly answered: number;
  readonly strokes: number;
  /** Par of the answered holes; null where one of them has none. */
  readonly par: number | null;
}

export function totalsOf(planned: readonly Planned[]): Totals {
  const answered = planned.filter(({ plan }) => plan.option !== null);
  const pars = answered.map(({ hole }) => hole.par);
  return {
    holes: planned.length,
    answered: answered.length,
    strokes: answered.reduce((sum, { plan }) => sum + plan.option!.strokes, 0),
    par: pars.includes(null) ? null : pars.reduce<number>((sum, par) => sum + (par ?? 0), 0),
  };
}

/** Digits that survive the way through SI and back. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** The row to add; what is missing, unclear or contradicts itself is thrown as a sentence. */
export function resultRow(
  form: CourseForm,
  { hole, plan }: Planned,
  settings: Settings,
  today: number,
): Row {
  const disc = form.disc === "" ? plan.option?.disc : form.disc;
  if (!disc) throw new Error("Say which disc it was.");
  const planned = disc === plan.option?.disc ? plan.option.power * 100 : 100;
  const percent = needNumber(form.power, "Power", Math.round(planned));
  if (percent <= 0) throw new Error("Power must be above 0.");
  const finish = missIn(form.finish, "Long or short");
  const offline = missIn(form.offline, "Left or right");
  if (finish === "" && offline === "" && form.inCircle === null)
    throw new Error("Say whether it finished in the circle, or where.");
  needAgreement(form, finish, offline, settings);
  const metres = (value: number): CellValue => tidy(fromMetres(value, settings.distanceUnit)) || "";
  return {
    Date: today,
    Course: hole.course,
    Hole: holeCell(hole),
    Distance: metres(hole.distanceM),
    Rise: metres(hole.riseM),
    Headwind: tidy(fromMps(hole.headwindMps, settings.windUnit)) || "",
    Disc: disc,
    Power: percent === 100 ? "" : percent / 100,
    Finish: finish,
    Offline: offline,
    "In circle": form.inCircle === null ? "" : form.inCircle ? "yes" : "no",
  };
}

const missIn = (text: string, name: string): number | "" =>
  numberIn(text).kind === "blank" ? "" : needNumber(text, name);

/** What the sheet would refuse is not written. */
function needAgreement(
  { inCircle }: CourseForm,
  finish: number | "",
  offline: number | "",
  settings: Settings,
): void {
  if (inCircle === null) return;
  const metres = (value: number | ""): number => toMetres(value || 0, settings.distanceUnit);
  const far = missContradicts(
    inCircle,
    finish === "" ? null : metres(finish),
    offline === "" ? null : metres(offline),
    settings.circleM,
  );
  if (far)
    throw new Error(
      `In the circle: ${inCircle ? "yes" : "no"} and the figures of the finish do not agree. Look at both.`,
    );
}

/** A hole's name is a number wherever it looks like one, as in the course itself. */
const holeCell = ({ hole }: Hole): CellValue => (/^\d+$/.test(hole) ? Number(hole) : hole);
