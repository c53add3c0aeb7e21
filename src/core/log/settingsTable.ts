/**
 * Every setting once: its label, what its value is measured in, the value of a player who has set
 * nothing, its range, and a few words of help. The reader, the sheet and the reference go by this.
 */
import {
  CIRCLE_M,
  COURSE_SIDE_RAD,
  COURSE_SPREAD,
  HIGHEST_POWER,
  MEMORY_DAYS,
  PLAYS_LIKE_FACTORS,
  SIDE_SPREAD_RAD,
  STRONGEST_WIND_MPS,
  USUAL_SPREAD,
} from "../constants";
import type { Aliases } from "./headings";

/** What a number of the settings is measured in; `plain` has no unit that the player can change. */
export type SettingQuantity = "plain" | "distance" | "wind" | "temperature";

export interface SettingRule {
  /** As the sheet shows it; case and spaces do not matter when it is read. */
  readonly label: string;
  readonly kind: "text" | "date" | "number" | "direction" | "word" | "putting";
  /** Unit of the value as the player types it, in words. */
  readonly unit: string;
  /** What a new sheet holds; "" where a blank is the usual. */
  readonly usual: string | number;
  readonly help: string;
  /** Only for numbers; `low` and `high` in m, m/s, °C or as they are. */
  readonly quantity?: SettingQuantity;
  readonly low?: number;
  readonly high?: number;
  /** Only for words. */
  readonly words?: readonly string[];
  /** How the sheet shows a number. */
  readonly look?: "whole" | "share" | "decimals";
}

const number = (
  label: string,
  unit: string,
  usual: number | "",
  [low, high]: readonly [number, number],
  look: NonNullable<SettingRule["look"]>,
  help: string,
  quantity: SettingQuantity = "plain",
): SettingRule => ({ label, kind: "number", unit, usual, help, quantity, low, high, look });

const word = (label: string, words: readonly string[], help: string): SettingRule => ({
  label,
  kind: "word",
  unit: words.join(", "),
  usual: words[0]!,
  help,
  words,
});

const { uphill, headwind, tailwind } = PLAYS_LIKE_FACTORS;
/** Wide enough for anything that rounds can teach. */
const FACTOR = [-5, 5] as const;
const FACTOR_SD = [0, 5] as const;
const ALTITUDE_M = [-500, 9000] as const;
const TEMPERATURE_C = [-60, 60] as const;
const SPREAD = [0.005, 0.5] as const;
/** Spreads that are added to those of the field, and may be nothing. */
const ADDED_SPREAD = [0, 0.5] as const;
const CARRY_FACTOR = [0.5, 1.5] as const;

export const SETTINGS_TABLE = {
  player: {
    label: "Player",
    kind: "text",
    unit: "name",
    usual: "",
    help: "whose throws are meant; needed where the log names several players",
  },
  asOf: {
    label: "As of",
    kind: "date",
    unit: "date",
    usual: "",
    help: "day from which throws age; blank: the newest throw",
  },
  memory: number(
    "Memory (days)",
    "days",
    MEMORY_DAYS,
    [1, 36_500],
    "whole",
    "a throw this old counts half; blank: throws never age",
  ),
  distanceUnit: word("Distances in", ["ft", "m"], "unit of every distance and height"),
  windUnit: word("Wind in", ["mph", "km/h", "m/s"], "unit of every wind"),
  windSpeed: number(
    "Wind speed",
    "as Wind in",
    "",
    [0, STRONGEST_WIND_MPS],
    "decimals",
    "wind of the round, for holes with a bearing and no headwind; blank: calm",
    "wind",
  ),
  windFrom: {
    label: "Wind from",
    kind: "direction",
    unit: "compass point or degrees",
    usual: "",
    help: "where that wind comes from, such as NW",
  },
  temperature: number(
    "Temperature",
    "as Temperature in",
    "",
    TEMPERATURE_C,
    "whole",
    "of the air here; blank: usual for the altitude",
    "temperature",
  ),
  temperatureUnit: word("Temperature in", ["F", "C"], "unit of every temperature"),
  altitude: number(
    "Altitude",
    "as Distances in",
    "",
    ALTITUDE_M,
    "whole",
    "of the course; blank: sea level",
    "distance",
  ),
  fieldAltitude: number(
    "Field altitude",
    "as Distances in",
    "",
    ALTITUDE_M,
    "whole",
    "where the throws of the log were made; blank: as here",
    "distance",
  ),
  fieldTemperature: number(
    "Field temperature",
    "as Temperature in",
    "",
    TEMPERATURE_C,
    "whole",
    "of the air there; blank: as here",
    "temperature",
  ),
  humidity: number("Humidity", "share", "", [0, 1], "share", "of the air; blank: dry"),
  circle: number("Circle", "m", CIRCLE_M, [1, 50], "whole", "radius around the target"),
  usualSpread: number(
    "Usual spread",
    "share of carry",
    USUAL_SPREAD,
    SPREAD,
    "share",
    "of a disc that is hardly thrown yet",
  ),
  sideSpread: number(
    "Side spread",
    "ft sideways a ft",
    SIDE_SPREAD_RAD,
    SPREAD,
    "decimals",
    "of a disc whose misses sideways are not noted",
  ),
  courseSpread: number(
    "Course spread",
    "share of carry",
    COURSE_SPREAD,
    ADDED_SPREAD,
    "decimals",
    "what the course adds to the spread along; LEARN teaches it",
  ),
  courseSide: number(
    "Course side",
    "ft sideways a ft",
    COURSE_SIDE_RAD,
    ADDED_SPREAD,
    "decimals",
    "what the course adds to the spread sideways; LEARN teaches it",
  ),
  courseCarry: number(
    "Course carry",
    "factor",
    1,
    CARRY_FACTOR,
    "decimals",
    "carries on the course over those in the field; LEARN teaches it",
  ),
  today: number(
    "Today",
    "factor",
    1,
    CARRY_FACTOR,
    "decimals",
    "your carries of this day over those of the card; FORM tells it",
  ),
  todaySd: number(
    "Today ±",
    "factor",
    "",
    [0, 0.5],
    "decimals",
    "doubt of it, one standard deviation",
  ),
  todayDay: {
    label: "Today is",
    kind: "date",
    unit: "date",
    usual: "",
    help: "the day that these two were found for",
  },
  highestPower: number(
    "Highest power",
    "share of smooth",
    HIGHEST_POWER,
    [0.3, 1.2],
    "share",
    "hardest throw you would choose",
  ),
  aimFor: word("Aim for", ["strokes", "circle"], "what the best disc is best for"),
  uphillFactor: number(
    "Uphill factor",
    "factor",
    uphill.value,
    FACTOR,
    "decimals",
    "how much of the model's slope you meet; LEARN teaches it",
  ),
  uphillSd: number("Uphill factor ±", "factor", uphill.sd, FACTOR_SD, "decimals", "doubt of it"),
  headwindFactor: number(
    "Headwind factor",
    "factor",
    headwind.value,
    FACTOR,
    "decimals",
    "how much of the model's headwind you meet; LEARN teaches it",
  ),
  headwindSd: number(
    "Headwind factor ±",
    "factor",
    headwind.sd,
    FACTOR_SD,
    "decimals",
    "doubt of it",
  ),
  tailwindFactor: number(
    "Tailwind factor",
    "factor",
    tailwind.value,
    FACTOR,
    "decimals",
    "how much of the model's tailwind you meet; LEARN teaches it",
  ),
  tailwindSd: number(
    "Tailwind factor ±",
    "factor",
    tailwind.sd,
    FACTOR_SD,
    "decimals",
    "doubt of it",
  ),
  putting: {
    label: "Putting",
    kind: "putting",
    unit: "distance, share made",
    usual: "",
    help: "distance, and share of putts made from there; blank: a usual table",
  },
} as const satisfies Record<string, SettingRule>;

export type SettingName = keyof typeof SETTINGS_TABLE;

/** The rule of one setting. */
export const settingRule = (name: SettingName): SettingRule => SETTINGS_TABLE[name];

export const SETTING_NAMES = Object.keys(SETTINGS_TABLE) as SettingName[];

/** Labels as they are looked up: in lower case, without a unit in brackets. */
export const SETTING_LABELS = Object.fromEntries(
  SETTING_NAMES.map((name) => [
    name,
    [
      settingRule(name)
        .label.toLowerCase()
        .replace(/ \(.*\)$/, ""),
    ],
  ]),
) as unknown as Aliases<SettingName>;
