import { crosswindMps, headwindMps, parseDirection } from "../../../src/core/flight/wind";

describe("parseDirection", () => {
  test.each([
    ["N", 0],
    ["ne", 45],
    [" SSE ", 157.5],
    ["WNW", 292.5],
    ["north-west", 315],
    ["South South West", 202.5],
    ["270", 270],
    ["90°", 90],
    [-45, -45],
    [361.5, 361.5],
  ])("reads %p as %d degrees", (given, degrees) => expect(parseDirection(given)).toBe(degrees));

  test.each([["X"], ["NN"], [""], ["9,5"], ["1e2"], [NaN], [1e308], [null], [true], [{}]])(
    "refuses %p and names it",
    (given) =>
      expect(() => parseDirection(given, "bearing")).toThrow(
        expect.objectContaining({ code: "unusable", message: expect.stringMatching(/^bearing /) }),
      ),
  );
});

describe("a wind and a throw", () => {
  test.each([
    ["from ahead", 90, 90, 10, 0],
    ["from behind", 270, 90, -10, 0],
    ["from the left", 0, 90, 0, 10],
    ["from the right", 180, 90, 0, -10],
    ["from ahead on the left, across north", 315, 0, Math.SQRT1_2 * 10, Math.SQRT1_2 * 10],
    ["from ahead on the right", 30, 350, 10 * Math.cos((40 * Math.PI) / 180), -6.427876],
  ])("%s", (_, from, bearing, head, cross) => {
    expect(headwindMps(10, from, bearing)).toBeCloseTo(head, 6);
    expect(crosswindMps(10, from, bearing)).toBeCloseTo(cross, 6);
  });
});
