/** The columns of a printed card, in order. Names are a file format: never change or reorder them. */
export const CARD_HEADERS = [
  "Disc",
  "Type",
  "Line",
  "Carry",
  "Low",
  "High",
  "Spread",
  "Side",
  "Aim",
  "Known to",
  "Throws",
  "Left out",
  "Last",
  "Trend",
  "Side throws",
] as const;

/** The headers by which a card is read back; hand-made cards may use the other words. */
export const CARD_FIELDS = {
  disc: ["disc", "disc name", "discs"],
  type: ["type"],
  line: ["line"],
  softest: ["softest"],
  carry: ["carry", "distance", "dist"],
  low: ["low"],
  high: ["high"],
  spread: ["spread"],
  side: ["side"],
  aim: ["aim"],
  knownTo: ["known to", "known to ±"],
  throws: ["throws"],
  leftOut: ["left out"],
  last: ["last"],
  trend: ["trend"],
  sideThrows: ["side throws"],
} as const;
