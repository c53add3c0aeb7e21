/** What the pane says: the figure that matters, sentences, cautions, tables and bars. */
import { css } from "lit";

export const answers = css`
  .great {
    font-size: 52px;
    font-weight: 600;
    line-height: 1.05;
    letter-spacing: -0.02em;
  }
  .great small {
    font-size: 20px;
    font-weight: 400;
    letter-spacing: 0;
  }
  .pick {
    font-size: 24px;
    font-weight: 600;
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  .lead {
    font-size: 17px;
  }
  .eyebrow,
  .quiet {
    color: var(--muted);
    font-size: 13px;
  }
  .caution {
    padding-left: 10px;
    border-left: 3px solid var(--edge);
    color: var(--muted);
    font-size: 13px;
  }
  .notices {
    position: sticky;
    top: 50px;
    z-index: 1;
  }
  .notice {
    display: flex;
    gap: 10px;
    align-items: baseline;
    justify-content: space-between;
    padding: 9px 12px;
    border: 1px solid var(--line);
    border-radius: 6px;
    background: var(--raised);
  }
  .notice.fault {
    border: 2px solid var(--ink);
  }
  .notice p {
    overflow-wrap: anywhere;
  }
  .notice button {
    flex: none;
  }
  .ranked li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 1px 12px;
    padding: 8px 0;
    border-bottom: 1px solid var(--line);
  }
  .ranked .name {
    overflow-wrap: anywhere;
  }
  .ranked .chance {
    font-weight: 600;
  }
  .ranked svg,
  .ranked .quiet {
    grid-column: 1 / -1;
  }
  .ranked svg {
    margin: 3px 0;
  }
  .understood .tick {
    align-items: start;
    padding: 5px 0;
    font-size: 14px;
  }
  .understood .tick input {
    flex: none;
  }
  .understood li.quiet {
    margin-top: 8px;
    font-style: italic;
    overflow-wrap: anywhere;
  }
  .holes li {
    border-bottom: 1px solid var(--line);
  }
  .hole {
    display: grid;
    grid-template-columns: 30px minmax(0, 1fr) auto;
    gap: 2px 8px;
    width: 100%;
    padding: 9px 0;
    border: 0;
    border-radius: 0;
    background: none;
    text-align: left;
  }
  .hole .which {
    color: var(--muted);
    font-size: 17px;
    overflow-wrap: anywhere;
  }
  .hole .what {
    overflow-wrap: anywhere;
  }
  .hole .what .quiet {
    display: block;
  }
  .hole .chance {
    font-weight: 600;
  }
  .open {
    padding: 4px 0 16px 38px;
  }
  .lines {
    display: grid;
    gap: 6px;
    font-size: 14px;
  }
  .listed {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 9.5em;
    gap: 4px 10px;
    align-items: center;
  }
  .steps {
    margin: 0;
    padding-left: 1.4em;
  }
  .offer {
    display: grid;
    gap: 10px;
    padding: 12px 14px;
    border-left: 3px solid var(--accent);
    background: var(--raised);
  }
  .empty {
    padding: 18px 16px;
    border: 1px dashed var(--edge);
    border-radius: 8px;
    color: var(--muted);
  }
  .empty strong {
    display: block;
    color: var(--ink);
    font-size: 17px;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    font-size: 14px;
  }
  th {
    color: var(--muted);
    font-size: 13px;
    font-weight: 400;
    text-align: left;
    vertical-align: bottom;
  }
  th,
  td {
    padding: 6px 8px 6px 0;
    border-bottom: 1px solid var(--line);
    overflow-wrap: anywhere;
  }
  td {
    vertical-align: top;
  }
  .number {
    padding-right: 0;
    padding-left: 8px;
    text-align: right;
    white-space: nowrap;
    overflow-wrap: normal;
  }
  tbody th {
    color: var(--ink);
    font-size: 14px;
    font-weight: 600;
  }
  .scroll {
    max-height: 320px;
    overflow: auto;
  }
  svg {
    display: block;
    width: 100%;
    overflow: visible;
  }
  .hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
