/**
 * Units exist only at the borders; inside the core everything is SI.
 * Factors: NIST SP 811 (2008), appendix B.8, exact by definition.
 */
export const METRES_PER_FOOT = 0.3048;
export const MPS_PER_MPH = 0.44704;
export const MPS_PER_KMH = 1 / 3.6;
export const KELVIN_AT_0_C = 273.15;

export type DistanceUnit = "ft" | "m";
export type WindUnit = "mph" | "km/h" | "m/s";
export type TemperatureUnit = "F" | "C";

const METRES: Record<DistanceUnit, number> = { ft: METRES_PER_FOOT, m: 1 };
const MPS: Record<WindUnit, number> = { mph: MPS_PER_MPH, "km/h": MPS_PER_KMH, "m/s": 1 };

export const toMetres = (value: number, unit: DistanceUnit): number => value * METRES[unit];
export const fromMetres = (metres: number, unit: DistanceUnit): number => metres / METRES[unit];
export const toMps = (value: number, unit: WindUnit): number => value * MPS[unit];
export const fromMps = (mps: number, unit: WindUnit): number => mps / MPS[unit];
export const toCelsius = (value: number, unit: TemperatureUnit): number =>
  unit === "F" ? (value - 32) / 1.8 : value;
export const fromCelsius = (celsius: number, unit: TemperatureUnit): number =>
  unit === "F" ? celsius * 1.8 + 32 : celsius;
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;
export const toDegrees = (radians: number): number => (radians * 180) / Math.PI;
