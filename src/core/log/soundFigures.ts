/** Which figures a row can hold; others are slips of the keyboard or of the unit. */
import { LEAST_POWER, LONGEST_CARRY_M, MOST_POWER, SHORTEST_CARRY_M } from "../constants";

export const isCarry = (carryM: number): boolean =>
  carryM >= SHORTEST_CARRY_M && carryM <= LONGEST_CARRY_M;

/** A power of 0 is a blank, which means smooth. */
export const isPower = (power: number): boolean =>
  power === 0 || (power >= LEAST_POWER && power <= MOST_POWER);
