/** Boxes, buttons and choices: the browser's own, plainly dressed. */
import { css } from "lit";

export const controls = css`
  button,
  input,
  select,
  textarea {
    font: inherit;
    font-variant-numeric: inherit;
    color: inherit;
  }
  :focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 2px;
  }
  label,
  legend {
    display: block;
    padding: 0;
    color: var(--muted);
    font-size: 13px;
  }
  fieldset.stack > legend {
    padding-bottom: 8px;
    color: var(--ink);
    font-weight: 600;
  }
  .box {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 3px;
    min-width: 0;
  }
  .box input[type="date"] {
    padding-right: 8px;
    font-size: 15px;
  }
  .box .inner {
    display: flex;
    align-items: center;
    min-height: 40px;
    border: 1px solid var(--edge);
    border-radius: 6px;
    background: var(--paper);
  }
  .box .inner:focus-within {
    outline: 2px solid var(--accent);
    outline-offset: 1px;
  }
  .box input {
    flex: 1;
    width: 100%;
    min-width: 0;
    padding: 7px 0 7px 10px;
    border: 0;
    background: none;
    font-size: 17px;
  }
  .box input::placeholder,
  textarea::placeholder {
    color: var(--muted);
    font-weight: 400;
    opacity: 1;
  }
  .box input:focus {
    outline: none;
  }
  .box .unit {
    padding: 0 10px 0 4px;
    color: var(--muted);
    font-size: 13px;
  }
  .box.large input {
    padding: 5px 0 5px 10px;
    font-size: 26px;
    font-weight: 600;
    line-height: 1.2;
  }
  .box .problem {
    color: var(--ink);
    font-size: 13px;
    font-weight: 600;
  }
  select,
  textarea,
  input[type="file"] {
    width: 100%;
    min-height: 40px;
    padding: 7px 10px;
    border: 1px solid var(--edge);
    border-radius: 6px;
    background: var(--paper);
    font-size: 15px;
  }
  textarea {
    min-height: 132px;
    line-height: 1.5;
    resize: vertical;
  }
  textarea.fixed {
    font-family: ui-monospace, "Cascadia Mono", Consolas, monospace;
    font-size: 12px;
    white-space: pre;
    overflow-x: auto;
  }
  button {
    min-height: 40px;
    padding: 0 14px;
    border: 1px solid var(--edge);
    border-radius: 6px;
    background: var(--paper);
    font-size: 15px;
    cursor: pointer;
  }
  button:hover:enabled {
    background: var(--raised);
  }
  button.main {
    border-color: var(--accent);
    background: var(--accent);
    color: var(--on-accent);
    font-weight: 600;
  }
  button.main:hover:enabled {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--paper);
  }
  button:disabled,
  button.main:disabled {
    border-color: var(--edge);
    background: none;
    font-weight: 400;
    border-style: dashed;
    color: var(--muted);
    cursor: default;
  }
  button.plain {
    justify-self: start;
    min-height: 28px;
    padding: 0 2px;
    border: 0;
    background: none;
    color: var(--accent);
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .segments {
    display: flex;
    margin-top: 3px;
    border: 1px solid var(--edge);
    border-radius: 6px;
    overflow: hidden;
  }
  .segments label {
    flex: 1;
    position: relative;
    color: var(--ink);
    text-align: center;
    cursor: pointer;
  }
  .segments label + label {
    border-left: 1px solid var(--edge);
  }
  .segments input {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    margin: 0;
    opacity: 0;
    cursor: pointer;
  }
  .segments span {
    display: block;
    padding: 8px 4px;
  }
  .segments input:checked + span {
    background: var(--accent-soft);
    font-weight: 600;
    box-shadow: inset 0 -3px var(--accent);
  }
  .segments input:focus-visible + span {
    outline: 2px solid var(--accent);
    outline-offset: -3px;
  }
  .tick {
    display: flex;
    gap: 8px;
    align-items: center;
    color: var(--ink);
    font-size: 15px;
  }
  .tick input {
    width: 18px;
    height: 18px;
    margin: 0;
    accent-color: var(--accent);
  }
  progress {
    display: block;
    width: 100%;
    height: 6px;
    margin: 6px 0;
    border: 0;
    border-radius: 3px;
    background: var(--shade);
    accent-color: var(--accent);
  }
  progress::-webkit-progress-bar {
    border-radius: 3px;
    background: var(--shade);
  }
  progress::-webkit-progress-value {
    border-radius: 3px;
    background: var(--accent);
  }
  progress::-moz-progress-bar {
    border-radius: 3px;
    background: var(--accent);
  }
  .offline {
    display: grid;
    grid-template-columns: 56px 1fr 56px;
    align-items: center;
    text-align: center;
  }
  .counted {
    display: grid;
    grid-template-columns: 62px minmax(0, 1fr) 62px;
    gap: 8px;
    align-items: end;
  }
  .counted button {
    padding-inline: 4px;
  }
  .grow {
    flex: 1;
  }
  .split {
    display: flex;
    gap: 10px;
    align-items: baseline;
    justify-content: space-between;
  }
  .split > span {
    flex: none;
  }
  .split > span:first-child {
    flex: 0 1 auto;
    min-width: 0;
  }
  .split button + button {
    margin-left: 12px;
  }
  summary {
    min-height: 28px;
    color: var(--muted);
    font-size: 14px;
    cursor: pointer;
  }
  details[open] > summary {
    margin-bottom: 8px;
  }
  /* For thumbs: 44 px, as WCAG 2.2 has it under 2.5.5. */
  @media (pointer: coarse) {
    button,
    button.plain,
    .tabs button,
    .box .inner,
    select,
    input[type="file"],
    summary,
    .segments span {
      min-height: 44px;
    }
    .segments span {
      padding: 11px 4px;
    }
    summary {
      padding: 10px 0;
    }
    .tick {
      min-height: 44px;
    }
    .tick input {
      width: 24px;
      height: 24px;
    }
  }
  @media (forced-colors: active) {
    .segments input:checked + span {
      forced-color-adjust: none;
      background: Highlight;
      color: HighlightText;
    }
  }
`;
