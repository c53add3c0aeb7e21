/** How each answer spills: a header row, then one row a record, in the unit of the settings. */
import type { Trend } from "../core/carry/trend";
import type { PlannedHole } from "../core/choice/plan";
import type { FlightPoint } from "../core/flight/path";
import type { Notes, NoteRow } from "../core/notes/types";
import type { Option, Settings } from "../core/types";
import { fromMetres, fromMps } from "../core/units";
import { noAnswer, type Out, type Spill } from "./answer";

/** From metres to the unit of the settings; a figure that is not known is a blank, and −0 is 0. */
const inUnit =
  ({ distanceUnit }: Settings) =>
  (metres: number | null): Out =>
    metres === null ? "" : fromMetres(metres, distanceUnit) + 0;

/** One row without a header, so that it can stand beside a disc in a list. */
export function trendCells(trend: Trend, settings: Settings): Spill {
  return [[trend.verdict, inUnit(settings)(trend.changePerMonthM), trend.p ?? "", trend.throws]];
}

export function flightCells(path: readonly FlightPoint[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["Along", "Height", "Side", "Seconds"],
    ...path.map((at) => [unit(at.alongM), unit(at.heightM), unit(at.sideM), at.timeS]),
  ];
}

export function optionCells(options: readonly Option[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["Disc", "Power", "Chance", "Leaves", "Strokes", "Long/short", "Aim"],
    ...options.map((option) => [
      option.disc,
      option.power,
      option.chance,
      unit(option.leavesM),
      option.strokes,
      unit(option.longM),
      unit(option.aimM),
    ]),
  ];
}

const PLAN_HEADERS = [
  ...["Hole", "Plays like", "Low", "High", "Disc", "Power", "Chance", "Leaves", "Strokes"],
  "Second choice",
];

export function planCells(plan: readonly PlannedHole[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    PLAN_HEADERS,
    ...plan.map(({ hole, playsLikeM, lowM, highM, option, second, why }) => [
      asTyped(hole),
      unit(playsLikeM),
      unit(lowM),
      unit(highM),
      ...(option === null
        ? [noAnswer(why ?? ""), "", "", "", ""]
        : [option.disc, option.power, option.chance, unit(option.leavesM), option.strokes]),
      second?.disc ?? "",
    ]),
  ];
}

/** A hole that was typed as a number goes back as one, so that a look-up finds it. */
const asTyped = (name: string): Out => (String(Number(name)) === name ? Number(name) : name);

const NOTES_HEADERS = [
  ...["Date", "Disc", "Carry", "Offline", "Power", "Line", "Headwind", "Rise", "Player", "Note"],
  ...["Perhaps", "From line"],
];

/** Rows in the columns of the throw log, then what could not be read, each with its line. */
export function notesCells({ rows, unread }: Notes, settings: Settings): Spill {
  return [
    NOTES_HEADERS,
    ...rows.map((row) => noteCells(row, settings)),
    ...unread.map(({ fromLine, text, reason }) => [
      ...["", "", "", "", "", "", "", "", ""],
      `Not read: ${text} (${reason})`,
      "",
      fromLine,
    ]),
  ];
}

function noteCells(row: NoteRow, settings: Settings): Out[] {
  const unit = inUnit(settings);
  return [
    row.day ?? "",
    row.disc,
    unit(row.carryM),
    unit(row.offlineM),
    row.power,
    row.line,
    fromMps(row.headwindMps, settings.windUnit),
    unit(row.riseM),
    row.player,
    row.note,
    row.suggestion ?? "",
    row.fromLine,
  ];
}
