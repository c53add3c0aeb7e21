/**
 * Whatever is sent, what comes back is a finite, rectangular answer or an error with a sentence.
 * `npm run test:long` asks 200,000 times; the seed of a failure is printed.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { ask, CellError, loadFunctions } from "../support/customFunctions";
import { argumentsFor } from "./anything";

interface Described {
  readonly id: string;
  readonly parameters: readonly { readonly name: string }[];
}

const CALLS = Number(process.env.CARRYBOOK_FUZZ ?? 4800);
const functions = loadFunctions();
const described = (
  JSON.parse(readFileSync(join(__dirname, "../../dist/functions.json"), "utf8")) as {
    functions: Described[];
  }
).functions;

const isSound = (cell: unknown): boolean =>
  typeof cell === "string" ||
  (typeof cell === "number" && Number.isFinite(cell)) ||
  (cell instanceof CellError && isSentence(cell));

/** An error for a cell: a code that can carry a message, and a message for the player. */
const isSentence = ({ code, message }: CellError): boolean =>
  (code === "#VALUE!" || code === "#N/A") &&
  message.length > 10 &&
  !/undefined|\[object|NaN|could not work this out/.test(message);

const isGrid = (shown: unknown): boolean =>
  Array.isArray(shown) &&
  shown.length > 0 &&
  shown.every((row) => Array.isArray(row) && row.length === shown[0].length && row.every(isSound));

test.each(described)(
  "$id",
  ({ id, parameters }) =>
    fc.assert(
      fc.property(argumentsFor(parameters), (args) => {
        const shown = ask(functions.get(id), ...args);
        if (!isSound(shown) && !isGrid(shown)) {
          throw new Error(`${id}(${fc.stringify(args)}) shows ${fc.stringify(shown)}`);
        }
      }),
      { numRuns: Math.ceil(CALLS / described.length) },
    ),
  3_600_000,
);
