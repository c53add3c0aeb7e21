import { placeAfter, PLACES } from "../../src/pane/places";

test("arrow keys go round all places, either way", () => {
  let there = PLACES[0].id as Parameters<typeof placeAfter>[0];
  const seen = PLACES.map(() => (there = placeAfter(there, "ArrowRight")!));
  expect(new Set(seen).size).toBe(7);
  expect(there).toBe(PLACES[0].id);
  expect(placeAfter("field", "ArrowLeft")).toBe("setup");
});

test("Home and End lead to the ends, other keys nowhere", () => {
  expect(placeAfter("hole", "Home")).toBe("field");
  expect(placeAfter("hole", "End")).toBe("setup");
  expect(placeAfter("hole", "a")).toBeNull();
});
