import type { ChartPlan, SheetPlan } from "../blueprint/types";
import { sentences } from "../sentences";
import { addChart, fillChart, labelChart } from "./renderCharts";
import { inExcel, syncQuietly } from "./session";

/** Draws the charts of new sheets. A chart that Excel refuses is taken away and named in the answer. */
export async function drawCharts(plans: readonly SheetPlan[]): Promise<string[]> {
  const charts = plans.flatMap(({ name, charts = [] }) =>
    charts.map((plan) => ({ sheet: name, plan })),
  );
  if (charts.length === 0) return [];
  const lacking: string[] = [];
  for (const { sheet, plan } of charts) {
    try {
      await inExcel(`Drawing ${plan.name}`, (context) => draw(context, sheet, plan));
      if (!(await isLabelled(sheet, plan))) lacking.push(sentences.noLabels(plan.title));
    } catch {
      lacking.push(sentences.noChart(plan.title));
      await inExcel("Taking back", (context) => takeAway(context, sheet, plan)).catch(() => {});
    }
  }
  return lacking;
}

async function draw(context: Excel.RequestContext, name: string, plan: ChartPlan): Promise<void> {
  const chart = addChart(context.workbook.worksheets.getItem(name), plan);
  await context.sync();
  fillChart(context, chart, plan);
  await syncQuietly(context);
}

/** Labels in a request of their own: a chart without them still shows what it shows. */
async function isLabelled(sheet: string, plan: ChartPlan): Promise<boolean> {
  if (!plan.series.some((series) => series.labelled)) return true;
  try {
    await inExcel(`Labelling ${plan.name}`, async (context) => {
      labelChart(context.workbook.worksheets.getItem(sheet).charts.getItem(plan.name), plan);
      await syncQuietly(context);
    });
    return true;
  } catch {
    return false;
  }
}

async function takeAway(
  context: Excel.RequestContext,
  sheet: string,
  plan: ChartPlan,
): Promise<void> {
  const chart = context.workbook.worksheets.getItem(sheet).charts.getItemOrNullObject(plan.name);
  await context.sync();
  if (!chart.isNullObject) chart.delete();
  await context.sync();
}
