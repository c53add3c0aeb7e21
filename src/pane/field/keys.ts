/** Keys of the box in a session. Letters are no part of a number, so they are free for these. */
import type { Desk } from "../desk";
import { add, again, setSession, skip, takeBackLast } from "./actions";

export function onSessionKey(desk: Desk, event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const act = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (!act) return;
  event.preventDefault();
  act(desk);
}

const KEYS: Readonly<Record<string, (desk: Desk) => void>> = {
  Enter: (desk) => void add(desk),
  ArrowLeft: (desk) => turn(desk, -1),
  ArrowRight: (desk) => turn(desk, 1),
  a: (desk) => void again(desk),
  u: (desk) => void takeBackLast(desk),
  n: skip,
};

/** One step to a side. Back at straight it is noted as straight. */
export function turn(desk: Desk, step: number): void {
  const now = desk.state.session?.offline ?? null;
  setSession(desk, { offline: now === null ? step : now + step });
}
