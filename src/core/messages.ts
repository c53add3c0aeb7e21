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
} as const;
