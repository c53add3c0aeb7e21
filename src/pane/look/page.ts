/** The page: type, rhythm, tabs, and how sections follow one another. */
import { css } from "lit";

export const page = css`
  :host {
    display: block;
    container-type: inline-size;
    min-height: 100%;
    background: var(--paper);
    color: var(--ink);
    font:
      15px/1.45 system-ui,
      -apple-system,
      "Segoe UI",
      sans-serif;
    font-variant-numeric: tabular-nums;
    text-align: start;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  figure,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  .tabs {
    position: sticky;
    top: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    padding: 0 6px;
    background: var(--paper);
    border-bottom: 1px solid var(--line);
  }
  .tabs button {
    flex: 1 0 auto;
    min-height: 42px;
    padding: 0 3px;
    border: 0;
    border-bottom: 3px solid transparent;
    border-radius: 0;
    background: none;
    color: var(--muted);
    font-size: 13.5px;
    font-weight: 400;
  }
  .tabs button[aria-selected="true"] {
    border-bottom-color: var(--accent);
    color: var(--ink);
    font-weight: 600;
  }
  .tabs button:hover {
    color: var(--ink);
  }
  .place {
    display: grid;
    gap: 22px;
    padding: 16px 16px 40px;
  }
  .place:focus {
    outline: none;
  }
  .stack {
    display: grid;
    gap: 22px;
    min-width: 0;
  }
  .stack.tight {
    gap: 12px;
  }
  section {
    display: grid;
    align-content: start;
    gap: 10px;
    min-width: 0;
  }
  section + section {
    padding-top: 20px;
    border-top: 1px solid var(--line);
  }
  h2 {
    font-size: 15px;
    font-weight: 600;
  }
  h3 {
    font-size: 14px;
    font-weight: 600;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    align-items: end;
  }
  .three,
  .two {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: 10px;
    align-items: end;
  }
  .two {
    grid-template-columns: repeat(2, minmax(0, 1fr));
  }
  @container (min-width: 640px) {
    .place {
      padding: 20px 28px 48px;
      gap: 26px;
    }
    .side {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      column-gap: 32px;
    }
    .side > .whole {
      grid-column: 1 / -1;
    }
    .side > section:nth-child(2) {
      padding-top: 0;
      border-top: 0;
    }
  }
`;
