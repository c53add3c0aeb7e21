/** What rounds taught, and the way into the settings. */
import { html, type TemplateResult } from "lit";
import type { Factors } from "../../core/learn/learnFactors";
import { settingRule } from "../../core/log/settingsTable";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { table } from "../parts/blocks";
import { plain } from "../words/figures";
import { useFactors } from "./actions";
import { factorsToUse, inUse, learntOf, USES } from "./learnt";

/** What the rounds taught, and how sure it is. */
export function learntView(desk: Desk, book: Book): TemplateResult {
  const learnt = learntOf(book);
  return html`<section aria-label="Learnt">
    <h2>Learnt from your rounds</h2>
    ${
      book.rounds.length === 0
        ? html`<p class="quiet">
            Open a hole above and add where the throw finished. Your own slope and wind factors then
            stand here.
          </p>`
        : learnt.ok
          ? factorsView(desk, book, learnt.value)
          : html`<p>${learnt.why}</p>`
    }
  </section>`;
}

function factorsView(desk: Desk, book: Book, factors: Factors): TemplateResult {
  const used = inUse(factors, book);
  return html`${table(
      "Learnt factors",
      [["Setting"], ["Value", "number"], ["±", "number"], ["Rows", "number"]],
      USES.map(({ learnt, setting, decimals }) => {
        const { value, sd, rows } = learnt(factors);
        return [
          settingRule(setting).label,
          plain(value, decimals),
          plain(sd, decimals),
          String(rows),
        ];
      }),
    )}
    <p>${scatterSentence(factors)}</p>
    <p class="quiet">
      Factors: 1 means the model is right for you. Trust a figure when its ± is small.
    </p>
    <button
      ?disabled=${used || desk.state.busy !== null}
      @click=${() => void useFactors(desk, factorsToUse(factors, book))}
    >
      ${used ? "In use" : "Use these"}
    </button>`;
}

const scatterSentence = ({ scatter }: Factors): string =>
  `On the course your throws scatter ${plain(scatter, 1)} times as far as in the field.`;
