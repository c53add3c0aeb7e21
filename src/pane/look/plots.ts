/** Plots: thin lines, words beside them. */
import { css } from "lit";

export const plots = css`
  .plot {
    position: relative;
    cursor: crosshair;
  }
  .plot svg text {
    fill: var(--ink);
    font-size: 13px;
  }
  .plot svg .soft {
    fill: var(--muted);
    font-size: 12px;
  }
  .plot svg .strong {
    font-weight: 600;
  }
  .plot svg .halo {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 4px;
    stroke-linejoin: round;
  }
  .plot svg .end {
    text-anchor: end;
  }
  .plot svg .middle {
    text-anchor: middle;
  }
  .axis {
    stroke: var(--line);
    stroke-width: 1;
  }
  .curve {
    fill: none;
    stroke: var(--accent);
    stroke-width: 2;
    stroke-linejoin: round;
  }
  .curve.other {
    stroke: var(--edge);
    stroke-width: 1.25;
    stroke-dasharray: 4 3;
  }
  .ground {
    fill: var(--shade);
    stroke: var(--edge);
    stroke-width: 1;
  }
  .target {
    stroke: var(--ink);
    stroke-width: 4;
    stroke-linecap: round;
  }
  .gap {
    fill: var(--shade);
  }
  .span {
    stroke: var(--accent);
    stroke-width: 2;
  }
  .carry {
    stroke: var(--accent);
    stroke-width: 3;
  }
  .dot {
    fill: var(--muted);
    fill-opacity: 0.55;
  }
  .dot.now {
    fill: var(--accent);
    fill-opacity: 1;
  }
  .dot.latest {
    stroke: var(--paper);
    stroke-width: 2;
  }
  .bar {
    fill: var(--accent);
  }
  .bar.back {
    fill: var(--shade);
  }
  .at {
    stroke: var(--ink);
    stroke-width: 1;
  }
  .looked {
    fill: var(--raised);
  }
  .scrub {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    margin: 0;
    opacity: 0;
    pointer-events: none;
  }
  .plot:focus-within {
    outline: 2px solid var(--accent);
    outline-offset: 4px;
    border-radius: 2px;
  }
  .readout {
    min-height: 22px;
    color: var(--muted);
    font-size: 13px;
  }
  @media (forced-colors: active) {
    .axis {
      stroke-opacity: 0.4;
    }
    .gap,
    .ground,
    .bar.back,
    .looked {
      fill: Canvas;
      stroke: GrayText;
    }
  }
`;
