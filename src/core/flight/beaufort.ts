/** One force of the Beaufort scale. */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  /** What it does on land, to tell it by eye. */
  readonly sight: string;
  /** Least wind of the force, m/s. */
  readonly leastMps: number;
  /** Usual wind of the force, m/s: 0.836·force^1.5. */
  readonly usualMps: number;
}

const RAW: readonly (readonly [name: string, leastMps: number, sight: string])[] = [
  ["calm", 0, "smoke rises straight up"],
  ["light air", 0.3, "smoke drifts, vanes stay"],
  ["light breeze", 1.6, "felt on the face, leaves rustle"],
  ["gentle breeze", 3.4, "leaves and twigs keep moving, light flags stretch"],
  ["moderate breeze", 5.5, "dust and paper lift, small branches move"],
  ["fresh breeze", 8, "small trees in leaf sway"],
  ["strong breeze", 10.8, "large branches move, wires whistle"],
  ["near gale", 13.9, "whole trees move, walking is an effort"],
];

/**
 * The Beaufort scale, for a wind that is told by eye, force 0 to 7. Wind at 10 m above open
 * ground; least and usual speeds from the World Meteorological Organization (Manual on Codes,
 * WMO-No. 306, code table 1100; usual speed v = 0.836·B^1.5).
 */
export const BEAUFORT: readonly BeaufortForce[] = RAW.map(([name, leastMps, sight], force) => ({
  force,
  name,
  sight,
  leastMps,
  usualMps: 0.836 * force ** 1.5,
}));
