/** A document for views that look for one as soon as they are loaded: import this before them. */
import { JSDOM } from "jsdom";

export const { window } = new JSDOM("");
const globals = { window, ...pick("document", "customElements", "HTMLElement", "Node") };
Object.assign(globalThis, globals);

function pick(...names: ("document" | "customElements" | "HTMLElement" | "Node")[]): object {
  return Object.fromEntries(names.map((name) => [name, window[name]]));
}
