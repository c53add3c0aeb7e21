/** The form of the day, and how it gets into the settings. */
import { type DayForm, formOfDay } from "../../core/carry/form";
import type { SettingName } from "../../core/log/settingsTable";
import { type Book, oncePerPair } from "../book/book";
import { attempt } from "../controller";
import { count, share } from "../words/figures";

/** What stands for a day: few objects, so that the form of a day is worked out once. */
interface Day {
  readonly serial: number;
}
const DAYS = new Map<number, Day>();
function dayObject(serial: number): Day {
  const known = DAYS.get(serial) ?? { serial };
  DAYS.set(serial, known);
  return known;
}

const workedOut = oncePerPair(({ log, bag, settings }: Book, { serial }: Day): DayForm | null => {
  const form = attempt(() => formOfDay(log, bag, settings, serial));
  return form.ok ? form.value : null;
});

/** How the throws of a day differ from the card; null below five throws on three discs. */
export const formOf = (book: Book, day: number): DayForm | null => workedOut(book, dayObject(day));

/** @example formSentence({ factor: 0.97, sd: 0.02, throws: 8, … }) // "3 % shorter than your card today (± 2 %, 8 throws)." */
export function formSentence({ factor, sd, throws }: DayForm): string {
  const off = Math.round(Math.abs(factor - 1) * 100);
  const than =
    off === 0
      ? "As your card says"
      : `${share(off / 100)} ${factor < 1 ? "shorter" : "farther"} than your card`;
  return `${than} today (± ${share(sd)}, ${count(throws, "throw")}).`;
}

/** The settings that make the form of a day count. */
export const formSettings = ({
  factor,
  sd,
  day,
}: DayForm): Readonly<Partial<Record<SettingName, number>>> => ({
  today: Number(factor.toFixed(3)),
  todaySd: Number(sd.toFixed(3)),
  todayDay: day,
});

/** What stands in the settings when no day's form counts. */
export const NO_FORM = { today: "", todaySd: "", todayDay: "" } as const;

/** Whether the settings hold this form. */
export function formInUse(form: DayForm, { settings }: Book): boolean {
  const { today, todaySd, todayDay } = formSettings(form);
  return settings.today === today && settings.todaySd === todaySd && settings.todayDay === todayDay;
}

/** Whether the settings hold the form of another day than this one. */
export const formIsOld = ({ settings }: Book, day: number): boolean =>
  settings.today !== 1 && settings.todayDay !== day;
