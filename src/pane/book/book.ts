/** The workbook as the core understands it. Every place of the pane answers from this. */
import { makeCard } from "../../core/carry/card";
import { DEFAULT_SETTINGS, readSettings } from "../../core/log/readSettings";
import { readBag } from "../../core/log/readBag";
import { readCourse } from "../../core/log/readCourse";
import { readRounds } from "../../core/log/readRounds";
import { readThrows } from "../../core/log/readThrows";
import type { BagDisc, Card, Hole, RoundRow, Settings, ThrowLog } from "../../core/types";
import { attempt } from "../attempt";
import { cellsOf, type RawBook } from "./rawBook";

export interface Book {
  readonly raw: RawBook;
  readonly settings: Settings;
  readonly bag: readonly BagDisc[];
  readonly log: ThrowLog;
  readonly card: Card;
  readonly holes: readonly Hole[];
  readonly rounds: readonly RoundRow[];
  /** What could not be read, each with the reason; that part then counts as empty. */
  readonly faults: readonly string[];
}

const EMPTY_LOG: ThrowLog = { throws: [], leftOut: [] };

export function bookOf(raw: RawBook): Book {
  const faults: string[] = [];
  const read = <Part>(ask: () => Part, empty: Part): Part => {
    const answer = attempt(ask);
    if (answer.ok) return answer.value;
    faults.push(answer.why);
    return empty;
  };
  const settings = read(() => readSettings(raw.settings ?? []), DEFAULT_SETTINGS);
  const bag = raw.bag ? read(() => readBag(cellsOf(raw.bag)), []) : [];
  const log = raw.throws
    ? read(() => readThrows(cellsOf(raw.throws), settings), EMPTY_LOG)
    : EMPTY_LOG;
  return {
    raw,
    settings,
    bag,
    log,
    card: read(() => makeCard(log, bag, settings), makeCard(EMPTY_LOG, bag, settings)),
    holes: raw.course ? read(() => readCourse(cellsOf(raw.course), settings), []) : [],
    rounds: raw.results ? read(() => readRounds(cellsOf(raw.results), settings), []) : [],
    faults,
  };
}
