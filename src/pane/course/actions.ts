import { addRows, writeSettings } from "../book/book";
import { DATA_TABLES } from "../../workbook/blueprint/dataTables";
import type { Desk } from "../controller";
import { goTo, withFocus } from "../state";
import { fillFrom } from "../hole/model";
import { todayOf } from "../today";
import type { FactorsToUse } from "./learnt";
import { needNumber } from "../words/figures";
import { writePutting } from "./putting";
import { type CourseForm, opened, type Planned, resultRow } from "./model";

export const setCourse = (desk: Desk, part: Partial<CourseForm>): void =>
  desk.change((state) => ({ ...state, course: { ...state.course, ...part } }));

/** Opens a hole, or closes it where it is open. */
export const toggle = (desk: Desk, row: number): void =>
  desk.change((state) => ({
    ...state,
    course: opened(state.course, state.course.open === row ? null : row),
  }));

/** The hole in all detail. */
export const lookAt = (desk: Desk, { hole }: Planned): void =>
  desk.change((state) => ({
    ...goTo(state, "hole"),
    hole: state.book ? fillFrom(hole, state.book.settings) : state.hole,
  }));

/** Adds the result of the open hole and opens the next one. */
export async function addResult(desk: Desk, planned: Planned, next: number | null): Promise<void> {
  const { book, course, busy } = desk.state;
  if (!book || busy) return;
  const done = await desk.work("course", "Adding the result", async (port) => {
    const row = resultRow(course, planned, book.settings, todayOf(desk.options));
    const what = `${String(row["Disc"])} on hole ${planned.hole.hole}`;
    const changes = [await addRows(port, DATA_TABLES.results, [row])];
    return { said: `Added: ${what}.`, step: { place: "course", what, changes } };
  });
  if (done)
    desk.change((state) =>
      withFocus(
        { ...state, course: opened(state.course, next) },
        next === null ? null : "result-in",
      ),
    );
}

/** What was learnt becomes what every answer uses. */
export const useFactors = (desk: Desk, { written }: FactorsToUse): Promise<boolean> =>
  desk.work("course", "Writing the settings", async (port) => {
    const change = await writeSettings(port, written);
    const what = "what your rounds teach, in Settings";
    return { said: `Wrote ${what}.`, step: { place: "course", what, changes: [change] } };
  });

/** One putt, made or missed, goes into the table of putts; the distance stays for the next. */
export const addPutt = (desk: Desk, made: boolean): Promise<boolean> =>
  desk.work("course", "Adding the putt", async (port) => {
    const distance = needNumber(desk.state.course.putt, "Distance");
    if (distance <= 0) throw new Error("Distance must be above 0.");
    const row = { Date: todayOf(desk.options), Distance: distance, Made: made ? 1 : 0, Tried: 1 };
    const what = `${made ? "made" : "missed"} from ${distance}`;
    const changes = [await addRows(port, DATA_TABLES.putts, [row])];
    return { said: `Added: ${what}.`, step: { place: "course", what, changes } };
  });

/** The learnt putting table becomes what every answer uses. */
export const usePutting = (desk: Desk): Promise<boolean> =>
  desk.work("course", "Writing the settings", async (port) => {
    const { book } = desk.state;
    if (!book) return { said: "" };
    const what = "your putting, in Settings";
    const changes = [await writePutting(port, book)];
    return { said: `Wrote ${what}.`, step: { place: "course", what, changes } };
  });
