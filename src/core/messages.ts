/**
 * Every sentence that a DomainError can carry, in one place, so that they read alike.
 * Grouped by the folder that uses them. Each says what is wrong and where.
 */
export const messages = {
  log: {},
  carry: {},
  flight: {},
  choice: {},
  bag: {},
  learn: {},
  notes: {},
  functions: {
    missing: (name: string) => `${name} is missing.`,
    notNumber: (name: string, found: string) => `${name} must be a number; it is ${found}.`,
    notPositive: (name: string, found: number) => `${name} must be above 0; it is ${found}.`,
    notCount: (name: string, found: number) =>
      `${name} must be a whole number from 1; it is ${found}.`,
    notText: (name: string, found: string) => `${name} must be text; it is ${found}.`,
    notType: (found: string) =>
      `type must be putter, midrange, fairway or distance; it is ${found}.`,
    tooLarge: (name: string) =>
      `${name} has more cells than a function can be sent. Give the table, not whole columns.`,
    noRank: (rank: number, count: number) =>
      `There is no disc of rank ${rank} here; ${count} can be thrown for this.`,
    failed: (what: string) => `Carrybook could not work this out (${what}).`,
  },
} as const;
