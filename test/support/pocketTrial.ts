/**
 * Run by the Pocket test as a bundle in a process of its own, where flights are several times as
 * fast as inside the test runner: prints what the core answers for each hole, what the embedded workbook shows on
 * the Pocket sheet, and the sheet itself as a file.
 */
import { DomainError } from "../../src/core/errors";
import { rankOptions } from "../../src/core/choice/rank";
import { conditionsOf } from "../../src/core/flight/air";
import { playsLikeM } from "../../src/core/flight/playsLike";
import { DEFAULT_SETTINGS } from "../../src/core/log/readSettings";
import type { Settings } from "../../src/core/types";
import { fromMetres, toMetres, toMps } from "../../src/core/units";
import { openHeadless } from "../../src/page/headless";
import type { SheetPlan } from "../../src/workbook/blueprint/types";
import { writeBook } from "../../src/workbook/file/bookBytes";
import { FilePort } from "../../src/workbook/file/filePort";
import { pocketSheet } from "../../src/workbook/pocket/pocketSheet";
import { starterCard } from "./starterCard";

/** Distance and rise in feet, headwind in mph: 500 holes off the figures of the frozen grid. */
export type HoleFigures = readonly [distance: number, rise: number, wind: number];
const DISTANCES = [118, 155, 193, 231, 268, 306, 343, 381, 419, 456];
const RISES = [-30, -13, 2, 16, 29];
const WINDS = [-12, -10, -7, -5, -2, 1, 3, 6, 9, 11];

/** Farther than the longest disc of the starter bag at its hardest. */
const BEYOND: readonly HoleFigures[] = [[560, 0, 0]];

export interface Answer {
  readonly disc: string;
  readonly playsLikeFt: number;
}

/** What the sheet shows: disc, plays-like distance, and the sentence under them. */
export type Shown = readonly [disc: unknown, playsLike: unknown, sentence: unknown];

export interface Trial {
  readonly holes: readonly HoleFigures[];
  /** null where no throw gets there. */
  readonly expected: readonly (Answer | null)[];
  readonly embedded: readonly Shown[];
  /** What the embedded workbook shows beyond the longest disc. */
  readonly beyond: readonly Shown[];
  readonly plan: SheetPlan;
  /** The sheet as an .xlsx file, in base 64. */
  readonly file: string;
}

const settings: Settings = { ...DEFAULT_SETTINGS, player: "Me" };
const card = starterCard(settings);

function coreAnswer([distance, rise, wind]: HoleFigures): Answer | null {
  const shot = {
    distanceM: toMetres(distance, "ft"),
    riseM: toMetres(rise, "ft"),
    headwindMps: toMps(wind, "mph"),
  };
  try {
    return {
      disc: rankOptions(shot, card, settings)[0]!.disc,
      playsLikeFt: fromMetres(playsLikeM(shot, conditionsOf(settings), null), "ft"),
    };
  } catch (error) {
    if (error instanceof DomainError && error.code === "unavailable") return null;
    throw error;
  }
}

async function embeddedAnswers(plan: SheetPlan, holes: readonly HoleFigures[]): Promise<Shown[]> {
  const { port, calculated, close } = await openHeadless(
    { sheets: [plan] },
    {
      functions: new Map([["NONE", () => 0]]),
      metadata: [{ id: "NONE", name: "NONE", parameters: [] }],
    },
  );
  await port.recalculate();
  const shown: Shown[] = [];
  for (const hole of holes) {
    await port.writeRange(
      "Pocket!B5:B7",
      hole.map((figure) => [figure]),
    );
    await calculated();
    const answers = (await port.readRange("Pocket!A9:B15"))!;
    shown.push([answers[0]![1], answers[2]![1], answers[6]![0]]);
  }
  close();
  return shown;
}

async function main(): Promise<void> {
  const holes = DISTANCES.flatMap((distance) =>
    RISES.flatMap((rise) => WINDS.map((wind): HoleFigures => [distance, rise, wind])),
  );
  const plan = pocketSheet(card, settings, { who: "Me", day: 46351 });
  const bytes = await writeBook(FilePort.create({ sheets: [plan] }).book);
  const trial: Trial = {
    holes,
    expected: holes.map(coreAnswer),
    embedded: await embeddedAnswers(plan, holes),
    beyond: await embeddedAnswers(plan, BEYOND),
    plan,
    file: Buffer.from(bytes).toString("base64"),
  };
  process.stdout.write(JSON.stringify(trial), () => process.exit(0));
}

void main();
