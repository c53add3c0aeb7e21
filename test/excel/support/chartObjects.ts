import { HostCollection, HostObject, invalid, notFound } from "./hostObject";
import type { RangeObject } from "./rangeObject";
import type { ChartModel, SeriesModel, SheetModel } from "./sheetModel";

export class ChartCollection extends HostCollection<ChartObject> {
  readonly kind = "ChartCollection";

  constructor(private readonly sheet: SheetModel) {
    super();
  }
  get items(): ChartObject[] {
    return this.sheet.charts.map((chart) => new ChartObject(this.sheet, chart));
  }
  /** Excel makes a series of its own out of the cells that it is given. */
  Add(type: string, source: RangeObject, _by: string): ChartObject {
    this.sheet.requireUnprotected();
    if (!/^XYScatter/.test(type)) throw invalid(`chart ${type}`);
    const own: SeriesModel = { name: "Series1", x: "", y: source.Address, looks: {} };
    const id = this.sheet.book.nextId("chart");
    const chart = { id, type, name: `Chart ${id}`, series: [own], looks: {} };
    this.sheet.charts.push(chart);
    return new ChartObject(this.sheet, chart);
  }
  GetItem(key: string): ChartObject {
    const found = this.GetItemOrNullObject(key);
    if (!found) throw notFound(`chart ${key}`);
    return found;
  }
  GetItemOrNullObject(key: string): ChartObject | null {
    return this.items.find(({ Id, Name }) => Id === key || Name === key) ?? null;
  }
}

/** Looks of a chart are only noted; the host knows the ones that are named here and no other. */
class Noted extends HostObject {
  constructor(
    readonly kind: string,
    protected readonly looks: Record<string, unknown>,
    protected readonly prefix: string,
    known: readonly string[] = [],
    parts: Readonly<Record<string, () => HostObject>> = {},
  ) {
    super();
    for (const name of known)
      Object.defineProperty(this, name, {
        get: () => looks[`${prefix}${name}`],
        set: (value) => (looks[`${prefix}${name}`] = value),
      });
    for (const [name, get] of Object.entries(parts)) Object.defineProperty(this, name, { get });
  }
}

const line = (looks: Record<string, unknown>, prefix: string): Noted =>
  new Noted("ChartLineFormat", looks, `${prefix}Line.`, ["Color", "Weight", "LineStyle"]);
const lineFormat = (looks: Record<string, unknown>, prefix: string): Noted =>
  new Noted("ChartFormat", looks, prefix, [], { Line: () => line(looks, prefix) });
const font = (looks: Record<string, unknown>, prefix: string): Noted =>
  new Noted("ChartFont", looks, `${prefix}Font.`, ["Size", "Bold", "Color"]);

const axis = (looks: Record<string, unknown>, prefix: string): Noted =>
  new Noted("ChartAxis", looks, prefix, ["TickLabelPosition", "NumberFormat", "Minimum"], {
    Title: () => new Noted("ChartAxisTitle", looks, `${prefix}Title.`, ["Text", "Visible"]),
    MajorGridlines: () =>
      new Noted("ChartGridlines", looks, `${prefix}Grid.`, ["Visible"], {
        Format: () => lineFormat(looks, `${prefix}Grid.`),
      }),
  });

export class ChartObject extends HostObject {
  readonly kind = "Chart";

  constructor(
    private readonly sheet: SheetModel,
    readonly chart: ChartModel,
  ) {
    super();
  }
  get Id(): string {
    return this.chart.id;
  }
  get Name(): string {
    return this.chart.name;
  }
  set Name(name: string) {
    this.chart.name = name;
  }
  get Title(): HostObject {
    const { looks } = this.chart;
    return new Noted("ChartTitle", looks, "Title.", ["Text"], {
      Format: () =>
        new Noted("ChartTitleFormat", looks, "Title.", [], { Font: () => font(looks, "Title.") }),
    });
  }
  get Legend(): HostObject {
    return new Noted("ChartLegend", this.chart.looks, "Legend.", ["Visible", "Position"]);
  }
  get Axes(): HostObject {
    const { looks } = this.chart;
    return new Noted("ChartAxes", looks, "", [], {
      CategoryAxis: () => axis(looks, "X."),
      ValueAxis: () => axis(looks, "Y."),
    });
  }
  get Series(): SeriesCollection {
    return new SeriesCollection(this.chart);
  }
  SetPosition(from: string, to: string): void {
    this.chart.looks["Position"] = `${from}:${to}`;
  }
  Delete(): void {
    this.sheet.charts.splice(this.sheet.charts.indexOf(this.chart), 1);
  }
}

class SeriesCollection extends HostCollection<SeriesObject> {
  readonly kind = "ChartSeriesCollection";

  constructor(private readonly chart: ChartModel) {
    super();
  }
  get items(): SeriesObject[] {
    return this.chart.series.map((series) => new SeriesObject(this.chart, series));
  }
  Add(name: string | null): SeriesObject {
    if (this.chart.series.length >= 255) throw invalid("more than 255 series");
    const series = { name: name ?? "", x: "", y: "", looks: {} };
    this.chart.series.push(series);
    return new SeriesObject(this.chart, series);
  }
}

class SeriesObject extends HostObject {
  readonly kind = "ChartSeries";

  constructor(
    private readonly chart: ChartModel,
    private readonly series: SeriesModel,
  ) {
    super();
  }
  get Name(): string {
    return this.series.name;
  }
  set ChartType(value: unknown) {
    this.series.looks["type"] = value;
  }
  set MarkerStyle(value: unknown) {
    this.series.looks["marker"] = value;
  }
  set MarkerSize(value: unknown) {
    if (!(typeof value === "number" && value >= 2 && value <= 72)) throw invalid("marker size");
    this.series.looks["markerSize"] = value;
  }
  set MarkerBackgroundColor(value: unknown) {
    this.series.looks["markerFill"] = value;
  }
  set MarkerForegroundColor(value: unknown) {
    this.series.looks["markerLine"] = value;
  }
  get Format(): HostObject {
    return lineFormat(this.series.looks, "");
  }
  get Points(): SeriesPoints {
    return new SeriesPoints(this.series);
  }
  SetXAxisValues(range: RangeObject): void {
    this.series.x = range.Address;
  }
  SetValues(range: RangeObject): void {
    this.series.y = range.Address;
  }
  Delete(): void {
    this.chart.series.splice(this.chart.series.indexOf(this.series), 1);
  }
}

class SeriesPoints extends HostObject {
  readonly kind = "ChartPointsCollection";
  constructor(private readonly series: SeriesModel) {
    super();
  }
  GetItemAt(index: number): HostObject {
    if (index !== 0) throw invalid(`point ${index}`);
    const { looks } = this.series;
    return new Noted("ChartPoint", looks, "Point.", ["HasDataLabel"], {
      DataLabel: () => new Noted("ChartDataLabel", looks, "Label.", ["Formula", "Position"]),
    });
  }
}
