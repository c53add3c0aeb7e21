/** Charts of the blueprint as charts of Excel. */
import { areaRef, readSheetArea } from "../a1";
import type { ChartPlan, SeriesPlan, SheetPlan } from "../blueprint/types";
import { sentences } from "../sentences";
import { ACCENT, CHART_GREY, LINE } from "./cells";
import { inExcel, syncQuietly } from "./session";

/** The frame of a chart, still without series of ours. */
export function addChart(sheet: Excel.Worksheet, plan: ChartPlan): Excel.Chart {
  const chart = sheet.charts.add("XYScatter", sheet.getRange(plan.from), "Columns");
  chart.name = plan.name;
  chart.setPosition(plan.from, plan.to);
  chart.title.text = plan.title;
  chart.title.format.font.size = 12;
  chart.title.format.font.bold = true;
  chart.series.load("items/name");
  return chart;
}

/** Takes out the series that Excel made up from the cells under the chart, and draws ours. */
export function fillChart(
  context: Excel.RequestContext,
  chart: Excel.Chart,
  plan: ChartPlan,
): void {
  for (const series of [...chart.series.items].reverse()) series.delete();
  const labelled = plan.series.some((series) => series.labelled);
  plan.series.forEach((series, index) => {
    const colour = labelled || index === 0 ? ACCENT : CHART_GREY;
    if (series.ends) addLine(context, chart, series.ends, colour);
    const added = addLine(context, chart, series, colour, plainName(series));
    if (series.shape === "dots") asDots(added, colour);
  });
  chart.legend.visible = plan.series.length > 1 && !labelled;
  chart.legend.position = "Bottom";
  frame(chart, plan);
}

/** A name that points to a cell stands beside the dot as a label, not in the legend. */
const plainName = ({ name }: SeriesPlan): string | undefined =>
  name.startsWith("=") ? undefined : name;

function rangeAt(context: Excel.RequestContext, ref: string): Excel.Range {
  const { sheet, area } = readSheetArea(ref)!;
  return context.workbook.worksheets.getItem(sheet).getRange(areaRef(area));
}

function addLine(
  context: Excel.RequestContext,
  chart: Excel.Chart,
  { x, y }: { readonly x: string; readonly y: string },
  colour: string,
  name?: string,
): Excel.ChartSeries {
  const series = chart.series.add(name);
  series.setXAxisValues(rangeAt(context, x));
  series.setValues(rangeAt(context, y));
  series.chartType = "XYScatterLinesNoMarkers";
  series.format.line.color = colour;
  series.format.line.weight = 1.75;
  return series;
}

function asDots(series: Excel.ChartSeries, colour: string): void {
  series.chartType = "XYScatter";
  series.markerStyle = "Circle";
  series.markerSize = 7;
  series.markerBackgroundColor = colour;
  series.markerForegroundColor = colour;
}

function frame(chart: Excel.Chart, plan: ChartPlan): void {
  const { categoryAxis, valueAxis } = chart.axes;
  categoryAxis.title.text = plan.xTitle;
  categoryAxis.majorGridlines.visible = true;
  categoryAxis.majorGridlines.format.line.color = LINE;
  if (plan.yTitle === "") {
    valueAxis.tickLabelPosition = "None";
    valueAxis.majorGridlines.visible = false;
  } else {
    valueAxis.title.text = plan.yTitle;
    valueAxis.majorGridlines.format.line.color = LINE;
  }
  if (plan.yFormat !== undefined) valueAxis.numberFormat = plan.yFormat;
}

/** Writes the names of the labelled series beside their dots, each bound to its cell. */
export function labelChart(chart: Excel.Chart, plan: ChartPlan): void {
  let index = 0;
  for (const series of plan.series) {
    if (series.ends) index += 1;
    const drawn = chart.series.getItemAt(index);
    index += 1;
    if (!series.labelled || !series.name.startsWith("=")) continue;
    const dot = drawn.points.getItemAt(0);
    dot.hasDataLabel = true;
    dot.dataLabel.formula = series.name;
    dot.dataLabel.position = "Top";
  }
}

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
