/** The arguments that many functions share, read once for the same content. */
import type { Steps } from "../core/bag/coverage";
import { readCard } from "../core/carry/cardCells";
import { readBag } from "../core/log/readBag";
import { readCourse } from "../core/log/readCourse";
import { readSettings } from "../core/log/readSettings";
import { readThrows } from "../core/log/readThrows";
import { remember } from "../core/memory";
import { unusable } from "../core/errors";
import { messages } from "../core/messages";
import type { BagDisc, Card, Hole, Settings, Shot, ThrowLog } from "../core/types";
import { toMetres, toMps } from "../core/units";
import { contentKey } from "./contentKey";
import { receiveCells, receiveNumber, receivePositive, receiveRange } from "./receive";

const settingsMemory = remember<Settings>(16);
const cardMemory = remember<Card>(16);
/** Logs are the one reading that can be large: so many rows in all are kept. */
const ROWS_KEPT = 100_000;
const logMemory = remember<ThrowLog>(
  ROWS_KEPT,
  ({ throws, leftOut }) => 1 + throws.length + leftOut.length,
);

export function receiveSettings(value: unknown): Settings {
  const cells = receiveCells(value, "settings");
  return settingsMemory(contentKey(cells), () => readSettings(cells ?? []));
}

export function receiveBag(value: unknown): BagDisc[] {
  const cells = receiveCells(value, "bag");
  return cells ? readBag(cells) : [];
}

/** The card behind a `throws` argument, be it a log, a card, or a bare list. */
export function receiveCard(throws: unknown, settings: unknown, bag?: unknown): Card {
  const cells = receiveRange(throws, "throws");
  const bagCells = receiveCells(bag, "bag");
  const key = [cells, bagCells, receiveCells(settings, "settings")].map(contentKey).join("|");
  return cardMemory(key, () =>
    readCard(cells, bagCells && readBag(bagCells), receiveSettings(settings)),
  );
}

/** The throws themselves, for the functions that a card cannot serve. */
export function receiveLog(throws: unknown, settings: unknown): ThrowLog {
  const cells = receiveRange(throws, "throws");
  const key = `${contentKey(cells)}|${contentKey(receiveCells(settings, "settings"))}`;
  return logMemory(key, () => readThrows(cells, receiveSettings(settings)));
}

export function receiveCourse(course: unknown, settings: Settings): Hole[] {
  const holes = readCourse(receiveRange(course, "course"), settings);
  if (holes.length === 0) throw unusable(messages.functions.missing("course"));
  return holes;
}

/** A shot in the units of the settings. */
export function receiveShot(
  distance: unknown,
  rise: unknown,
  headwind: unknown,
  settings: Settings,
): Shot {
  return {
    distanceM: toMetres(receivePositive(distance, "distance"), settings.distanceUnit),
    riseM: toMetres(receiveNumber(rise, "rise", 0), settings.distanceUnit),
    headwindMps: toMps(receiveNumber(headwind, "headwind", 0), settings.windUnit),
  };
}

/** Distances to look at; a blank or a 0 follows from the bag. */
export function receiveSteps(from: unknown, to: unknown, step: unknown, settings: Settings): Steps {
  const metres = (value: unknown, name: string): number | null => {
    const distance = receiveNumber(value, name, 0);
    return distance === 0 ? null : toMetres(distance, settings.distanceUnit);
  };
  return { fromM: metres(from, "from"), toM: metres(to, "to"), stepM: metres(step, "step") };
}
