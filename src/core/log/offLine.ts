/**
 * The words in the column Line by which a player marks a throw that should not count: ours is
 * "off"; the others are what people write for it. Any other line counts.
 */
const OFF_WORDS: ReadonlySet<string> = new Set(["off", "off line", "off-line", "bad", "x", "?"]);

/** What the product itself writes into Line to mark a throw off. */
export const OFF = "off";

/** Whether a line, as `discKey` writes it, means that the throw does not count. */
export const isOff = (lineKey: string): boolean => OFF_WORDS.has(lineKey);
