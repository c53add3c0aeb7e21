/** Where the add-in is served from while it is developed. */
export const LOCAL_HOST = "https://localhost:3000";

/** Excel keeps these for up to a day under one address, so a new build must have another. */
const KEPT_BY_EXCEL = /\/functions\.js(?:on)?(?=")/g;

/**
 * The address under which `dist/` can be read, without a slash at its end.
 *
 * Throws where it is no https address, or carries a query.
 *
 * @example hostRoot("https://example.org/carrybook/") // "https://example.org/carrybook"
 */
export function hostRoot(host: string): string {
  const place = URL.canParse(host) ? new URL(host) : null;
  if (place?.protocol !== "https:" || place.search !== "" || place.hash !== "")
    throw new Error(`The host must be an https address without a query: ${host}`);
  return `${place.origin}${place.pathname}`.replace(/\/+$/, "");
}

/**
 * The manifest for another place: every address in it, not only the first, and the version of the
 * build in the query of what Excel keeps.
 *
 * @param host as "https://example.org/carrybook"; throws where it is no https address
 * @param version of the build; left out, the addresses carry none
 */
export function manifestFor(xml: string, host: string, version?: string): string {
  const root = hostRoot(host).replaceAll("&", "&amp;").replaceAll('"', "&quot;");
  const dated =
    version === undefined
      ? xml
      : xml.replace(KEPT_BY_EXCEL, (path) => `${path}?v=${encodeURIComponent(version)}`);
  return dated.replaceAll(LOCAL_HOST, root);
}
