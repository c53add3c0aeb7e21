import { courseForm } from "../../core/choice/courseForm";
import type { Card, CardRow, Settings } from "../../core/types";
import { fromMetres } from "../../core/units";
import { SHARE, text, WHOLE } from "../blueprint/parts";
import { isoFromDay } from "../blueprint/isoFromDay";
import type { SheetPlan } from "../blueprint/types";
import { type Block, FIRST_DISC, fixed, formula } from "./cells";
import { type Axis, axisEnd, playsLikeGrid } from "./grid";
import { frozenPicks, pickCells } from "./pickFormulas";
import { shotCells } from "./shotFormulas";

export const POCKET = "Pocket";

/** Whose card it is, and the serial day on which it was frozen. */
export interface Frozen {
  readonly who: string;
  readonly day: number;
}

const ANSWER = 2;
const NAMES = 1;

const NEAR_EDGE = "Near the edge of what a throw can reach: take this as rough.";
const TOO_FAR = "No disc gets there: this one leaves the least.";
const TOO_NEAR = "Every disc goes past: this one leaves the least.";

const span = (axis: Axis, unit: string): string =>
  `${Math.ceil(axis.from)} to ${Math.floor(axisEnd(axis))} ${unit}`;

/**
 * The Pocket sheet: for a phone, and for a partner without the add-in. Plain values and formulas that
 * every spreadsheet since 2016 knows answer a range, a rise and a headwind with plays-like distance,
 * disc, power and second choice, from the card and the flights as they were when it was frozen.
 * Within 2 ft of PLAYSLIKE and the same pick as BEST with the card and no trouble, but near ties.
 * Yields the share done, since the flights take seconds, and returns the sheet. Throws as BEST does
 * where the bag is empty.
 */
export function* pocketSteps(
  card: Card,
  settings: Settings,
  { who, day }: Frozen,
): Generator<number, SheetPlan> {
  const { distanceUnit, windUnit } = settings;
  const picks = frozenPicks(card, settings);
  const grid = yield* playsLikeGrid(settings);
  const shot = shotCells(grid, distanceUnit);
  const pick = pickCells(picks, shot);
  const { discs } = picks;
  const names = `${fixed(NAMES, FIRST_DISC)}:${fixed(NAMES, FIRST_DISC + discs.length - 1)}`;

  const whenKnown = (words: string): string => `IF(${shot.known}=1,${words},"")`;
  const nameOf = (number: string, otherwise: string): string =>
    whenKnown(`IF(ISNUMBER(${number}),INDEX(${names},${number}),"${otherwise}")`);
  const powerOf = (number: string): string =>
    whenKnown(`IF(ISNUMBER(${number}),INDEX(${pick.powers},${number}),"")`);
  const beyond =
    `This sheet knows ${span(grid.distances, distanceUnit)}, rise ${span(grid.rises, distanceUnit)}, ` +
    `wind ${span(grid.winds, windUnit)}.`;
  const reach = (disc: CardRow, power: number): number =>
    fromMetres(Math.exp(courseForm(disc, settings).mu) * power, distanceUnit);
  const circle = fromMetres(settings.circleM, distanceUnit);
  const farthest = (reach(discs[0]!, settings.highestPower) + circle).toFixed(1);
  const nearest = (Math.min(...discs.map((disc) => reach(disc, disc.softest))) - circle).toFixed(1);
  const hints =
    `IF(${shot.known}=-1,"Type numbers only.",IF(${shot.known}=0,"${beyond}",` +
    `IF(N(${shot.untyped})>${farthest},"${TOO_FAR}",` +
    `IF(AND(ISNUMBER(${shot.untyped}),${shot.untyped}<${nearest}),"${TOO_NEAR}",` +
    `IF(${shot.sure}=1,"","${NEAR_EDGE}")))))`;
  const inputs = (
    [
      ["Range", 300, distanceUnit],
      ["Rise", 0, distanceUnit],
      ["Headwind", 0, windUnit],
    ] as const
  ).map((values, index): Block => ({
    kind: "cells",
    at: `A${5 + index}`,
    values: [values],
    styles: ["label", "input", "hint"],
  }));

  const visible: readonly Block[] = [
    text("A1", "title", "Pocket"),
    text("A2", "lead", `Frozen ${isoFromDay(day)}${who === "" ? "" : ` for ${who}`}.`),
    text("A3", "hint", "Type range, rise and headwind. Uphill and into the wind are plus."),
    ...inputs,
    text("A9", "label", "Throw"),
    formula(ANSWER, 9, nameOf(pick.best, "out of reach"), "title"),
    text("A10", "label", "Power"),
    formula(ANSWER, 10, powerOf(pick.best), "title", SHARE),
    text("A11", "label", "Plays like"),
    formula(ANSWER, 11, whenKnown(shot.untyped), "title", WHOLE),
    text("A12", "label", "Second"),
    formula(ANSWER, 12, nameOf(pick.second, ""), "answer"),
    text("A13", "label", "Power"),
    formula(ANSWER, 13, powerOf(pick.second), "answer", SHARE),
    formula(1, 15, hints, "caution"),
    text(
      "A17",
      "hint",
      "Throw only on a clear field, with nobody within range.",
      "Slope and wind figures are estimates.",
      "The course's and the event's rules and officials decide.",
    ),
    text("A21", "heading", "Discs"),
    {
      kind: "cells",
      at: `A${FIRST_DISC - 1}`,
      values: [["Disc", "Carry", "Power here"]],
      style: "label",
    },
    ...discs.flatMap((disc, index): Block[] => {
      const row = FIRST_DISC + index;
      return [
        {
          kind: "cells",
          at: `A${row}`,
          values: [[disc.disc, fromMetres(Math.exp(disc.mu), distanceUnit)]],
          styles: ["plain", "figure"],
          format: WHOLE,
        },
        formula(3, row, powerOf(`${index + 1}`), "figure", SHARE),
      ];
    }),
    text("F1", "hint", "Frozen figures behind the answers"),
  ];

  return {
    name: POCKET,
    // The figures behind the answers stand out of sight of a phone.
    widths: [17, 24, 13, 3, 60],
    blocks: [...visible, ...shot.blocks, ...pick.blocks],
    print: {
      landscape: false,
      fitWide: true,
      area: `A1:C${FIRST_DISC + discs.length - 1}`,
    },
  };
}

/**
 * The Pocket sheet in one go; see `pocketSteps`.
 *
 * @example pocketSheet(card, settings, { who: "Me", day: 46351 }).name // "Pocket"
 */
export function pocketSheet(card: Card, settings: Settings, frozen: Frozen): SheetPlan {
  const steps = pocketSteps(card, settings, frozen);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
