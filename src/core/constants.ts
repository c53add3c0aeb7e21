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
