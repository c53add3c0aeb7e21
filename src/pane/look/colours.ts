/** One accent over neutral greys, in three themes. Text stands at 7 : 1 or better, for use in sunlight. */
import { css } from "lit";

const light = css`
  --paper: #ffffff;
  --raised: #f4f6f6;
  --ink: #14191b;
  --muted: #49545a;
  --line: #d3dadc;
  --edge: #7d898e;
  --accent: #0b5560;
  --accent-soft: #d9eaec;
  --on-accent: #ffffff;
  --shade: #e9eced;
`;

const dark = css`
  --paper: #15191b;
  --raised: #1f2527;
  --ink: #f1f4f4;
  --muted: #b4bfc3;
  --line: #343d40;
  --edge: #7f8c91;
  --accent: #86d3dc;
  --accent-soft: #1d3c41;
  --on-accent: #0b2428;
  --shade: #272e31;
`;

export const colours = css`
  :host {
    ${light}
    color-scheme: light;
  }
  @media (prefers-color-scheme: dark) {
    :host {
      ${dark}
      color-scheme: dark;
    }
  }
  :host([data-theme="light"]) {
    ${light}
    color-scheme: light;
  }
  :host([data-theme="dark"]) {
    ${dark}
    color-scheme: dark;
  }
  @media (forced-colors: active) {
    :host {
      --paper: Canvas;
      --raised: Canvas;
      --ink: CanvasText;
      --muted: CanvasText;
      --line: GrayText;
      --edge: CanvasText;
      --accent: Highlight;
      --accent-soft: Canvas;
      --on-accent: HighlightText;
      --shade: Canvas;
    }
  }
`;
