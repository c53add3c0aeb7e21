import { DomainError } from "../errors";

/** A figure, or NaN where there is none to be had; any other error goes on to the caller. */
export function orNaN(work: () => number): number {
  try {
    return work();
  } catch (error) {
    if (error instanceof DomainError && error.code === "unavailable") return NaN;
    throw error;
  }
}
