import { html, nothing, type TemplateResult } from "lit";
import type { Option, Settings } from "../../core/types";
import { shareBar } from "../parts/bar";
import { distance, power, share, strokes } from "../words/figures";
import { unfitSentence } from "./sentences";

/** Discs that are seen without asking. */
const AT_ONCE = 5;

/** Every disc for this throw, best first: the fit ones as a list, the others with the reason. */
export function rankedView(options: readonly Option[], settings: Settings): TemplateResult {
  const fit = options.filter((option) => unfitSentence(option, settings) === "");
  const unfit = options.filter((option) => !fit.includes(option));
  return html`<section class="whole" aria-label="Ranked">
    <h2>Ranked</h2>
    ${
      fit.length === 0
        ? nothing
        : html`<ol class="ranked">
            ${fit.slice(0, AT_ONCE).map((option) => ranked(option, settings))}
          </ol>`
    }
    ${
      fit.length <= AT_ONCE
        ? nothing
        : html`<details>
            <summary>${fit.length - AT_ONCE} more that get there</summary>
            <ol class="ranked">
              ${fit.slice(AT_ONCE).map((option) => ranked(option, settings))}
            </ol>
          </details>`
    }
    ${
      unfit.length === 0
        ? nothing
        : html`<details>
            <summary>${unfit.length} ${missesOf(unfit)}</summary>
            <ul class="lines">
              ${unfit.map(
                (option) =>
                  html`<li><b>${option.disc}</b>: ${unfitSentence(option, settings)}.</li>`,
              )}
            </ul>
          </details>`
    }
  </section>`;
}

/** What discs that do not fit have in common. */
function missesOf(unfit: readonly Option[]): string {
  const short = unfit.some(({ longM }) => longM < 0);
  const past = unfit.some(({ longM }) => longM > 0);
  return [short ? "stop short" : [], past ? "go past" : []].flat().join(" or ");
}

const ranked = (option: Option, { distanceUnit }: Settings): TemplateResult =>
  html`<li>
    <span class="name"><b>${option.disc}</b> ${power(option.power)}</span>
    <span class="chance">${share(option.chance)}</span>
    ${shareBar(option.chance)}
    <span class="quiet"
      >leaves ${distance(option.leavesM, distanceUnit)}, ${strokes(option.strokes)} strokes in
      all</span
    >
  </li>`;
