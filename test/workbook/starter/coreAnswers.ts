/** Each function of the workbook as the direct call of the core, with the arguments read from the cells. */
import { coverage, gaps } from "../../../src/core/bag/coverage";
import { twins, worth } from "../../../src/core/bag/worth";
import { formOfDay } from "../../../src/core/carry/form";
import { neededThrows } from "../../../src/core/carry/needed";
import { cardCells, readCard } from "../../../src/core/carry/cardCells";
import { rowOf } from "../../../src/core/carry/levelThrows";
import { practice } from "../../../src/core/carry/practice";
import { seriesOf } from "../../../src/core/carry/series";
import { trendOf } from "../../../src/core/carry/wear";
import { bestChance } from "../../../src/core/choice/chance";
import { pack } from "../../../src/core/bag/pack";
import { compareDiscs } from "../../../src/core/choice/compare";
import { planCourse } from "../../../src/core/choice/plan";
import { powerFor } from "../../../src/core/choice/power";
import { rankOptions } from "../../../src/core/choice/rank";
import { scoresOf } from "../../../src/core/choice/scores";
import { strokesToHoleOut } from "../../../src/core/choice/strokes";
import { STANDARD_DENSITY } from "../../../src/core/constants";
import { playsLikeBandM, playsLikeM } from "../../../src/core/flight/playsLike";
import { conditionsOf } from "../../../src/core/flight/air";
import { flightPath, windDriftM } from "../../../src/core/flight/path";
import {
  crosswindMps,
  headwindMps,
  levelM,
  parseDirection,
  riseM,
} from "../../../src/core/flight/wind";
import { calibration } from "../../../src/core/learn/calibration";
import { learnFactors } from "../../../src/core/learn/learnFactors";
import { learnPutting } from "../../../src/core/learn/learnPutting";
import { readBag } from "../../../src/core/log/readBag";
import { readCourse } from "../../../src/core/log/readCourse";
import { readPutts, readRounds } from "../../../src/core/log/readRounds";
import { readSettings } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import { readNotes } from "../../../src/core/notes/readNotes";
import type { Card, Cells, Hole, Option, Settings, Shot } from "../../../src/core/types";
import { fromMetres, toMetres, toMps, toRadians } from "../../../src/core/units";
import type { Argument } from "./argumentsIn";

type Values = unknown[][];
type Core = (...args: Argument[]) => Values;

const settings = (cells: Argument | undefined): Settings => readSettings((cells ?? []) as Cells);
const card = (cells: Argument, known: Settings): Card => readCard(cells as Cells, null, known);
const holes = (cells: Argument, known: Settings): Hole[] => readCourse(cells as Cells, known);
const feet = (metres: number): number => fromMetres(metres, "ft");
const number = (value: Argument | undefined): number => Number(value ?? 0);

const shot = (distance: Argument, rise: Argument, headwind: Argument, known: Settings): Shot => ({
  distanceM: toMetres(number(distance), known.distanceUnit),
  riseM: toMetres(number(rise), known.distanceUnit),
  headwindMps: toMps(number(headwind), known.windUnit),
});

const thenText = ({ then }: Option): string =>
  then.map(({ disc, power }) => `${disc} at ${Math.round(100 * power)} %`).join(", ");

const optionRow = ({ disc, power, chance, leavesM, strokes }: Option): unknown[] => [
  ...[disc, power, chance, feet(leavesM), strokes],
];

/**
 * What the cells must hold, from the first under the header of a spill, or the cell itself; as many
 * columns as are named here. Distances are in feet, as the starter workbook is.
 */
export const coreAnswers: Record<string, Core> = {
  SMOOTH: (disc, throws, set) => [
    [feet(Math.exp(rowOf(card(throws!, settings(set)), String(disc)).mu))],
  ],
  CARD: (throws, set, bag) => {
    const made = readCard(throws as Cells, readBag(bag as Cells), settings(set));
    return cardCells(made, settings(set)).slice(1);
  },
  NEEDED: (disc, margin, throws, set) => [
    [
      neededThrows(
        rowOf(card(throws!, settings(set)), String(disc)),
        toMetres(number(margin), "ft"),
      ),
    ],
  ],
  WEAR: (disc, throws, set, bag) => {
    const log = readThrows(throws as Cells, settings(set));
    const { verdict, changePerMonthM } = trendOf(
      String(disc),
      log,
      settings(set),
      readBag(bag as Cells),
    );
    return [[verdict, changePerMonthM === null ? "" : feet(changePerMonthM)]];
  },
  FORM: (throws, set) => {
    const log = readThrows(throws as Cells, settings(set));
    const { day, factor, sd, throws: count, discs } = formOfDay(log, [], settings(set), null);
    return [[day, factor, sd, count, discs]];
  },
  PRACTICE: (throws, set, bag) => {
    const known = settings(set);
    const listed = readBag(bag as Cells);
    const rows = practice(readCard(throws as Cells, listed, known), listed, known);
    return rows.map((row) => [
      ...[row.disc, row.throws, row.gain ?? ""],
      ...[row.knownToM === null ? "" : feet(row.knownToM), row.why],
    ]);
  },
  SERIES: (disc, throws, set, bag) => {
    const known = settings(set);
    const log = readThrows(throws as Cells, known);
    return seriesOf(String(disc), log, readBag(bag as Cells), known).map((point) => [
      point.day,
      ...[point.carryM, point.levelM, point.sideM].map((m) => (m === null ? "" : feet(m))),
    ]);
  },
  NOTES: (text, bag, set) => {
    const lines = Array.isArray(text) ? text.flat().join("\n") : String(text);
    const { rows } = readNotes(lines, readBag(bag as Cells), settings(set));
    return rows.map((row) => [row.day ?? "", row.disc, feet(row.carryM)]);
  },
  PLAYSLIKE: (distance, rise, headwind, _type, set) => {
    const known = settings(set);
    const at = shot(distance!, rise!, headwind!, known);
    return [[feet(playsLikeM(at, conditionsOf(known), null))]];
  },
  PLAYSBAND: (distance, rise, headwind, _type, set) => {
    const known = settings(set);
    const at = shot(distance!, rise!, headwind!, known);
    const { lowM, likelyM, highM } = playsLikeBandM(at, conditionsOf(known));
    return [[lowM, likelyM, highM].map(feet)];
  },
  FLIGHT: (distance, rise, headwind, _type, set) => {
    const known = settings(set);
    const at = shot(distance!, rise!, headwind!, known);
    return flightPath(at, conditionsOf(known), null).map((point) => [
      ...[feet(point.alongM), feet(point.heightM)],
    ]);
  },
  LEVEL: (range, angle) => [[levelM(number(range), toRadians(number(angle)))]],
  RISE: (range, angle) => [[riseM(number(range), toRadians(number(angle)))]],
  HEADWIND: (speed, from, bearing) => [
    [headwindMps(number(speed), parseDirection(from), parseDirection(bearing))],
  ],
  CROSSWIND: (speed, from, bearing) => [
    [crosswindMps(number(speed), parseDirection(from), parseDirection(bearing))],
  ],
  AIR: (set) => [[conditionsOf(settings(set)).densityKgM3 / STANDARD_DENSITY]],
  DRIFT: (distance, crosswind, _type, set) => {
    const known = settings(set);
    const wind = toMps(number(crosswind), known.windUnit);
    return [[feet(windDriftM(toMetres(number(distance), "ft"), wind, conditionsOf(known), null))]];
  },
  BEST: (distance, throws, set, rise, headwind, rank) => {
    const known = settings(set);
    const options = rankOptions(
      shot(distance!, rise!, headwind!, known),
      card(throws!, known),
      known,
    );
    return [[options[(rank == null ? 1 : number(rank)) - 1]!.disc]];
  },
  OPTIONS: (distance, throws, set, rise, headwind, count) => {
    const known = settings(set);
    const at = shot(distance!, rise!, headwind!, known);
    return rankOptions(at, card(throws!, known), known).slice(0, number(count)).map(optionRow);
  },
  CHANCE: (disc, distance, throws, set, rise, headwind) => {
    const known = settings(set);
    const row = rowOf(card(throws!, known), String(disc));
    return [[bestChance(shot(distance!, rise!, headwind!, known), row, known)]];
  },
  ATPOWER: (disc, distance, throws, set, rise, headwind) => {
    const known = settings(set);
    const row = rowOf(card(throws!, known), String(disc));
    return [[powerFor(shot(distance!, rise!, headwind!, known), row, known)]];
  },
  STROKES: (distance, throws, set) => {
    const known = settings(set);
    const distanceM = toMetres(number(distance), known.distanceUnit);
    return [[strokesToHoleOut(distanceM, card(throws!, known), known)]];
  },
  PLAN: (course, throws, set) => {
    const known = settings(set);
    return planCourse(holes(course!, known), card(throws!, known), known).map((planned) => [
      Number(planned.hole),
      ...[planned.playsLikeM, planned.lowM, planned.highM].map((metres) => feet(metres!)),
      ...[planned.option!.disc, planned.option!.power, feet(planned.option!.aimM)],
      ...[planned.option!.chance, feet(planned.option!.leavesM), thenText(planned.option!)],
      planned.option!.strokes,
      planned.second?.disc ?? "",
    ]);
  },
  SCORES: (course, throws, set) => {
    const known = settings(set);
    const { mean, low, high, par, totals } = scoresOf(
      holes(course!, known),
      card(throws!, known),
      known,
    );
    return [
      [mean, low, high, par],
      ["Total", "Chance", "Or better", "Against par"],
      ...totals.map(({ total, chance, orBetter }) => [total, chance, orBetter, total - par!]),
    ];
  },
  COMPARE: (disc, other, distance, throws, set, rise, headwind) => {
    const known = settings(set);
    const at = shot(distance!, rise!, headwind!, known);
    const bag = card(throws!, known);
    const { strokes, otherStrokes, saves, sure } = compareDiscs(
      String(disc),
      String(other),
      at,
      bag,
      known,
    );
    return [[strokes, otherStrokes, saves, sure]];
  },
  PACK: (course, throws, count, set) => {
    const known = settings(set);
    const { discs, strokes, further } = pack(
      holes(course!, known),
      card(throws!, known),
      known,
      number(count),
    );
    return [
      ...discs.map((disc, place) => [disc, "yes", place === 0 ? strokes : "", ""]),
      ...further.map(({ disc, saves }) => [disc, "no", "", saves]),
    ];
  },
  COVERAGE: (throws, set, _from, _to, step) => {
    const known = settings(set);
    const stepM = toMetres(number(step), known.distanceUnit);
    return coverage(card(throws!, known), known, { stepM }).map((row) => [
      ...[feet(row.distanceM), row.chance, row.ideal, row.disc],
    ]);
  },
  GAPS: (throws, set) => {
    const known = settings(set);
    const bag = card(throws!, known);
    return [
      ...gaps(bag, known).map(({ fromM, toM, loss }) => ["gap", feet(fromM), feet(toM), loss]),
      ...twins(bag, known).map(({ a, b, costA, costB }) =>
        costA <= costB ? ["twins", a, b, ""] : ["twins", b, a, ""],
      ),
    ];
  },
  WORTH: (course, throws, set) => {
    const known = settings(set);
    return worth(holes(course!, known), card(throws!, known), known).map(({ disc, strokes }) => [
      ...[disc, strokes],
    ]);
  },
  LEARN: (rounds, throws, set) => {
    const known = settings(set);
    const factors = learnFactors(readRounds(rounds as Cells, known), card(throws!, known), known);
    return (
      [
        ["Uphill factor", factors.uphill],
        ["Headwind factor", factors.headwind],
        ["Tailwind factor", factors.tailwind],
        ["Course carry", factors.courseCarry],
        ["Course spread", factors.courseSpread],
        ["Course side", factors.courseSide],
      ] as const
    ).map(([name, { value, sd, rows }]) => [name, value, sd, rows]);
  },
  CALIBRATION: (rounds, throws, set) => {
    const known = settings(set);
    const all = calibration(readRounds(rounds as Cells, known), card(throws!, known), known);
    return [
      [
        ...["any chance", all.told, all.happened, all.low, all.high, all.rows],
        ...[all.brier, all.p, all.sentence],
      ],
    ];
  },
  PUTTING: (putts, set) => {
    const known = settings(set);
    const distancesM = known.putting.map(({ distanceM }) => distanceM);
    return learnPutting(readPutts(putts as Cells, known), distancesM).map((row) => [
      ...[feet(row.distanceM), row.share, row.low, row.high],
    ]);
  },
};
