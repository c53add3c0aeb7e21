/** How much work it is to save and to read a log of 72,000 throws, whatever else the machine does. */
import type { BenchRow } from "../bench";
import { bundleInNode } from "../../page/bundleInNode";
import { openHeadless } from "../../page/headless";
import { blueprintOf } from "../../workbook/blueprint";
import { EMPTY } from "../../workbook/blueprint/content";
import { readWhole } from "../../workbook/file/readWhole";
import { fileOf } from "../../workbook/file/writeBook";
import { WorkbookPackage } from "../../workbook/package/workbookPackage";

const THROWS = 72_000;
const MOST_SECONDS = 4;

const throws = Array.from({ length: THROWS }, (_, index) => [
  45_000 + Math.floor(index / 40),
  `${["Copper", "Mint", "Violet", "Slate"][index % 4]} disc`,
  200 + ((index * 37) % 160),
  ((index * 13) % 41) - 20,
  "",
  index % 17 === 0 ? "off" : "",
  index % 9,
  "",
  "Me",
  index % 11 === 0 ? `note ${index}` : "",
]);

/** Seconds of the processor, those of the program's other threads included. */
function timed<Result>(work: () => Result): { seconds: number; result: Result } {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return { seconds: (user + system) / 1_000_000, result };
}

const row = (name: string, seconds: number): BenchRow => ({
  name,
  target: `< ${MOST_SECONDS} s of CPU`,
  result: `${seconds.toFixed(2)} s`,
  ok: seconds < MOST_SECONDS,
});

export async function rows(): Promise<BenchRow[]> {
  const blueprint = blueprintOf({ ...EMPTY, throws });
  const { port, close } = await openHeadless(blueprint, bundleInNode("dist"));
  const saving = timed(() => fileOf(port.whole()));
  close();
  const reading = timed(() => readWhole(WorkbookPackage.read(saving.result)));
  return [
    row(`save a log of ${THROWS.toLocaleString("en")} throws as .xlsx`, saving.seconds),
    row("read it back", reading.seconds),
  ];
}
