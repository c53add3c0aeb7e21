import type { Verdict } from "../../core/types";

/** Said only where a disc does something. */
export const verdictWords = (verdict: Verdict): string =>
  verdict === "changing" ? ", and changing" : verdict === "steady" ? ", and steady" : "";
