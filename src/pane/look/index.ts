import type { CSSResult } from "lit";
import { answers } from "./answers";
import { colours } from "./colours";
import { controls } from "./controls";
import { page } from "./page";
import { plots } from "./plots";

/** Adopted by the pane's shadow root: no style element, no style attribute, no inline style. */
export const look: readonly CSSResult[] = [colours, page, controls, answers, plots];
