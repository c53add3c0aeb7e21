/** Whatever a spreadsheet can send to a function: by kind of argument, sound and unsound. */
import fc, { type Arbitrary } from "fast-check";

const errorCell = fc.constantFrom(
  { code: "#REF!" },
  { error: "#DIV/0!" },
  { basicType: "Error", basicValue: "#NAME?" },
);
const richCell = fc.record({ type: fc.constant("Double"), basicValue: fc.double() });
const blank = fc.constantFrom(null, undefined, "", 0);
const awkwardNumber = fc.constantFrom(
  ...[0, -0, -1, 1e-12, 1e9, 1e308, -1e308, NaN, Infinity, -Infinity],
);
const awkwardText = fc.constantFrom(
  ...["__proto__", "constructor", "toString", "3,5", "1.234,5", "٣٠١", "=1+1", "#N/A", "\u202eabc"],
  "x".repeat(255),
);

/** A cell that need not make sense. */
export const anyCell: Arbitrary<unknown> = fc.oneof(
  blank,
  errorCell,
  richCell,
  awkwardNumber,
  awkwardText,
  fc.double(),
  fc.boolean(),
  fc.string({ unit: "binary", maxLength: 20 }),
);

const anyGrid = fc
  .integer({ min: 1, max: 5 })
  .chain((columns) =>
    fc.array(fc.array(anyCell, { minLength: columns, maxLength: columns }), { maxLength: 5 }),
  );

const discName = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom("Copper mid", "Mint fairway", "Slate putter", "سماء") },
  { weight: 1, arbitrary: awkwardText },
);
const mostly = (sound: Arbitrary<unknown>): Arbitrary<unknown> =>
  fc.oneof({ weight: 12, arbitrary: sound }, { weight: 1, arbitrary: anyCell });

const tableOf = (
  columns: Record<string, Arbitrary<unknown>>,
  most: number,
): Arbitrary<unknown[][]> =>
  fc
    .array(fc.tuple(...Object.values(columns).map(mostly)), { minLength: 1, maxLength: most })
    .map((rows) => [Object.keys(columns), ...rows]);

const feet = fc.double({ min: 150, max: 450, noNaN: true });
const smallFeet = fc.double({ min: -40, max: 40, noNaN: true });
const wind = fc.double({ min: -20, max: 20, noNaN: true });

const log = tableOf(
  {
    Date: fc.integer({ min: 46000, max: 46200 }),
    Disc: discName,
    Carry: feet,
    Offline: smallFeet,
    Power: fc.constantFrom("", 0.9, 1),
    Line: fc.constantFrom("", "off", "hyzer"),
    Headwind: fc.constantFrom(0, 0, 0, 4),
    Rise: fc.constantFrom(0, 0, 0, 6),
    Player: fc.constantFrom("", "Me", "Partner"),
  },
  12,
);
const list = fc.array(fc.tuple(mostly(discName), mostly(feet)), { minLength: 1, maxLength: 8 });
const card = tableOf(
  {
    Disc: discName,
    Carry: feet,
    Low: fc.constantFrom("", 180),
    High: fc.constantFrom("", 460),
    Spread: fc.constantFrom("", 18),
    "Known to": fc.constantFrom("", 9),
    Side: fc.constantFrom("", 15),
    "Side throws": fc.constantFrom("", 3),
  },
  6,
);
const course = tableOf(
  {
    Hole: fc.integer({ min: 1, max: 18 }),
    Distance: feet,
    Rise: smallFeet,
    Headwind: wind,
    "Long trouble": fc.constantFrom("", 20),
  },
  4,
);
const rounds = tableOf(
  { Distance: feet, Rise: smallFeet, Headwind: wind, Disc: discName, Finish: smallFeet },
  6,
);
const bag = tableOf(
  {
    Disc: discName,
    Type: fc.constantFrom("", "putter", "midrange", "fairway", "distance"),
    "In bag": fc.constantFrom("", "yes", "no"),
  },
  5,
);
const settings = fc.array(
  fc.oneof(
    { weight: 3, arbitrary: fc.constant(["Distances in", "m"]) },
    { weight: 3, arbitrary: fc.constant(["Player", "Me"]) },
    { weight: 3, arbitrary: fc.constant(["Aim for", "circle"]) },
    { weight: 3, arbitrary: fc.constant(["Altitude", 900]) },
    { weight: 1, arbitrary: fc.tuple(anyCell, anyCell) },
  ),
  { maxLength: 3 },
);

const sometimesNotGiven = (given: Arbitrary<unknown>): Arbitrary<unknown> =>
  fc.oneof({ weight: 2, arbitrary: blank }, { weight: 3, arbitrary: given });
const sometimesAnything = (given: Arbitrary<unknown>): Arbitrary<unknown> =>
  fc.oneof({ weight: 9, arbitrary: given }, { weight: 1, arbitrary: fc.oneof(anyCell, anyGrid) });

const BY_NAME: Record<string, Arbitrary<unknown>> = {
  throws: fc.oneof(log, log, list, card),
  settings: sometimesNotGiven(settings),
  bag: sometimesNotGiven(bag),
  course,
  rounds,
  disc: discName,
  distance: fc.double({ min: 3, max: 900, noNaN: true }),
  rise: sometimesNotGiven(smallFeet),
  headwind: sometimesNotGiven(wind),
  crosswind: wind,
  range: feet,
  angle: fc.double({ min: -60, max: 60, noNaN: true }),
  speed: wind,
  from: fc.oneof(fc.constantFrom("N", "sw", "NNE", "up"), fc.integer({ min: 0, max: 400 })),
  bearing: fc.integer({ min: 0, max: 360 }),
  to: sometimesNotGiven(feet),
  step: sometimesNotGiven(fc.constantFrom(10, 25)),
  type: sometimesNotGiven(fc.constantFrom("putter", "fairway", "blimp")),
  rank: sometimesNotGiven(fc.integer({ min: 1, max: 4 })),
  count: sometimesNotGiven(fc.integer({ min: 1, max: 4 })),
  margin: fc.double({ min: 0.5, max: 40, noNaN: true }),
  text: fc.oneof(fc.string({ unit: "binary" }), fc.constant("copper mid 301, 295 x 10 left")),
};

/** Arguments for a function with these parameters: mostly sound, never surely so. */
export const argumentsFor = (parameters: readonly { readonly name: string }[]) =>
  fc.tuple(...parameters.map(({ name }) => sometimesAnything(BY_NAME[name] ?? anyCell)));
