/** The player's settings, out of a two-column range of label and value. */
import { USUAL_PUTTING_FT } from "../constants";
import { unusable } from "../errors";
import { parseDirection } from "../flight/wind";
import { messages } from "../messages";
import type { Cells, PuttingRow, Settings } from "../types";
import {
  type DistanceUnit,
  fromCelsius,
  fromMetres,
  fromMps,
  type TemperatureUnit,
  toCelsius,
  toMetres,
  toMps,
  type WindUnit,
} from "../units";
import { dateIn, describeCell, ErrorCell, isBlank, type PlainCell, plainCell } from "./cell";
import { type Aliases, DISTANCE_WORDS, headingOf, TEMPERATURE_WORDS, WIND_WORDS } from "./headings";
import { discKey } from "./names";
import {
  SETTING_LABELS,
  type SettingName,
  type SettingQuantity,
  settingRule,
} from "./settingsTable";

// The putting table under the settings label Putting.

/**
 * Pairs of distance and share made, nearest first; an empty list where there is none. Throws an
 * `unusable` error for a share outside 0 to 1, a distance below 0, or two rows for one distance.
 */
export function readPutting(
  pairs: readonly (readonly [distance: PlainCell, share: PlainCell])[],
  unit: DistanceUnit,
): PuttingRow[] {
  const rows = pairs.map(([distance, share]) => ({
    distance: isWithin(distance, "Putting distance", 0, 1000),
    share: isBlank(share) ? 0 : isWithin(share, `Putting at ${String(distance)}`, 0, 1),
  }));
  rows.sort((a, b) => a.distance - b.distance);
  rows.forEach((row, index) => {
    if (rows[index - 1]?.distance === row.distance)
      throw unusable(messages.log.puttingTwice(row.distance));
  });
  return rows.map(({ distance, share }) => ({ distanceM: toMetres(distance, unit), share }));
}

function isWithin(cell: PlainCell, label: string, low: number, high: number): number {
  if (typeof cell !== "number")
    throw unusable(messages.log.settingNotNumber(label, describeCell(cell)));
  if (cell < low || cell > high)
    throw unusable(messages.log.settingOutside(label, `${cell}`, `${low}`, `${high}`));
  return cell;
}

// The settings range taken apart: which label holds what, and the putting pairs under theirs.

export interface SettingCell {
  /** The label as the sheet has it, for sentences. */
  readonly label: string;
  /** What stands in brackets behind the label; "" for nothing. */
  readonly unit: string;
  readonly cell: PlainCell;
}

export interface SettingRows {
  readonly given: ReadonlyMap<SettingName, SettingCell>;
  /** Distance and share as they stand under the label Putting. */
  readonly putting: readonly (readonly [distance: PlainCell, share: PlainCell])[];
}

/** A header over the two columns is welcome and means nothing. */
const HEADERS: Aliases<"header"> = { header: ["setting", "settings", "label"] };

export function settingRows(cells: Cells): SettingRows {
  const given = new Map<SettingName, SettingCell>();
  const putting: (readonly [PlainCell, PlainCell])[] = [];
  let underPutting = false;
  cells.forEach((cellsOfRow, index) => {
    const label = plainCell(cellsOfRow[0]);
    const cell = plainCell(cellsOfRow[1]);
    if (saysNothing(label) && saysNothing(cell)) return;
    if (underPutting && typeof label === "number") {
      putting.push([label, cell]);
      return;
    }
    if (isBlank(label)) throw unusable(messages.log.unlabelled(index + 1));
    if (index === 0 && headingOf(label, HEADERS)) return;
    const heading = headingOf(label, SETTING_LABELS);
    const shown = typeof label === "string" ? label.trim() : describeCell(label);
    if (!heading) throw unusable(messages.log.unknownSetting(index + 1, shown));
    if (given.has(heading.field)) throw unusable(messages.log.settingTwice(index + 1, shown));
    given.set(heading.field, { label: shown, unit: heading.unit, cell });
    underPutting = heading.field === "putting";
  });
  return { given, putting };
}

/** Some hosts send a blank cell as 0. */
const saysNothing = (cell: PlainCell): boolean => cell === 0 || isBlank(cell);

const AIMS: ReadonlyMap<string, Settings["aimFor"]> = new Map([
  ["strokes", "strokes"],
  ["circle", "circle"],
]);

const USUAL_PUTTING: Settings["putting"] = USUAL_PUTTING_FT.map(([feet, share]) => ({
  distanceM: toMetres(feet, "ft"),
  share,
}));

/**
 * Reads settings: labels in any case and order, each at most once; a label that is missing keeps its
 * usual value, and so does a blank one, save Memory, where blank means that throws never age. Labels,
 * units, usual values and ranges are those of SETTINGS_TABLE. Where a 0 makes no sense it counts as a
 * blank, for some hosts send a blank cell as 0; where this range shows that its host does, every 0
 * counts as one. An unknown or repeated label, a bad unit or a value outside its range throws an
 * `unusable` error that names it. An empty range gives the usual settings.
 *
 * @example
 * readSettings([["Distances in", "m"], ["Memory (days)", 90]]).memoryDays // 90
 */
export function readSettings(cells: Cells): Settings {
  const { given, putting } = settingRows(cells);
  const zeroIsBlank = [...given].some(([name, { cell }]) => cell === 0 && !mayBeZero(name));

  const valueOf = (name: SettingName): SettingCell | null => {
    const setting = given.get(name);
    if (!setting || isBlank(setting.cell)) return null;
    return setting.cell === 0 && (zeroIsBlank || !mayBeZero(name)) ? null : setting;
  };
  const wordOf = <Word>(name: SettingName, words: ReadonlyMap<string, Word>): Word => {
    const setting = valueOf(name);
    return setting ? oneOf(setting, words) : words.get(discKey(String(settingRule(name).usual)))!;
  };

  const distanceUnit = wordOf("distanceUnit", DISTANCE_WORDS);
  const windUnit = wordOf("windUnit", WIND_WORDS);
  const temperatureUnit = wordOf("temperatureUnit", TEMPERATURE_WORDS);
  const scales = scalesIn(distanceUnit, windUnit, temperatureUnit);
  /** In m, m/s, °C or as it is; null for a blank that has no usual value. */
  const numberOf = (name: SettingName): number | null => {
    const { quantity = "plain", usual, low = -Infinity, high = Infinity } = settingRule(name);
    const { to, from } = scales[quantity];
    const setting = valueOf(name);
    if (setting) {
      const bound = (limit: number): number =>
        quantity === "plain" ? limit : Math.round(from(limit));
      return to(within(setting, bound(low), bound(high)));
    }
    return typeof usual === "number" ? to(usual) : null;
  };
  const known = (name: SettingName, otherwise = 0): number => numberOf(name) ?? otherwise;

  for (const name of ["altitude", "fieldAltitude"] as const)
    sameUnit(given.get(name), distanceUnit, DISTANCE_WORDS);
  sameUnit(given.get("circle"), "m", DISTANCE_WORDS);
  sameUnit(given.get("windSpeed"), windUnit, WIND_WORDS);
  for (const name of ["temperature", "fieldTemperature"] as const)
    sameUnit(given.get(name), temperatureUnit, TEMPERATURE_WORDS);
  const windFrom = valueOf("windFrom");
  const puttingRows = readPutting(putting, distanceUnit);

  return {
    player: textOf(valueOf("player")),
    asOfDay: dayOf(valueOf("asOf")),
    memoryDays: given.has("memory") && !valueOf("memory") ? Infinity : known("memory"),
    distanceUnit,
    windUnit,
    temperatureUnit,
    windMps: known("windSpeed"),
    windFromDegrees: windFrom && parseDirection(windFrom.cell, `Settings: ${windFrom.label}`),
    temperatureC: numberOf("temperature"),
    altitudeM: known("altitude"),
    fieldTemperatureC: numberOf("fieldTemperature"),
    fieldAltitudeM: numberOf("fieldAltitude"),
    humidity: numberOf("humidity"),
    circleM: known("circle"),
    usualSpread: known("usualSpread"),
    sideSpreadRad: known("sideSpread"),
    courseSpread: known("courseSpread"),
    courseSideRad: known("courseSide"),
    courseCarry: known("courseCarry"),
    today: known("today"),
    todaySd: known("todaySd"),
    todayDay: dayOf(valueOf("todayDay")),
    highestPower: known("highestPower"),
    aimFor: wordOf("aimFor", AIMS),
    uphillFactor: known("uphillFactor"),
    uphillSd: known("uphillSd"),
    headwindFactor: known("headwindFactor"),
    headwindSd: known("headwindSd"),
    tailwindFactor: known("tailwindFactor"),
    tailwindSd: known("tailwindSd"),
    putting: puttingRows.length > 0 ? puttingRows : USUAL_PUTTING,
  };
}

/** Whether a 0 is a value of the setting. */
function mayBeZero(name: SettingName): boolean {
  const { kind, low = 0, high = 0 } = settingRule(name);
  return kind === "direction" || (kind === "number" && low <= 0 && high >= 0);
}

type Scale = Readonly<Record<"to" | "from", (value: number) => number>>;

/** From what the player types to SI, and back. */
function scalesIn(
  distanceUnit: DistanceUnit,
  windUnit: WindUnit,
  temperatureUnit: TemperatureUnit,
): Record<SettingQuantity, Scale> {
  const same = (value: number): number => value;
  return {
    plain: { to: same, from: same },
    distance: {
      to: (value) => toMetres(value, distanceUnit),
      from: (metres) => fromMetres(metres, distanceUnit),
    },
    wind: { to: (value) => toMps(value, windUnit), from: (mps) => fromMps(mps, windUnit) },
    temperature: {
      to: (value) => toCelsius(value, temperatureUnit),
      from: (celsius) => fromCelsius(celsius, temperatureUnit),
    },
  };
}

function within({ label, cell }: SettingCell, low: number, high: number): number {
  if (typeof cell !== "number")
    throw unusable(messages.log.settingNotNumber(label, describeCell(cell)));
  if (cell < low || cell > high)
    throw unusable(messages.log.settingOutside(label, `${cell}`, `${low}`, `${high}`));
  return cell;
}

function oneOf<Word>({ label, cell }: SettingCell, words: ReadonlyMap<string, Word>): Word {
  const word = typeof cell === "string" ? words.get(discKey(cell)) : undefined;
  if (word === undefined) {
    const choices = [...new Set(words.values())].join(" or ");
    throw unusable(messages.log.settingNotOneOf(label, describeCell(cell), choices));
  }
  return word;
}

/** "Altitude (m)" while distances are in feet would be misread: say so instead. */
function sameUnit<Unit extends string>(
  setting: SettingCell | undefined,
  unit: Unit,
  words: ReadonlyMap<string, Unit>,
): void {
  const named = setting && words.get(setting.unit);
  if (setting && named && named !== unit)
    throw unusable(messages.log.settingUnit(`'${setting.label}'`, unit));
}

function textOf(setting: SettingCell | null): string | null {
  if (!setting) return null;
  const { label, cell } = setting;
  if (cell instanceof ErrorCell || typeof cell === "boolean")
    throw unusable(messages.log.settingNotText(label, describeCell(cell)));
  return String(cell).trim();
}

function dayOf(setting: SettingCell | null): number | null {
  if (!setting) return null;
  const day = dateIn(setting.cell);
  if (Number.isNaN(day))
    throw unusable(messages.log.settingNotDate(setting.label, describeCell(setting.cell)));
  return day;
}

/** The settings of a player who has set nothing. */
export const DEFAULT_SETTINGS: Settings = readSettings([]);
