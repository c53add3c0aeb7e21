/** What a person typed into a number box. */
export type Typed =
  | { readonly kind: "blank" }
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "unclear" };

/**
 * Reads a typed number. A comma is taken as a decimal sign, as phones with such a keypad send it;
 * three digits after it could as well be thousands, so that is unclear, as is all other text.
 *
 * @example numberIn("12,5") // { kind: "number", value: 12.5 }
 */
export function numberIn(text: string): Typed {
  const clean = text.trim().replace(/^[−–]/, "-");
  if (clean === "") return { kind: "blank" };
  if (!/^[-+]?(\d+([.,]\d*)?|[.,]\d+)$/.test(clean) || /^[-+]?\d+,\d{3}$/.test(clean))
    return { kind: "unclear" };
  return { kind: "number", value: Number(clean.replace(",", ".")) };
}

/** The number in a box, `blank` where it is empty, and a sentence where it is unclear. */
export function needNumber(text: string, name: string, blank: number | null = null): number {
  const typed = numberIn(text);
  if (typed.kind === "number") return typed.value;
  if (typed.kind === "blank" && blank !== null) return blank;
  throw new Error(
    typed.kind === "blank" ? `${name} is missing.` : `${name}: type a number, such as 12.5.`,
  );
}
