/** Where the add-in is served from while it is developed. */
export const LOCAL_HOST = "https://localhost:3000";

/**
 * The manifest for another place: every address in it, not only the first. The place is where
 * `dist/` can be read, as "https://example.org/carrybook".
 *
 * Throws where the place is no https address, or carries a query.
 */
export function manifestFor(xml: string, host: string): string {
  const place = URL.canParse(host) ? new URL(host) : null;
  if (place?.protocol !== "https:" || place.search !== "" || place.hash !== "")
    throw new Error(`The host must be an https address without a query: ${host}`);
  const root = `${place.origin}${place.pathname}`.replace(/\/+$/, "");
  const at = (address: string): string =>
    address.replaceAll("&", "&amp;").replaceAll('"', "&quot;");
  return xml.replaceAll(LOCAL_HOST, at(root));
}
