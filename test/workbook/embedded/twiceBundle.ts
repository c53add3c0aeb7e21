import { CellFault, type FunctionsBundle } from "../../../src/workbook/embedded/engine";

/** A stand-in for the built functions, where a test is about the workbook. */
export const twiceBundle: FunctionsBundle = {
  functions: new Map([
    [
      "TWICE",
      (value: unknown) => {
        if (typeof value !== "number") throw new CellFault("#VALUE!", "value must be a number.");
        return value * 2;
      },
    ],
  ]),
  metadata: [{ id: "TWICE", name: "TWICE", parameters: [{ name: "value" }] }],
};
