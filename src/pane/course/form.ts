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
