import type { TemplateResult } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../desk";
import { sessionView } from "./sessionView";
import { startView } from "./startView";

/** Fieldwork: through the bag, one throw after the other. */
export const fieldView = (desk: Desk, book: Book): TemplateResult =>
  desk.state.session ? sessionView(desk, book, desk.state.session) : startView(desk, book);
