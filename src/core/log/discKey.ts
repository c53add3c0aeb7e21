/**
 * What two spellings of a disc's name have in common: letters alike in any script (compatibility
 * forms such as full-width letters included, by Unicode NFKC), lower case without regard to the
 * machine's language, no outer spaces, repeated inner spaces as one. Text in, text out; blank gives "".
 *
 * @example
 * discKey("  Copper   MID ") // "copper mid"
 */
export const discKey = (name: string): string =>
  name.normalize("NFKC").toLowerCase().trim().replace(/\s+/g, " ");

/** A `discKey` that remembers the spellings it has met: a log repeats a few names many times. */
export function discKeys(): (name: string) => string {
  const known = new Map<string, string>();
  return (name) => {
    let key = known.get(name);
    if (key === undefined) known.set(name, (key = discKey(name)));
    return key;
  };
}
