import { svg, html, type TemplateResult } from "lit";

/** A share from 0 to 1 as a thin bar; the figure stands beside it in words. */
export const shareBar = (part: number): TemplateResult =>
  html`<svg viewBox="0 0 100 6" height="6" preserveAspectRatio="none" aria-hidden="true">
    ${svg`<rect class="bar back" width="100" height="6" rx="1"></rect>
      <rect class="bar" width=${Math.max(0, Math.min(100, part * 100)).toFixed(1)} height="6" rx="1"></rect>`}
  </svg>`;
