import { OUT_OF_REACH, tenth, type Axes, type Figure, type Table } from "./grid";

/** The parabola through three evenly spaced values, one step on. */
const onward = (a: Figure, b: Figure, c: Figure): Figure =>
  typeof a === "number" && typeof b === "number" && typeof c === "number"
    ? a - 3 * b + 3 * c
    : OUT_OF_REACH;

/**
 * A table without holes: where no figure is known they go on as parabolas, first along the wind,
 * then along the rise, so that cubics run smoothly through those that are known.
 */
export function withoutHoles(table: Table, { distances, rises }: Axes): number[][] {
  const filled = table.map((row) => [...row]);
  const fill = (row: number, column: number, rowStep: number, columnStep: number): void => {
    const back = (steps: number): Figure =>
      filled[row - steps * rowStep]?.[column - steps * columnStep] ?? OUT_OF_REACH;
    if (filled[row]![column] === OUT_OF_REACH)
      filled[row]![column] = onward(back(3), back(2), back(1));
  };
  const sweep = (rowStep: number, columnStep: number): void => {
    const rows = [...filled.keys()];
    const columns = Array.from({ length: rises.count }, (_, column) => column);
    if (rowStep < 0) rows.reverse();
    if (columnStep < 0) columns.reverse();
    for (const row of rows) for (const column of columns) fill(row, column, rowStep, columnStep);
  };
  for (const [rowStep, columnStep] of [
    [distances.count, 0],
    [-distances.count, 0],
    [0, 1],
    [0, -1],
    [1, 0],
    [-1, 0],
  ] as const)
    sweep(rowStep, columnStep);
  return filled.map((row) => row.map((figure) => (figure === OUT_OF_REACH ? 0 : tenth(figure))));
}
