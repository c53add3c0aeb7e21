/** The places of the pane, in the order of the tabs. */
export const PLACES = [
  { id: "field", title: "Field" },
  { id: "notes", title: "Notes" },
  { id: "bag", title: "Bag" },
  { id: "hole", title: "Hole" },
  { id: "course", title: "Course" },
  { id: "share", title: "Share" },
  { id: "setup", title: "Set-up" },
] as const;

export type Place = (typeof PLACES)[number]["id"];

/**
 * The place that an arrow key, Home or End leads to from this one; null for any other key.
 *
 * @example placeAfter("setup", "ArrowRight") // "field"
 */
export function placeAfter(place: Place, key: string): Place | null {
  const last = PLACES.length - 1;
  const now = PLACES.findIndex(({ id }) => id === place);
  const next: Record<string, number> = {
    ArrowRight: now === last ? 0 : now + 1,
    ArrowLeft: now === 0 ? last : now - 1,
    Home: 0,
    End: last,
  };
  return PLACES[next[key] ?? -1]?.id ?? null;
}
