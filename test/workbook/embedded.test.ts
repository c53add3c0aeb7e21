import { openHeadless } from "../../src/preview/headless";
import type { FunctionsBundle } from "../../src/workbook/embedded/functionsBundle";
import { portContract } from "./contract";

/** A stand-in for the built functions: the contract is about the workbook. */
const bundle: FunctionsBundle = {
  functions: new Map([["TWICE", (value: unknown) => Number(value) * 2]]),
  metadata: [{ id: "TWICE", name: "TWICE", parameters: [{ name: "value" }] }],
};

portContract(
  "embedded workbook",
  async () => openHeadless({ sheets: [{ name: "Mine", blocks: [] }] }, bundle),
  { calculates: true },
);
