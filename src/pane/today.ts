import { serialDay } from "../core/log/cell";
import type { PaneOptions } from "./controller";

/** Today as a serial day, on the calendar of the place where the machine is. */
export function todayOf(options: PaneOptions): number {
  if (options.today) return options.today();
  const now = new Date();
  return serialDay(now.getFullYear(), now.getMonth() + 1, now.getDate())!;
}
