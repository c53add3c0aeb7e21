/**
 * Arguments that are one value may also be ranges: then a function answers each element, in the shape
 * of the ranges, and an element that makes no sense gets an error of its own.
 */
import { unusable } from "../core/errors";
import { messages } from "../core/messages";
import type { Cell, Cells } from "../core/types";
import { errorOf, type Out, type Spill } from "./answer";

/** More answers than this in one formula is a slip (a whole column), and would take minutes. */
const MOST_ANSWERS = 100_000;

/** One element of each argument. */
type Element<Name extends string> = Readonly<Record<Name, Cell>>;

/**
 * Runs a custom function whose answer is one value, once for each element of its arguments.
 *
 * A single cell, a single row or a single column is repeated for the others, as in Excel's own
 * functions. What all elements share (settings, log, card) is read once, by `read`; an error there
 * is the answer to all. Elements with the same arguments are worked out once.
 *
 * @param ranges The arguments that may be ranges, by name.
 * @param read Reads what all elements share, and returns what answers one element.
 * @returns As many answers as elements. For one element an error is thrown, so that its cell shows it.
 * @example
 * answerEach({ distance: [[200], [300]] }, () => ({ distance }) => receivePositive(distance, "distance"))
 */
export function answerEach<Name extends string>(
  ranges: Readonly<Record<Name, unknown>>,
  read: () => (element: Element<Name>) => Out,
): Spill {
  try {
    const names = Object.keys(ranges) as Name[];
    const grids = names.map((name) => gridOf(ranges[name]));
    const { rows, columns } = commonShape(names, grids);
    const answerOf = read();
    const elementAt = (row: number, column: number): Element<Name> =>
      Object.fromEntries(
        names.map((name, at) => [name, cellOf(grids[at]!, row, column)]),
      ) as Element<Name>;
    if (rows * columns === 1) return [[answerOf(elementAt(0, 0))]];
    const answerOnce = rememberingErrors(answerOf);
    return Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, (_, column) => answerOnce(elementAt(row, column))),
    );
  } catch (thrown) {
    throw errorOf(thrown);
  }
}

function gridOf(value: unknown): Cells {
  if (!Array.isArray(value) || value.length === 0) return [[value]];
  return (Array.isArray(value[0]) ? value : [value]) as Cells;
}

/** The element of a grid, its only row or column standing for all. */
const cellOf = (grid: Cells, row: number, column: number): Cell => {
  const cells = grid[grid.length === 1 ? 0 : row]!;
  return cells[cells.length === 1 ? 0 : column];
};

/** The shape of all ranges together; an error that names the first range which does not fit. */
function commonShape(
  names: readonly string[],
  grids: readonly Cells[],
): { rows: number; columns: number } {
  let rows = 1;
  let columns = 1;
  let widest = names[0]!;
  grids.forEach((grid, at) => {
    const [down, across] = [grid.length, grid[0]!.length];
    const fits = (own: number, common: number): boolean =>
      own === 1 || common === 1 || own === common;
    if (!fits(down, rows) || !fits(across, columns)) {
      const other = `${rows} × ${columns}`;
      throw unusable(
        messages.functions.shapesDiffer(names[at]!, `${down} × ${across}`, widest, other),
      );
    }
    if (down > rows || across > columns) widest = names[at]!;
    rows = Math.max(rows, down);
    columns = Math.max(columns, across);
  });
  if (rows * columns > MOST_ANSWERS) {
    throw unusable(messages.functions.tooManyAnswers(widest, rows * columns, MOST_ANSWERS));
  }
  return { rows, columns };
}

/** Answers equal elements once; an error becomes the answer of its element. */
function rememberingErrors<Name extends string>(
  answerOf: (element: Element<Name>) => Out,
): (element: Element<Name>) => Out {
  const known = new Map<string, Out>();
  return (element) => {
    const key = Object.values(element).map(keyOf).join("|");
    let answer = known.get(key);
    if (answer === undefined) {
      answer = orError(() => answerOf(element));
      known.set(key, answer);
    }
    return answer;
  };
}

const keyOf = (cell: unknown): string =>
  typeof cell === "number" ? String(cell) : JSON.stringify(cell ?? "");

function orError(ask: () => Out): Out {
  try {
    return ask();
  } catch (thrown) {
    return errorOf(thrown);
  }
}
