/** In a narrow window the pane comes first, and the sheets lie folded below it. */
const NARROW = matchMedia("(max-width: 500px)");

export interface FoldParts {
  readonly sheets: HTMLElement;
  readonly pane: HTMLElement;
  readonly button: HTMLButtonElement;
}

/** Returns how to bring the sheets into sight; where they are, that does nothing. */
export function foldSheets({ sheets, pane, button }: FoldParts): () => void {
  let folded = NARROW.matches;

  /** The order on the screen is the order for keyboard and screen readers too. */
  const draw = (): void => {
    const first = NARROW.matches ? pane : sheets;
    const second = NARROW.matches ? sheets : pane;
    if (first.nextElementSibling !== second) second.before(first);
    button.hidden = !NARROW.matches;
    button.textContent = folded ? "Show the sheets" : "Hide the sheets";
    button.setAttribute("aria-expanded", String(!folded));
    sheets.toggleAttribute("data-folded", folded);
  };
  const setFolded = (next: boolean): void => {
    folded = next;
    draw();
  };
  button.addEventListener("click", () => {
    setFolded(!folded);
    if (!folded) sheets.scrollIntoView();
  });
  NARROW.addEventListener("change", () => setFolded(NARROW.matches));
  draw();
  return () => {
    if (!folded) return;
    setFolded(false);
    sheets.scrollIntoView();
  };
}
