import { html, type TemplateResult } from "lit";

/** What an empty place says: what is missing, and what to do first. */
export const empty = (title: string, first: string, action: unknown = ""): TemplateResult =>
  html`<div class="empty"><strong>${title}</strong>${first} ${action}</div>`;
