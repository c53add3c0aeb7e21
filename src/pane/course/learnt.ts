/** What rounds taught, and how it gets into the settings. */
import { makeCard } from "../../core/carry/card";
import { type Factors, type Learnt, learnFactors } from "../../core/learn/learnFactors";
import { type SettingName, settingRule } from "../../core/log/settingsTable";
import type { Settings } from "../../core/types";
import { type Book, oncePer } from "../book/book";
import { type Answer, attempt } from "../controller";

export const learntOf = oncePer(({ rounds, card, settings }: Book): Answer<Factors> =>
  attempt(() => learnFactors(rounds, card, settings)),
);

type NumberOf = {
  [Name in keyof Settings]: Settings[Name] extends number ? Name : never;
}[keyof Settings];

/** A learnt factor and the settings that take it and its ±. */
export interface Use {
  readonly learnt: (factors: Factors) => Learnt;
  readonly setting: SettingName;
  readonly field: NumberOf;
  /** null where the settings keep no ±. */
  readonly sd: { readonly setting: SettingName; readonly field: NumberOf } | null;
  /** Decimals that a setting needs: more would only look exact. */
  readonly decimals: number;
}

export const USES: readonly Use[] = [
  {
    learnt: ({ uphill }) => uphill,
    setting: "uphillFactor",
    field: "uphillFactor",
    sd: { setting: "uphillSd", field: "uphillSd" },
    decimals: 2,
  },
  {
    learnt: ({ headwind }) => headwind,
    setting: "headwindFactor",
    field: "headwindFactor",
    sd: { setting: "headwindSd", field: "headwindSd" },
    decimals: 2,
  },
  {
    learnt: ({ tailwind }) => tailwind,
    setting: "tailwindFactor",
    field: "tailwindFactor",
    sd: { setting: "tailwindSd", field: "tailwindSd" },
    decimals: 2,
  },
  {
    learnt: ({ courseCarry }) => courseCarry,
    setting: "courseCarry",
    field: "courseCarry",
    sd: null,
    decimals: 3,
  },
  {
    learnt: ({ courseSpread }) => courseSpread,
    setting: "courseSpread",
    field: "courseSpread",
    sd: null,
    decimals: 3,
  },
  {
    learnt: ({ courseSide }) => courseSide,
    setting: "courseSide",
    field: "courseSideRad",
    sd: null,
    decimals: 3,
  },
];

/** As the setting takes it: within its range, with the decimals that it needs. */
function rounded(value: number, setting: SettingName, decimals: number): number {
  const { low = -Infinity, high = Infinity } = settingRule(setting);
  return Number(Math.min(high, Math.max(low, value)).toFixed(decimals));
}

/** Values by the name of the setting, and the same as fields of the settings. */
export interface FactorsToUse {
  readonly written: Readonly<Partial<Record<SettingName, number>>>;
  readonly settings: Settings;
}

function asSettings(factors: Factors, settings: Settings): FactorsToUse {
  const written: Partial<Record<SettingName, number>> = {};
  const fields: Partial<Record<NumberOf, number>> = {};
  const put = (setting: SettingName, field: NumberOf, value: number, decimals: number): void => {
    fields[field] = written[setting] = rounded(value, setting, decimals);
  };
  for (const { learnt, setting, field, sd, decimals } of USES) {
    const { value, sd: doubt } = learnt(factors);
    put(setting, field, value, decimals);
    if (sd) put(sd.setting, sd.field, doubt, decimals);
  }
  return { written, settings: { ...settings, ...fields } };
}

/** Whether one more round of learning would write the same but for the last decimal. */
const settled = (one: FactorsToUse, other: Settings): boolean =>
  USES.every(({ field, sd, decimals }) =>
    [field, ...(sd ? [sd.field] : [])].every(
      (name) => Math.abs(one.settings[name] - other[name]) < 1.5 * 10 ** -decimals,
    ),
  );

/** Whether what was learnt is in the settings already. */
export const inUse = (factors: Factors, { settings }: Book): boolean =>
  settled(asSettings(factors, settings), settings);

const MOST_ROUNDS = 6;

/**
 * What to write into the settings. Throws of the field are levelled by the factors too, so using them
 * moves the card a little, and that the factors: both are worked out in turn until they stay.
 */
export function factorsToUse(factors: Factors, { rounds, log, bag, settings }: Book): FactorsToUse {
  let use = asSettings(factors, settings);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const card = makeCard(log, bag, use.settings);
    const next = asSettings(learnFactors(rounds, card, use.settings), settings);
    if (settled(next, use.settings)) return use;
    use = next;
  }
  return use;
}
