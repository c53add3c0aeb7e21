/** A result on its way into the table Results. */
import { planCourse, type PlannedHole } from "../../core/choice/plan";
import type { Hole, Settings } from "../../core/types";
import { fromMetres, fromMps } from "../../core/units";
import type { CellValue, Row } from "../../workbook/port";
import { type Book, oncePer } from "../book/book";
import { type Answer, attempt } from "../controller";
import { needNumber } from "../words/figures";

/** What stands in Course. */
export interface CourseForm {
  /** Row of the hole that is open; null for none. */
  readonly open: number | null;
  /** Disc thrown there; "" for the planned one. */
  readonly disc: string;
  /** Per cent of smooth; "" for the planned power. */
  readonly power: string;
  readonly finish: string;
}

export const EMPTY_COURSE: CourseForm = { open: null, disc: "", power: "", finish: "" };

export const opened = (row: number | null): CourseForm => ({ ...EMPTY_COURSE, open: row });

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

/** The row to add; what is missing or unclear is thrown as a sentence. */
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
    Finish: needNumber(form.finish, "Finish"),
  };
}

/** A hole's name is a number wherever it looks like one, as in the course itself. */
const holeCell = ({ hole }: Hole): CellValue => (/^\d+$/.test(hole) ? Number(hole) : hole);
