/** How surely a disc is thrown: in the field, where the card comes from, and on the course. */
import { MOST_COURSE_FREEDOM, SOFTNESS_COST } from "../constants";
import type { CardRow, Settings } from "../types";

/**
 * What of a disc bears on where its throws end: ln(level, calm, smooth carry in m) of the next one ~
 * t_freedom(mu, scale), and its sideways angle about the line ~ a t of its own, the bias aimed off.
 */
export interface ThrowForm {
  readonly mu: number;
  readonly scale: number;
  readonly freedom: number;
  readonly side: { readonly scaleRad: number; readonly freedom: number };
}

/** What of a row of the card is thrown. */
export type ThrownRow = Pick<CardRow, "mu" | "scale" | "freedom" | "evidence" | "side">;

/** The next throw in the field: the doubt of its middle widens the spread. */
export const fieldForm = ({ mu, scale, freedom, evidence, side }: ThrownRow): ThrowForm => ({
  mu,
  scale: scale * Math.sqrt(1 + 1 / evidence),
  freedom,
  side,
});

/** What of the settings tells the course from the field. */
export type CourseSettings = Pick<
  Settings,
  "courseCarry" | "courseSpread" | "courseSideRad" | "today" | "todaySd"
>;

/**
 * The next throw on the course: carries times the factors of the course and of the day; the spread of the
 * course and the doubt of the day added in quadrature. Everything that speaks of a hole goes by this.
 *
 * @example
 * courseForm(row, DEFAULT_SETTINGS).scale // √(0.07² + 0.0735²) for a disc known well that spreads 0.07
 */
export function courseForm(row: ThrownRow, settings: CourseSettings): ThrowForm {
  const { mu, scale, freedom, side } = fieldForm(row);
  const { courseCarry, courseSpread, courseSideRad, today, todaySd } = settings;
  return {
    mu: mu + Math.log(courseCarry * today),
    scale: Math.hypot(scale, courseSpread, todaySd),
    freedom: Math.min(freedom, MOST_COURSE_FREEDOM),
    side: { scaleRad: Math.hypot(side.scaleRad, courseSideRad), freedom: side.freedom },
  };
}

/** ln(level, calm carry in m) of the next throw at one power ~ t(centre, scale) with the form's freedom. */
export interface PowerSpread {
  readonly centre: number;
  readonly scale: number;
}

/**
 * The next throw at `power`, a share of smooth above 0, towards a plays-like distance that is in `doubt`
 * by this share of itself. Away from smooth the spread grows (SOFTNESS_COST).
 *
 * @example
 * powerSpread(fieldForm(row), 1).centre // row.mu
 */
export const powerSpread = (
  { mu, scale }: Pick<ThrowForm, "mu" | "scale">,
  power: number,
  doubt = 0,
): PowerSpread => ({
  centre: mu + Math.log(power),
  scale: Math.hypot(scale, SOFTNESS_COST * (1 - power), doubt),
});
