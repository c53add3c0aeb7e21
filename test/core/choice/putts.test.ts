import { puttingReachM, putts, shareMade } from "../../../src/core/choice/strokes";

const putting = [
  { distanceM: 2, share: 0.9 },
  { distanceM: 4, share: 0.7 },
  { distanceM: 8, share: 0.2 },
];

describe("putting", () => {
  test.each([
    [0, 1],
    [1, 0.95],
    [2, 0.9],
    [3, 0.8],
    [6, 0.45],
    [8, 0.2],
    [12, 0.1],
    [16, 0],
    [30, 0],
  ])("from %d m a share of %d is made", (distanceM, share) => {
    expect(shareMade(distanceM, putting)).toBeCloseTo(share, 12);
  });

  test("a miss costs one more, and nobody putts from beyond twice the last distance", () => {
    expect(putts(3, putting)).toBeCloseTo(1.2, 12);
    expect(putts(16, putting)).toBe(2);
    expect(putts(16.01, putting)).toBe(Infinity);
    expect(puttingReachM(putting)).toBe(16);
  });

  test("one row, a row at the target, no rows", () => {
    expect(shareMade(1, [{ distanceM: 2, share: 0.5 }])).toBeCloseTo(0.75, 12);
    expect(shareMade(0, [{ distanceM: 0, share: 0.9 }])).toBe(1);
    expect(shareMade(0, [])).toBe(1);
    expect(putts(1, [])).toBe(Infinity);
  });
});
