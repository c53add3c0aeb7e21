import { findColumns } from "../../../src/core/log/headings";
import { readSettings } from "../../../src/core/log/readSettings";
import { readThrows, THROW_HEADERS } from "../../../src/core/log/readThrows";

const columns = (...header: string[]) => findColumns(header, THROW_HEADERS);

describe("a header means a column", () => {
  test.each(["Carry", " carry ", "CARRY:", "Carry (m)", "carry [ft]", "Carry (feet)"])(
    "'%s' is Carry",
    (header) => expect(columns(header).carry?.index).toBe(0),
  );

  test.each([
    ...["Wind direction", "Disc weight", "Carry goal", "Carry m", "Carry, m"],
    ...["Carry (yd)", "Carry (mph)", "Headwind (m)", "Player (first name)"],
  ])("'%s' is a column of the player's own", (header) => expect(columns(header)).toEqual({}));

  test("the exact column counts wherever a like one stands", () =>
    expect(columns("Disc weight", "Wind direction", "Disc", "Wind")).toMatchObject({
      disc: { index: 2 },
      headwind: { index: 3 },
    }));

  // Exact by definition: a foot is 0.3048 m, a mile an hour 0.44704 m/s (NIST SP 811, B.8).
  test("a unit in the header goes before the settings", () => {
    const log = [
      ["Disc", "Carry (ft)", "Headwind (mph)", "Rise"],
      ["Copper mid", 300, 10, 2],
    ];
    const [thrown] = readThrows(
      log,
      readSettings([
        ["Distances in", "m"],
        ["Wind in", "m/s"],
      ]),
    ).throws;
    expect(thrown!.carryM).toBeCloseTo(91.44, 10);
    expect(thrown!.headwindMps).toBeCloseTo(4.4704, 10);
    expect(thrown!.riseM).toBe(2);
  });

  test("a carry in yards is refused rather than read as feet", () =>
    expect(() =>
      readThrows(
        [
          ["Disc", "Carry (yd)"],
          ["Copper mid", 100],
        ],
        readSettings([]),
      ),
    ).toThrow("no Carry column"));
});
