import { html, type TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";

export const learntView = (_desk: Desk, _book: Book): TemplateResult => html``;
