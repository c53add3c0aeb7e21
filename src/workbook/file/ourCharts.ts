/** Charts of ours in a file: those that are as we would draw them, which the page keeps. */
import { starterBlueprint } from "../blueprint/index";
import type { ChartPlan, SheetPlan } from "../blueprint/types";
import { textOf } from "../package/xml";
import { chartXml } from "./chartParts";

/** What a chart shows: its title and every reference, in order. */
function content(xml: string): string {
  const texts = [...xml.matchAll(/<(?:\w+:)?(f|t)(?:\s[^>]*)?>([^<]*)</g)];
  return texts.map(([, , text = ""]) => textOf(text)).join("\n");
}

let known: ReadonlyMap<string, SheetPlan> | undefined;
const plans = (): ReadonlyMap<string, SheetPlan> =>
  (known ??= new Map(starterBlueprint().sheets.map((plan) => [plan.name, plan])));

/** Plans of the charts among some parts that are ours, in our order. */
export function ourCharts(sheet: string, parts: readonly string[]): ChartPlan[] {
  const found = new Set(parts.map(content));
  return (plans().get(sheet)?.charts ?? []).filter((plan) => found.has(content(chartXml(plan))));
}

/** How a sheet of ours is printed. */
export const ourPrint = (sheet: string): SheetPlan["print"] => plans().get(sheet)?.print;
