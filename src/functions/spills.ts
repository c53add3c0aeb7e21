/** How each answer spills: a header row, then one row a record, in the unit of the settings. */
import type { CoverageRow, Gap } from "../core/bag/coverage";
import type { Packed } from "../core/bag/pack";
import type { Twins, Worth } from "../core/bag/worth";
import type { DayForm } from "../core/carry/form";
import type { PracticeRow } from "../core/carry/practice";
import type { SeriesPoint } from "../core/carry/series";
import type { Trend } from "../core/carry/wear";
import type { Comparison } from "../core/choice/compare";
import type { PlannedHole } from "../core/choice/plan";
import type { Scores } from "../core/choice/scores";
import type { PlaysLikeBand } from "../core/flight/playsLike";
import type { FlightPoint } from "../core/flight/path";
import type { Calibration, Tally } from "../core/learn/calibration";
import type { LearntPutt } from "../core/learn/learnPutting";
import type { NoteRow, Notes } from "../core/notes/pieces";
import type { Option, Settings } from "../core/types";
import { fromMetres, fromMps } from "../core/units";
import { noAnswer, type Out, type Spill } from "./answer";

/** From metres to the unit of the settings; a figure that is not known is a blank, and −0 is 0. */
export const inUnit =
  ({ distanceUnit }: Settings) =>
  (metres: number | null): Out =>
    metres === null ? "" : fromMetres(metres, distanceUnit) + 0;

export function wearCells(trend: Trend, settings: Settings): Spill {
  return [
    ["Verdict", "A month", "p", "Throws"],
    [trend.verdict, inUnit(settings)(trend.changePerMonthM), trend.p ?? "", trend.throws],
  ];
}

export function formCells({ day, factor, sd, throws, discs }: DayForm): Spill {
  return [
    ["Date", "Factor", "Plus or minus", "Throws", "Discs"],
    [day, factor, sd, throws, discs],
  ];
}

export function practiceCells(rows: readonly PracticeRow[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["Disc", "Throws", "Gain", "Known to", "Why"],
    ...rows.map((row) => [row.disc, row.throws, row.gain ?? "", unit(row.knownToM), row.why]),
  ];
}

export function seriesCells(points: readonly SeriesPoint[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["Date", "Carry", "Level", "Side"],
    ...points.map(({ day, carryM, levelM, sideM }) => [day, ...[carryM, levelM, sideM].map(unit)]),
  ];
}

/** All rows with the verdict in words, then groups of like chances, for a chart of told against happened. */
export function calibrationCells({ bins, ...all }: Calibration): Spill {
  const tally = ({ told, happened, low, high, rows }: Tally): Out[] => [
    ...[told, happened, low, high, rows],
  ];
  return [
    [
      ...["Throws with", "Told", "Happened", "Low", "High", "Rows"],
      ...["Brier score", "p", "In words"],
    ],
    ["any chance", ...tally(all), all.brier, all.p, all.sentence],
    ...(bins.length > 1 ? bins : []).map((bin, at) => [
      at === 0 ? "the lowest" : at === bins.length - 1 ? "the highest" : "higher",
      ...tally(bin),
      ...["", "", ""],
    ]),
  ];
}

export function puttingCells(rows: readonly LearntPutt[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["Distance", "Made", "Low", "High"],
    ...rows.map(({ distanceM, share, low, high }) => [unit(distanceM), share, low, high]),
  ];
}

export function bandCells({ lowM, likelyM, highM }: PlaysLikeBand, settings: Settings): Spill {
  return [["Low", "Likely", "High"], [lowM, likelyM, highM].map(inUnit(settings))];
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
    ["Disc", "Power", "Chance", "Leaves", "Strokes", "Long/short", "Aim", "Then"],
    ...options.map((option) => [
      option.disc,
      option.power,
      option.chance,
      unit(option.leavesM),
      option.strokes,
      unit(option.longM),
      unit(option.aimM),
      thenCell(option),
    ]),
  ];
}

/** The throws that follow, as one text. */
const thenCell = ({ then }: Option): string =>
  then.map(({ disc, power }) => `${disc} at ${Math.round(100 * power)} %`).join(", ");

const PLAN_HEADERS = [
  ...["Hole", "Plays like", "Low", "High", "Disc", "Power", "Aim", "Chance", "Leaves", "Then"],
  ...["Strokes", "Second"],
];

/** With the name of the course in front where any hole has one. */
export function planCells(plan: readonly PlannedHole[], settings: Settings): Spill {
  const unit = inUnit(settings);
  const named = plan.some(({ course }) => course !== "");
  const withCourse = (course: string, cells: Out[]): Out[] => (named ? [course, ...cells] : cells);
  return [
    withCourse("Course", PLAN_HEADERS),
    ...plan.map(({ course, hole, playsLikeM, lowM, highM, option, second, why }) =>
      withCourse(course, [
        asTyped(hole),
        unit(playsLikeM),
        unit(lowM),
        unit(highM),
        ...(option === null
          ? [noAnswer(why ?? ""), "", "", "", "", "", ""]
          : [
              option.disc,
              option.power,
              unit(option.aimM),
              option.chance,
              unit(option.leavesM),
              thenCell(option),
              option.strokes,
            ]),
        second?.disc ?? "",
      ]),
    ),
  ];
}

/** The round as a whole, then the chance of each total; against par where every hole has one. */
export function scoreCells({ mean, low, high, par, totals }: Scores): Spill {
  const withPar = (cells: Out[], last: Out): Out[] => (par === null ? cells : [...cells, last]);
  return [
    withPar(["Mean", "Low", "High"], "Par"),
    withPar([mean, low, high], par ?? ""),
    withPar(["Total", "Chance", "Or better"], "Against par"),
    ...totals.map(({ total, chance, orBetter }) =>
      withPar([total, chance, orBetter], total - (par ?? 0)),
    ),
  ];
}

export function comparisonCells({ strokes, otherStrokes, saves, sure }: Comparison): Spill {
  return [
    ["Strokes", "Other", "Saves", "Sure"],
    [strokes, otherStrokes, saves, sure],
  ];
}

/** The discs to carry with the strokes of a round, then what each further one would save. */
export function packCells({ discs, strokes, further }: Packed): Spill {
  return [
    ["Disc", "Carry it", "Strokes", "Saves"],
    ...discs.map((disc, place) => [disc, "yes", place === 0 ? strokes : "", ""]),
    ...further.map(({ disc, saves }) => [disc, "no", "", saves]),
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

export function coverageCells(rows: readonly CoverageRow[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["Distance", "Chance", "Ideal", "Disc"],
    ...rows.map(({ distanceM, chance, ideal, disc }) => [unit(distanceM), chance, ideal, disc]),
  ];
}

/** Gaps lie between two distances and cost chance; twins are two discs, the one to spare first. */
export function gapCells(gaps: readonly Gap[], twins: readonly Twins[], settings: Settings): Spill {
  const unit = inUnit(settings);
  return [
    ["What", "Between", "And", "Chance lost", "Strokes"],
    ...gaps.map(({ fromM, toM, loss }) => ["gap", unit(fromM), unit(toM), loss, ""]),
    ...twins.map(({ a, b, costA, costB }) =>
      costA <= costB ? ["twins", a, b, "", costA] : ["twins", b, a, "", costB],
    ),
  ];
}

export function worthCells(rows: readonly Worth[]): Spill {
  return [["Disc", "Strokes"], ...rows.map(({ disc, strokes }) => [disc, strokes])];
}
