/** The player's settings, out of a two-column range of label and value. */
import { USUAL_PUTTING_FT } from "../constants";
import { unusable } from "../errors";
import { parseDirection } from "../flight/wind";
import { messages } from "../messages";
import type { Cells, Settings } from "../types";
import {
  fromCelsius,
  fromMetres,
  fromMps,
  toCelsius,
  toMetres,
  toMps,
  type DistanceUnit,
  type TemperatureUnit,
  type WindUnit,
} from "../units";
import { describeCell, ErrorCell, isBlank } from "./cell";
import { dateIn } from "./cellParts";
import { discKey } from "./discKey";
import { readPutting } from "./readPutting";
import { settingRows, type SettingCell } from "./settingRows";
import { settingRule, type SettingName, type SettingQuantity } from "./settingsTable";
import { DISTANCE_WORDS, TEMPERATURE_WORDS, WIND_WORDS } from "./unitWords";

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
