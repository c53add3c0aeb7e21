/**
 * Every constant of the model: value, unit, source. The word "assumption" marks a figure
 * that has no published source; each of those is a setting, or stands here to be questioned.
 */

/** Standard gravity, m/s². CGPM 1901; ISO 80000-3. */
export const GRAVITY = 9.80665;

/** Air density at sea level in the standard atmosphere, kg/m³. ISO 2533:1975. */
export const STANDARD_DENSITY = 1.225;

/** Radius of the putting area, m. PDGA Official Rules of Disc Golf, rule 806.01. */
export const CIRCLE_M = 10;

/** Quantile behind every 80 % interval that the product shows. */
export const UPPER_TENTH = 0.9;

/** How long until a throw counts half, days. Assumption; setting "Memory". */
export const MEMORY_DAYS = 180;

/** Usual spread of one disc's smooth carries, as a share of carry. Assumption; setting "Usual spread". */
export const USUAL_SPREAD = 0.07;

/** Usual sideways spread, rad. Assumption; setting "Side spread". */
export const SIDE_SPREAD_RAD = 0.06;

/** Throws that the prior on spread is worth when the bag cannot tell. Assumption. */
export const PRIOR_FREEDOM = 4;

/** Softest and hardest throw considered, as a share of smooth. Assumption; settings. */
export const LOWEST_POWER = 0.8;
export const HIGHEST_POWER = 1;

/** Tuning of Huber's location estimate: 95 % efficient on normal data. Holland & Welsch 1977, Commun. Stat. A6:813. */
export const HUBER_TUNING = 1.345;

/** Discs with a spread of their own from which the bag itself tells the prior on spread. Assumption. */
export const LEAST_DISCS_FOR_PRIOR = 5;

/** Bounds of the prior's worth in throws when the bag tells it. Assumption. */
export const LEAST_PRIOR_FREEDOM = 2;
export const MOST_PRIOR_FREEDOM = 20;

/** No throw by hand carries farther, m; a larger number in a log is a slip. Assumption. */
export const LONGEST_CARRY_M = 500;

/** Putts made by distance, where the player gives no table: feet, share. Assumption. */
export const USUAL_PUTTING_FT = [
  [10, 0.95],
  [15, 0.85],
  [20, 0.7],
  [25, 0.55],
  [33, 0.35],
  [45, 0.15],
  [60, 0.06],
] as const;

/** A disc is called changing from this many throws, over this many days, below this p, beyond this share of carry. Assumption. */
export const TREND_LEAST_THROWS = 5;
export const TREND_LEAST_DAYS = 30;
export const TREND_P = 0.05;
export const TREND_SHARE = 0.03;

/** A trend rests on this many latest throws at most: the slope looks at every pair of them. */
export const TREND_MOST_THROWS = 500;

/** Mean length of a month, days: 365.2425 / 12, Gregorian calendar. */
export const MONTH_DAYS = 365.2425 / 12;
