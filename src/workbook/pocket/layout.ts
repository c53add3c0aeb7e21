/** Columns behind the Pocket sheet's answers, and the row under their heading. */
export const TOP = 2;
export const COLUMN = {
  /** Inputs as the sheet takes them, and where they stand on the axes. */
  figures: 6,
  /** Three columns of weights, and under them a square of four by four. */
  weights: 8,
  /** By disc type: whether all about the place is in reach, and the plays-like distance. */
  sure: 12,
  plays: 13,
  anchors: 14,
  /** By disc, beside the list of discs. */
  type: 15,
  discPlays: 16,
  place: 17,
  placeShare: 18,
  stretch: 19,
  stretchShare: 20,
  cost: 21,
  power: 22,
  rank: 23,
  costOfRest: 24,
  rankOfRest: 25,
  /** Frozen grids, two for each type. */
  grids: 28,
  /** How far unstated types play off the mean of two types. */
  bends: 92,
  /** By disc: cost and power by each frozen table alone. */
  byTable: 109,
  nodes: 114,
  /** Frozen tables of costs and powers. */
  tables: 117,
} as const;
/** Rows among the figures. */
export const ROW = {
  known: 2,
  distance: 3,
  rise: 6,
  wind: 9,
  nearer: 12,
  share: 13,
  useFirst: 16,
  best: 17,
  second: 18,
} as const;
/** First row of the list of discs. */
export const FIRST_DISC = 24;
/** The three inputs, top to bottom. */
export const INPUTS = { distance: "$B$5", rise: "$B$6", wind: "$B$7" } as const;
