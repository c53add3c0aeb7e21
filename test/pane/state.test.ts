import { firstState, goTo, withBook, withLook, withNotice } from "../../src/pane/state";
import { PLACES } from "../../src/pane/places";
import type { Book } from "../../src/pane/book/book";
import { emptyBook, starterBook } from "./starterBook";

let book: Book;
beforeAll(async () => {
  book = await starterBook();
});

test("Hole opens with the first hole of the course, and only then", () => {
  const opened = withBook(firstState("hole"), book);
  expect(opened.hole).toMatchObject({ distance: "262", rise: "0", headwind: "2" });
  const typed = { ...opened, hole: { ...opened.hole, distance: "300" } };
  expect(withBook(typed, { ...book }).hole.distance).toBe("300");
});

test("what was typed before the workbook was read stays", () => {
  const state = firstState("hole");
  const typed = { ...state, hole: { ...state.hole, distance: "300" } };
  expect(withBook(typed, book).hole.distance).toBe("300");
});

test("a workbook without a course leaves Hole blank", async () => {
  expect(withBook(firstState("hole"), await emptyBook()).hole.distance).toBe("");
});

test("the same reading, place or look changes nothing at all", () => {
  const state = withBook(firstState("hole"), book);
  expect(withBook(state, book)).toBe(state);
  expect(goTo(state, "hole")).toBe(state);
  expect(withLook(state, "ladder", null)).toBe(state);
});

test("what was said is gone once its place is left", () => {
  const said = withNotice(firstState("bag"), "bag", { tone: "done", text: "x", canUndo: false });
  expect(goTo(said, "hole").notices).toEqual({});
  const undoable = { tone: "done", text: "x", canUndo: true } as const;
  expect(goTo(withNotice(said, "bag", undoable), "hole").notices).toEqual({ bag: undoable });
  expect(PLACES.map(({ id }) => goTo(said, id).place)).toEqual(PLACES.map(({ id }) => id));
});
