/** Charts of the blueprint as parts of a file (ECMA-376 part 1, 21.2 and 20.5). */
import { readSpot } from "../a1";
import type { ChartPlan, SeriesPlan } from "../blueprint/types";
import { element, HEAD, OFFICE, storedText } from "./xmlText";

const ACCENT = "0B6E75";
const GREY = "8A969B";
const LINE = "C9D1D4";
/** Hundredths of a point, and English Metric Units a point. */
const SMALL = 900;
const TITLE = 1200;
const EMU_A_POINT = 12_700;

const val = (name: string, value: string | number): string => element(`c:${name}`, { val: value });
const solid = (rgb: string): string =>
  `<a:solidFill>${element("a:srgbClr", { val: rgb })}</a:solidFill>`;
const lineOf = (points: number, rgb: string): string =>
  element("a:ln", { w: points * EMU_A_POINT }, solid(rgb));
const shape = (inside: string): string => element("c:spPr", {}, inside);
const reference = (name: string, ref: string): string =>
  element(`c:${name}`, {}, `<c:numRef>${element("c:f", {}, storedText(ref))}</c:numRef>`);
const smallText = `<c:txPr><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr sz="${SMALL}"/></a:pPr><a:endParaRPr lang="en-US"/></a:p></c:txPr>`;

function title(text: string, size: number, bold: boolean): string {
  const run = element(
    "a:r",
    {},
    element("a:rPr", { lang: "en-US", sz: size, b: bold ? 1 : 0 }) +
      element("a:t", {}, storedText(text)),
  );
  const paragraph = `<a:p><a:pPr><a:defRPr sz="${size}" b="${bold ? 1 : 0}"/></a:pPr>${run}</a:p>`;
  return `<c:title><c:tx><c:rich><a:bodyPr/><a:lstStyle/>${paragraph}</c:rich></c:tx><c:overlay val="0"/></c:title>`;
}

/** Every one of the six is said: Excel takes a missing one for "yes" (21.2.2, defaults of CT_Boolean). */
const LABELS =
  "<c:dLbls><c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr>" +
  smallText +
  val("dLblPos", "t") +
  val("showLegendKey", 0) +
  val("showVal", 0) +
  val("showCatName", 0) +
  val("showSerName", 1) +
  val("showPercent", 0) +
  val("showBubbleSize", 0) +
  "</c:dLbls>";

const errorBars = (minus: string, plus: string, colour: string): string =>
  "<c:errBars>" +
  val("errDir", "x") +
  val("errBarType", "both") +
  val("errValType", "cust") +
  val("noEndCap", 1) +
  reference("plus", plus) +
  reference("minus", minus) +
  shape(lineOf(1.5, colour)) +
  "</c:errBars>";

function series(plan: SeriesPlan, index: number, colour: string): string {
  const name = plan.name.startsWith("=")
    ? `<c:strRef>${element("c:f", {}, storedText(plan.name.slice(1)))}</c:strRef>`
    : element("c:v", {}, storedText(plan.name));
  const dots = plan.shape === "dots";
  const fill = solid(colour) + `<a:ln>${solid(colour)}</a:ln>`;
  return element(
    "c:ser",
    {},
    val("idx", index) +
      val("order", index) +
      element("c:tx", {}, name) +
      shape(dots ? '<a:ln w="19050"><a:noFill/></a:ln>' : lineOf(1.75, colour)) +
      element(
        "c:marker",
        {},
        dots ? val("symbol", "circle") + val("size", 7) + shape(fill) : val("symbol", "none"),
      ) +
      (plan.labelled ? LABELS : "") +
      (plan.minus !== undefined && plan.plus !== undefined
        ? errorBars(plan.minus, plan.plus, colour)
        : "") +
      reference("xVal", plan.x) +
      reference("yVal", plan.y) +
      val("smooth", 0),
  );
}

interface Axis {
  readonly id: number;
  readonly crosses: number;
  readonly side: "b" | "l";
  readonly title: string;
  readonly format: string;
  readonly lines: boolean;
  readonly numbers: boolean;
  readonly isShare: boolean;
}

const axis = (plan: Axis): string =>
  element(
    "c:valAx",
    {},
    val("axId", plan.id) +
      element(
        "c:scaling",
        {},
        val("orientation", "minMax") + (plan.isShare ? val("max", 1) + val("min", 0) : ""),
      ) +
      val("delete", 0) +
      val("axPos", plan.side) +
      (plan.lines ? `<c:majorGridlines>${shape(lineOf(0.5, LINE))}</c:majorGridlines>` : "") +
      (plan.title === "" ? "" : title(plan.title, SMALL, false)) +
      element("c:numFmt", { formatCode: plan.format, sourceLinked: 0 }) +
      val("majorTickMark", plan.numbers ? "out" : "none") +
      val("minorTickMark", "none") +
      val("tickLblPos", plan.numbers ? "nextTo" : "none") +
      shape(lineOf(0.5, LINE)) +
      smallText +
      val("crossAx", plan.crosses) +
      val("crosses", "autoZero") +
      val("crossBetween", "midCat"),
  );

const ACROSS = 100_000_000;
const UP = 100_000_001;

/** One chart. */
export function chartXml(plan: ChartPlan): string {
  const labelled = plan.series.some((one) => one.labelled);
  const ordered = plan.yTitle === "";
  const legend = plan.series.length > 1 && !labelled;
  const lines = plan.series.map((one, index) =>
    series(one, index, labelled || index === 0 ? ACCENT : GREY),
  );
  const plot =
    "<c:layout/>" +
    element(
      "c:scatterChart",
      {},
      val("scatterStyle", "lineMarker") +
        val("varyColors", 0) +
        lines.join("") +
        val("axId", ACROSS) +
        val("axId", UP),
    ) +
    axis({
      id: ACROSS,
      crosses: UP,
      side: "b",
      title: plan.xTitle,
      format: "0",
      lines: true,
      numbers: true,
      isShare: false,
    }) +
    axis({
      id: UP,
      crosses: ACROSS,
      side: "l",
      title: plan.yTitle,
      format: plan.yFormat ?? "General",
      lines: !ordered,
      numbers: !ordered,
      isShare: plan.yFormat?.endsWith("%") === true,
    });
  const chart =
    title(plan.title, TITLE, true) +
    val("autoTitleDeleted", 0) +
    element("c:plotArea", {}, plot) +
    (legend ? `<c:legend>${val("legendPos", "b")}${val("overlay", 0)}</c:legend>` : "") +
    val("plotVisOnly", 0) +
    val("dispBlanksAs", "gap");
  return (
    HEAD +
    element(
      "c:chartSpace",
      {
        "xmlns:c": "http://schemas.openxmlformats.org/drawingml/2006/chart",
        "xmlns:a": "http://schemas.openxmlformats.org/drawingml/2006/main",
        "xmlns:r": OFFICE,
      },
      val("roundedCorners", 0) + element("c:chart", {}, chart),
    )
  );
}

/** Where the charts of one sheet stand; relation n is `rId<n>`, counted from 1. */
export function drawingXml(plans: readonly ChartPlan[]): string {
  const corner = (name: "from" | "to", at: string, beyond: number): string => {
    const { row, column } = readSpot(at)!;
    return `<xdr:${name}><xdr:col>${column - 1 + beyond}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row - 1 + beyond}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
  };
  const anchors = plans.map((plan, index) =>
    element(
      "xdr:twoCellAnchor",
      {},
      corner("from", plan.from, 0) +
        corner("to", plan.to, 1) +
        '<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>' +
        element("xdr:cNvPr", { id: index + 2, name: plan.name, descr: plan.title }) +
        "<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>" +
        '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>' +
        '<a:graphic><a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/chart">' +
        `<c:chart xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:r="${OFFICE}" r:id="rId${index + 1}"/>` +
        "</a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/>",
    ),
  );
  return (
    HEAD +
    element(
      "xdr:wsDr",
      {
        "xmlns:xdr": "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing",
        "xmlns:a": "http://schemas.openxmlformats.org/drawingml/2006/main",
      },
      anchors.join(""),
    )
  );
}
