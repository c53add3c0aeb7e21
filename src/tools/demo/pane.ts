/** One pick explained, and the pane's own plots drawn without a browser. */
import { window } from "./document";
import { render } from "lit";
import { coveredOf } from "../../pane/bag/model";
import { coveragePlot, ladderPlot } from "../../pane/bag/plots";
import { bookOf, readRawBook } from "../../pane/book/book";
import type { Desk } from "../../pane/controller";
import { finishPlot, puttingPlot, reliabilityPlot } from "../../pane/course/plots";
import { calibrationOf, puttingCurveOf, puttsByDistance, scatterOf } from "../../pane/course/told";
import { answerHole, pickOf, pickSentence, whySentence } from "../../pane/hole/model";
import { look } from "../../pane/look";
import { firstState } from "../../pane/state";
import { distance } from "../../pane/words/figures";
import type { WorkbookPort } from "../../workbook/port";

const readBook = async (port: WorkbookPort) => bookOf(await readRawBook(port));

/** What the pane says of one hole of the course. */
export async function explainHole(port: WorkbookPort, place: number): Promise<string> {
  const { holes, card, settings } = await readBook(port);
  const hole = holes[place - 1]!;
  const still = { crosswindMps: 0 };
  const { plays, options } = answerHole({ ...hole, ...still }, card, settings);
  if (!plays.ok) return plays.why;
  if (!options.ok) return options.why;
  const inUnit = (metres: number): string => distance(metres, settings.distanceUnit);
  const { parts, band } = plays.value;
  return [
    `Hole ${hole.hole}, ${inUnit(hole.distanceM)}: throw ${pickOf(options.value[0]!)}.`,
    pickSentence(options.value, settings),
    `It plays like ${inUnit(parts.totalM)} (between ${inUnit(band.lowM)} and ${inUnit(band.highM)}).`,
    whySentence(parts, settings),
  ].join("\n");
}

/** The plots of the bag and of what happened on the course, each as a file that stands alone. */
export async function drawPlots(port: WorkbookPort): Promise<Record<string, string>> {
  const book = await readBook(port);
  const desk = {
    state: { ...firstState("bag"), plotWidth: 640 },
    change: () => {},
  } as unknown as Desk;
  const covered = coveredOf(book);
  const told = calibrationOf(book);
  const scatter = scatterOf(book, "");
  const putting = puttingCurveOf(book);
  return {
    ladder: standAlone(ladderPlot(desk, book)),
    ...(told.ok ? { reliability: standAlone(reliabilityPlot(desk, told.value)) } : {}),
    ...(scatter.ok ? { finishes: standAlone(finishPlot(desk, scatter.value, book.settings)) } : {}),
    ...(putting.ok
      ? {
          putting: standAlone(
            puttingPlot(desk, putting.value, puttsByDistance(book), book.settings),
          ),
        }
      : {}),
    ...(covered.ok ? { coverage: standAlone(coveragePlot(desk, book, covered.value)) } : {}),
  };
}

function standAlone(plot: unknown): string {
  const host = window.document.createElement("div");
  render(plot, host as unknown as HTMLElement);
  const svg = host.querySelector("svg")!;
  const style = window.document.createElementNS("http://www.w3.org/2000/svg", "style");
  const rules = look.map(({ cssText }) => cssText.replace(/:host|\.plot svg/g, "svg")).join("");
  style.textContent = `${rules} svg { font-family: sans-serif; background: var(--paper); }`;
  svg.prepend(style);
  const text = new window.XMLSerializer().serializeToString(svg);
  return `${text.replace(/<!--.*?-->/g, "")}\n`;
}
