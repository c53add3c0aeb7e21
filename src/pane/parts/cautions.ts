import { html } from "lit";

/** Where one throws. */
export const FIELD_CAUTION = html`<p class="caution">
  Throw only on a clear field, with nobody within range.
</p>`;

/** Where one picks. */
export const PICK_CAUTION = html`<p class="caution">
  Throw only when the way is clear. Slope and wind figures are estimates: trust your eyes. The
  course's and the event's rules and officials decide.
</p>`;
