import { openHeadless } from "../../src/page/headless";
import { portContract } from "./contract";
import { twiceBundle } from "./embedded/twiceBundle";

portContract(
  "embedded workbook",
  () => openHeadless({ sheets: [{ name: "Mine", blocks: [] }] }, twiceBundle),
  { calculates: true },
);
