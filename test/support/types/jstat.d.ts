/** jstat has no types of its own; tests use its distributions and sample statistics only. */
declare const jstat: Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any
export default jstat;
