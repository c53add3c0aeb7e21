import { placeAfter, PLACES } from "../../src/pane/places";

const [first, last] = [PLACES[0].id, PLACES.at(-1)!.id];

test("arrow keys go round all places, either way", () => {
  let there = first as Parameters<typeof placeAfter>[0];
  const seen = PLACES.map(() => (there = placeAfter(there, "ArrowRight")!));
  expect(new Set(seen).size).toBe(PLACES.length);
  expect(there).toBe(first);
  expect(placeAfter(first, "ArrowLeft")).toBe(last);
});

test("Home and End lead to the ends, other keys nowhere", () => {
  expect(placeAfter("hole", "Home")).toBe(first);
  expect(placeAfter("hole", "End")).toBe(last);
  expect(placeAfter("hole", "a")).toBeNull();
});
