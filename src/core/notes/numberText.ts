/** What digits with commas and points in them mean, where that is certain. */

/**
 * The numbers that a run of digits, commas and points stands for: one ("91", "91.5", "91,5"), or a
 * list typed without spaces ("352,344", "91,95,88"). null where it could be read in two ways, such
 * as "91,95" (a fraction, or two throws).
 *
 * @example
 * numbersIn("91,5") // [91.5]
 */
export function numbersIn(digits: string): number[] | null {
  if (/^\d+$/.test(digits) || /^\d+\.\d{1,2}$/.test(digits)) return [Number(digits)];
  if (/^\d+,\d$/.test(digits)) return [Number(digits.replace(",", "."))];
  const groups = digits.split(",");
  const sure = groups.length > 2 ? /^\d{2,3}$/ : /^\d{3}$/;
  return groups.every((group) => sure.test(group)) ? groups.map(Number) : null;
}
