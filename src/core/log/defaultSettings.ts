import type { Settings } from "../types";
import { readSettings } from "./readSettings";

/** The settings of a player who has set nothing. */
export const DEFAULT_SETTINGS: Settings = readSettings([]);
