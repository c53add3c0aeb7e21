/** How today differs from the card, and whether picks go by it. */
import { html, nothing } from "lit";
import type { Book } from "../book/book";
import type { Desk } from "../controller";
import { day as dayWords } from "../words/figures";
import { forgetForm, useForm } from "./actions";
import { formInUse, formIsOld, formOf, formSentence } from "./form";

/** The form of the session's day, from five throws on three discs; what an earlier day left is asked about. */
export function formOfDayView(desk: Desk, book: Book, day: number): unknown {
  const form = formOf(book, day);
  const old = formIsOld(book, day);
  if (!form && !old) return nothing;
  const busy = desk.state.busy !== null;
  const used = form !== null && formInUse(form, book);
  return html`<section aria-label="Form of the day">
    ${
      form
        ? html`<p class="lead">${formSentence(form)}</p>
            <button ?disabled=${used || busy} @click=${() => void useForm(desk, form)}>
              ${used ? "In use today" : "Use it today"}
            </button>
            <p class="quiet">Picks then count with it. The card stays as it is.</p>`
        : nothing
    }
    ${
      old
        ? html`<p>
              Picks still count with the form of
              ${dayWords(book.settings.todayDay) || "an earlier day"}.
            </p>
            <button ?disabled=${busy} @click=${() => void forgetForm(desk)}>
              Go by the card again
            </button>`
        : nothing
    }
  </section>`;
}
