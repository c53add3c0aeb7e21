const MS_PER_DAY = 86_400_000;
/** Day 0 of spreadsheet serial numbers; right from 1 March 1900 on (ECMA-376 part 1, 18.17.4.1). */
const DAY_0_MS = Date.UTC(1899, 11, 30);

/**
 * Calendar day as yyyy-mm-dd of a serial number; the time of day is dropped.
 *
 * @example isoFromDay(46348) // "2026-11-22"
 */
export function isoFromDay(serial: number): string {
  return new Date(DAY_0_MS + Math.floor(serial) * MS_PER_DAY).toISOString().slice(0, 10);
}
