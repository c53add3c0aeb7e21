/** What the work-arounds know of the inside of the engine, and in which version of it. */

/** The version that the work-arounds were made for; a test holds it against what is installed. */
export const SEEN_IN = "0.25.1";

/**
 * The inside of a service of the engine, which its types keep to themselves.
 *
 * @param service the service
 * @param members methods and properties that the work-around counts on
 * @throws Error when one of them is missing, so that another version of the engine shows at the start
 */
export function inside<Inside extends object>(
  service: object,
  ...members: readonly (keyof Inside & string)[]
): Inside {
  const missing = members.filter((member) => !(member in service));
  if (missing.length > 0)
    throw new Error(
      `The grid engine lacks ${missing.join(", ")}: the work-arounds were made for version ${SEEN_IN}.`,
    );
  return service as Inside;
}
