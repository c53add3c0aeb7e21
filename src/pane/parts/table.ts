import { html, type TemplateResult } from "lit";

/** A column's words, and whether it holds figures. */
export type Head = readonly [title: string, figures?: "number"];

/** A plain table; the first cell of a row is its header. */
export const table = (
  caption: string,
  heads: readonly Head[],
  rows: readonly (readonly unknown[])[],
): TemplateResult =>
  html`<table>
    <caption class="hidden">
      ${caption}
    </caption>
    <thead>
      <tr>
        ${heads.map(([title, figures]) => html`<th scope="col" class=${figures ?? ""}>${title}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) =>
          html`<tr>
            ${row.map((cell, at) =>
              at === 0
                ? html`<th scope="row">${cell}</th>`
                : html`<td class=${heads[at]?.[1] ?? ""}>${cell}</td>`,
            )}
          </tr>`,
      )}
    </tbody>
  </table>`;
