/** What the card bench bundles: the product's card beside a plain statement of the same formulas. */
export { readCard } from "../../core/carry/cardCells";
export { DEFAULT_SETTINGS } from "../../core/log/readSettings";
export { plainCard } from "./plainCard";
