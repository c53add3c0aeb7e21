import {
  DRY_AIR_GAS_CONSTANT,
  EARTH_RADIUS_M,
  GRAVITY,
  LAPSE_K_PER_M,
  STANDARD_DENSITY,
  STANDARD_PRESSURE_PA,
  STANDARD_TEMPERATURE_K,
  WATER_VAPOUR_SHARE,
} from "../constants";
import type { Settings } from "../types";
import { KELVIN_AT_0_C } from "../units";

/** Where and in what air the throw is made; null where a figure is not known. */
export interface Weather {
  readonly altitudeM: number;
  readonly temperatureC: number | null;
  /** Relative humidity, 0 to 1. */
  readonly humidity: number | null;
}

/** Temperature of the standard atmosphere, K, up to 11 km. ISO 2533:1975. */
const standardTemperatureK = (altitudeM: number): number => {
  const geopotentialM = (EARTH_RADIUS_M * altitudeM) / (EARTH_RADIUS_M + altitudeM);
  return STANDARD_TEMPERATURE_K - LAPSE_K_PER_M * geopotentialM;
};

/** Pressure of the standard atmosphere, Pa, up to 11 km. ISO 2533:1975. */
const standardPressurePa = (altitudeM: number): number =>
  STANDARD_PRESSURE_PA *
  (standardTemperatureK(altitudeM) / STANDARD_TEMPERATURE_K) **
    (GRAVITY / (DRY_AIR_GAS_CONSTANT * LAPSE_K_PER_M));

/**
 * Pressure of saturated water vapour over water, Pa. Magnus form with the coefficients of the
 * WMO Guide to Instruments and Methods of Observation (WMO-No. 8), annex 4.B, −45 to 60 °C.
 */
const saturationPressurePa = (celsius: number): number =>
  611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));

/**
 * Density of the air, kg/m³, for how far a disc carries.
 *
 * Pressure is the standard one for the altitude in m (ISO 2533, −2,000 to 11,000 m), for the
 * day's weather moves it by about 2 % only. A temperature in °C not given is the standard
 * one too; a humidity not given means dry air. Moist air is an ideal mixture, within 0.1 % of
 * the formula CIPM-2007. NaN for NaN.
 *
 * @example
 * airDensity({ altitudeM: 1500, temperatureC: null, humidity: null }) // 1.0581
 */
export function airDensity({ altitudeM, temperatureC, humidity }: Weather): number {
  const kelvin =
    temperatureC === null ? standardTemperatureK(altitudeM) : temperatureC + KELVIN_AT_0_C;
  const vapourPa = (humidity ?? 0) * saturationPressurePa(kelvin - KELVIN_AT_0_C);
  return moistDensity(standardPressurePa(altitudeM), kelvin, vapourPa);
}

/** Density of moist air, kg/m³, from its pressure, temperature and share of vapour pressure: an ideal mixture. */
export const moistDensity = (pressurePa: number, kelvin: number, vapourPa: number): number =>
  (pressurePa - (1 - WATER_VAPOUR_SHARE) * vapourPa) / (DRY_AIR_GAS_CONSTANT * kelvin);

/** The standard's own pressure and temperature give its own density to this share only. */
const SAME_AIR = 1e-6;

/** Whether a density is that of the standard atmosphere at sea level. */
export const isStandard = (densityKgM3: number): boolean =>
  Math.abs(densityKgM3 / STANDARD_DENSITY - 1) < SAME_AIR;

/** How much of a modelled effect a player meets, and the standard deviation of that. */
export interface Factor {
  readonly value: number;
  readonly sd: number;
}

/** What of the settings bears on plays-like distances. */
export interface Conditions {
  readonly densityKgM3: number;
  /** Of what rise and air add; of what a headwind and what a tailwind adds. */
  readonly uphill: Factor;
  readonly headwind: Factor;
  readonly tailwind: Factor;
}

const ALL: Factor = { value: 1, sd: 0 };

/** The whole of each modelled effect, with no doubt of it: the flight alone. */
export const FULL_EFFECT = { uphill: ALL, headwind: ALL, tailwind: ALL } as const;

/** The conditions in which holes are answered: the air of the settings (see airDensity), and their factors. */
export const conditionsOf = (settings: Settings): Conditions => ({
  densityKgM3: airDensity(settings),
  uphill: { value: settings.uphillFactor, sd: settings.uphillSd },
  headwind: { value: settings.headwindFactor, sd: settings.headwindSd },
  tailwind: { value: settings.tailwindFactor, sd: settings.tailwindSd },
});

/** The conditions in which the throws of the log were made: the air of the field where it is given, else as here. */
export const fieldConditionsOf = (settings: Settings): Conditions => ({
  ...conditionsOf(settings),
  densityKgM3: airDensity({
    altitudeM: settings.fieldAltitudeM ?? settings.altitudeM,
    temperatureC: settings.fieldTemperatureC ?? settings.temperatureC,
    humidity: settings.humidity,
  }),
});
