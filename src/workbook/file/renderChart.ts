import type { Worksheet } from "@cj-tech-master/excelts";
import type {
  AddScatterChartSeriesOptions,
  ChartRichText,
  ChartTextProperties,
} from "@cj-tech-master/excelts/chart";
import type { ChartPlan, SeriesPlan } from "../blueprint/types";
import { CHART_ACCENT, CHART_GREY, CHART_LINE } from "./looks";

const SMALL: ChartTextProperties = { size: 900 };

const words = (text: string, properties: ChartTextProperties): ChartRichText => ({
  paragraphs: [{ runs: [{ text, properties }] }],
});

function series(plan: SeriesPlan, index: number): AddScatterChartSeriesOptions {
  const colour = index === 0 ? CHART_ACCENT : CHART_GREY;
  const dots = plan.shape === "dots";
  return {
    name: plan.name.startsWith("=") ? { formula: plan.name.slice(1) } : plan.name,
    xValues: plan.x,
    values: plan.y,
    ...(dots
      ? {
          spPr: { noFill: true, line: { noFill: true } },
          marker: { symbol: "circle", size: 7, fill: colour, border: colour },
        }
      : { line: colour, lineWidth: 1.75, marker: { symbol: "none" }, smooth: false }),
    ...(plan.minus !== undefined && plan.plus !== undefined
      ? {
          errorBars: {
            direction: "x",
            barDir: "both",
            type: "cust",
            minus: plan.minus,
            plus: plan.plus,
            noEndCap: true,
            line: colour,
            lineWidth: 1.5,
          },
        }
      : {}),
    ...(plan.labelled
      ? {
          dataLabels: {
            showSerName: true,
            showLegendKey: false,
            showVal: false,
            position: "t",
            txPr: SMALL,
          },
        }
      : {}),
  };
}

/** Draws one chart of the blueprint as a chart of the spreadsheet's own. */
export function renderChart(sheet: Worksheet, plan: ChartPlan): void {
  const quiet = {
    majorGridlines: true,
    majorGridlinesStyle: { border: CHART_LINE, borderWidth: 0.5 },
    minorTickMark: "none",
    lineColor: CHART_LINE,
    txPr: SMALL,
  } as const;
  const labelled = plan.series.some((one) => one.labelled);
  const ordered = plan.yTitle === "";
  sheet.addScatterChart(
    {
      title: words(plan.title, { size: 1200, bold: true }),
      showLegend: plan.series.length > 1 && !labelled,
      legendPosition: "b",
      displayBlanksAs: "gap",
      varyColors: false,
      series: plan.series.map((one, index) => series(one, labelled ? 0 : index)),
      categoryAxis: { ...quiet, title: plan.xTitle, numFmt: "0" },
      valueAxis: {
        ...quiet,
        majorGridlines: !ordered,
        ...(ordered ? { tickLblPos: "none", majorTickMark: "none" } : { title: plan.yTitle }),
        ...(plan.yFormat === undefined ? {} : { numFmt: plan.yFormat }),
        ...(plan.yFormat?.endsWith("%") ? { min: 0, max: 1 } : {}),
      },
    },
    `${plan.from}:${plan.to}`,
  );
}
