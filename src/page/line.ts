/** The line at the top of the page: what the page has to say or to offer, quietly. */
import { html, nothing, render, type TemplateResult } from "lit";

export interface Said {
  readonly text: string;
  readonly buttons: readonly { readonly label: string; readonly press: () => void }[];
}

/** What is spoken of, in the order in which it is shown. */
const SUBJECTS = ["question", "offer", "done", "trouble"] as const;
type Subject = (typeof SUBJECTS)[number];

export class Line {
  private readonly said = new Map<Subject, Said>();

  constructor(private readonly host: HTMLElement) {}

  /** Takes the place of what was said of the same subject. */
  say(subject: Subject, said: Said): void {
    this.said.set(subject, said);
    this.draw();
  }

  /** Says it until it is closed. */
  tell(subject: Subject, text: string, ...buttons: Said["buttons"]): void {
    const close = { label: "Close", press: () => this.clear(subject) };
    this.say(subject, { text, buttons: [...buttons, close] });
  }

  clear(subject: Subject): void {
    this.said.delete(subject);
    this.draw();
  }

  private draw(): void {
    const parts = SUBJECTS.map((subject) => this.said.get(subject));
    render(
      parts.map((part) => (part ? partView(part) : nothing)),
      this.host,
    );
  }
}

const partView = ({ text, buttons }: Said): TemplateResult =>
  html`<div>
    ${text === "" ? nothing : html`<span>${text}</span>`}
    ${buttons.map(({ label, press }) => html`<button @click=${press}>${label}</button>`)}
  </div>`;
