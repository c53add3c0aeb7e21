/** The part of odex that tests use. The package carries TypeScript that our strictness refuses. */
export class Solver {
  constructor(dimensions: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(
    derivative: (x: number, y: number[]) => number[],
    x: number,
    y: number[],
    end: number,
  ): { y: number[] };
}
