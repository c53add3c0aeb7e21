/** The player's settings, out of a two-column range of label and value. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells, Settings } from "../types";
import { fromCelsius, fromMetres, toCelsius, toMetres, type DistanceUnit } from "../units";
import { describeCell, ErrorCell, isBlank } from "./cell";
import { dateIn } from "./cellParts";
import { DEFAULT_SETTINGS } from "./defaultSettings";
import { discKey } from "./discKey";
import { readPutting } from "./readPutting";
import { settingRows, type SettingCell, type SettingName } from "./settingRows";
import { DISTANCE_WORDS, TEMPERATURE_WORDS, WIND_WORDS } from "./unitWords";

export { DEFAULT_SETTINGS };

const AIMS: ReadonlyMap<string, Settings["aimFor"]> = new Map([
  ["strokes", "strokes"],
  ["circle", "circle"],
]);

/**
 * Reads settings: labels in any case and order, each at most once; a label that is missing keeps its
 * default. A blank value keeps it too, save Memory, where blank means that throws never age. A 0
 * counts as blank, since some hosts send a blank cell as 0 (for 0 °C write 0.1). Units in: altitude
 * and putting in the distance unit, circle in metres, humidity and powers as shares. An unknown or
 * repeated label, a bad unit or a value outside its range throws an `unusable` error that names it.
 * An empty range gives the defaults.
 *
 * @example
 * readSettings([["Distances in", "m"], ["Memory (days)", 90]]).memoryDays // 90
 */
export function readSettings(cells: Cells): Settings {
  const { given, putting } = settingRows(cells);
  const defaults = DEFAULT_SETTINGS;

  const valueOf = (name: SettingName): SettingCell | null => {
    const setting = given.get(name);
    return setting && !isBlank(setting.cell) && setting.cell !== 0 ? setting : null;
  };
  const numberOf = (name: SettingName, low: number, high: number): number | null => {
    const setting = valueOf(name);
    return setting && within(setting, low, high);
  };
  const wordOf = <Word>(name: SettingName, words: ReadonlyMap<string, Word>): Word | null => {
    const setting = valueOf(name);
    return setting && oneOf(setting, words);
  };

  const distanceUnit = wordOf("distanceUnit", DISTANCE_WORDS) ?? defaults.distanceUnit;
  const temperatureUnit = wordOf("temperatureUnit", TEMPERATURE_WORDS) ?? defaults.temperatureUnit;
  sameUnit(given.get("altitude"), distanceUnit);
  sameUnit(given.get("circle"), "m");
  const inUnit = (metres: number): number => Math.round(fromMetres(metres, distanceUnit));
  const degrees = (celsius: number): number => Math.round(fromCelsius(celsius, temperatureUnit));

  const temperature = numberOf("temperature", degrees(-60), degrees(60));
  const altitude = numberOf("altitude", inUnit(-500), inUnit(9000));
  const puttingRows = readPutting(putting, distanceUnit);
  const lowestPower = numberOf("lowestPower", 0.3, 1) ?? defaults.lowestPower;
  const highestPower = numberOf("highestPower", 0.3, 1.2) ?? defaults.highestPower;
  if (lowestPower > highestPower) throw unusable(messages.log.powersCross());

  return {
    player: textOf(valueOf("player")),
    asOfDay: dayOf(valueOf("asOf")),
    memoryDays: given.has("memory")
      ? (numberOf("memory", 1, 36_500) ?? Infinity)
      : defaults.memoryDays,
    distanceUnit,
    windUnit: wordOf("windUnit", WIND_WORDS) ?? defaults.windUnit,
    temperatureUnit,
    temperatureC: temperature === null ? null : toCelsius(temperature, temperatureUnit),
    altitudeM: toMetres(altitude ?? 0, distanceUnit),
    humidity: numberOf("humidity", 0, 1),
    circleM: numberOf("circle", 1, 50) ?? defaults.circleM,
    usualSpread: numberOf("usualSpread", 0.005, 0.5) ?? defaults.usualSpread,
    sideSpreadRad: numberOf("sideSpread", 0.005, 0.5) ?? defaults.sideSpreadRad,
    lowestPower,
    highestPower,
    aimFor: wordOf("aimFor", AIMS) ?? defaults.aimFor,
    uphillFactor: numberOf("uphillFactor", 0.01, 5) ?? defaults.uphillFactor,
    windFactor: numberOf("windFactor", 0.01, 5) ?? defaults.windFactor,
    putting: puttingRows.length > 0 ? puttingRows : defaults.putting,
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
function sameUnit(setting: SettingCell | undefined, unit: DistanceUnit): void {
  const named = setting && DISTANCE_WORDS.get(setting.unit);
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
