/**
 * Horizontal distance from a line-of-sight range and its angle above the horizontal, rad; in
 * the unit of the range. Negative angles look down. NaN for NaN.
 *
 * @example
 * levelM(100, Math.PI / 3) // 50.0000…
 */
export const levelM = (rangeM: number, angleRad: number): number => rangeM * Math.cos(angleRad);

/**
 * Rise from a line-of-sight range and its angle above the horizontal, rad; in the unit of the
 * range, negative below. NaN for NaN.
 *
 * @example
 * riseM(100, Math.PI / 6) // 49.9999…
 */
export const riseM = (rangeM: number, angleRad: number): number => rangeM * Math.sin(angleRad);
