/** How long it takes to save and to read a log of 20,000 throws. */
import type { BenchRow } from "../bench";
import { blueprintOf } from "../../workbook/blueprint";
import { EMPTY } from "../../workbook/blueprint/content";
import { readBook, writeBook } from "../../workbook/file/bookBytes";
import { FilePort } from "../../workbook/file/filePort";

const THROWS = 20_000;
const SAVE_SECONDS = 3;

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

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

export async function rows(): Promise<BenchRow[]> {
  let bytes = new Uint8Array();
  const saving = await seconds(async () => {
    const { book } = FilePort.create(blueprintOf({ ...EMPTY, throws }));
    bytes = Uint8Array.from(await writeBook(book));
  });
  const reading = await seconds(() => readBook(bytes));
  return [
    {
      name: "save a log of 20,000 throws as .xlsx",
      target: `< ${SAVE_SECONDS} s`,
      result: `${saving.toFixed(2)} s`,
      ok: saving < SAVE_SECONDS,
    },
    { name: "read it back", target: "", result: `${reading.toFixed(2)} s`, ok: null },
  ];
}
