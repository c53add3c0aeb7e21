import { DomainError } from "../../../src/core/errors";
import { DEFAULT_SETTINGS, readSettings } from "../../../src/core/log/readSettings";

const messageOf = (cells: unknown[][]): string => {
  try {
    readSettings(cells);
  } catch (thrown) {
    if (thrown instanceof DomainError && thrown.code === "unusable") return thrown.message;
    throw thrown;
  }
  return "read without error";
};

describe("settings", () => {
  test("nothing set gives the defaults", () => {
    expect(readSettings([])).toEqual(DEFAULT_SETTINGS);
    expect(
      readSettings([
        ["", ""],
        [null, undefined],
        [0, 0],
      ]),
    ).toEqual(DEFAULT_SETTINGS);
  });

  test("labels in any case, spacing and order, with a header and with units behind", () => {
    const settings = readSettings([
      ["Setting", "Value"],
      ["  ALTITUDE (m) ", 1500],
      ["circle (m)", 9],
      ["player", " Ana "],
      ["as of", 46154],
      ["Memory (days)", 90],
      ["distances IN (ft, m)", "Metres"],
      ["Wind in", "km/h"],
      ["temperature", 20],
      ["Temperature in", "°C"],
      ["Humidity", 0.4],
      ["Usual  spread", 0.08],
      ["side spread:", 0.05],
      ["Wind speed (km/h)", 18],
      ["Wind from", "NW"],
      ["Field altitude", 300],
      ["field temperature", 5],
      ["Course spread", 0.08],
      ["Course side", 0.05],
      ["Course carry", 0.97],
      ["Today", 1.02],
      ["Today ±", 0.02],
      ["Today is", 46155],
      ["Highest power", 1.05],
      ["Aim for", "Circle"],
      ["Uphill factor", 1.2],
      ["Uphill factor ±", 0.1],
      ["Headwind factor", 0.9],
      ["Headwind  factor  ±", 0.2],
      ["Tailwind factor", -0.3],
      ["TAILWIND FACTOR ±", 0.4],
    ]);
    expect(settings).toEqual({
      ...DEFAULT_SETTINGS,
      player: "Ana",
      asOfDay: 46154,
      memoryDays: 90,
      distanceUnit: "m",
      windUnit: "km/h",
      temperatureUnit: "C",
      windMps: 5,
      windFromDegrees: 315,
      temperatureC: 20,
      altitudeM: 1500,
      fieldTemperatureC: 5,
      fieldAltitudeM: 300,
      humidity: 0.4,
      circleM: 9,
      usualSpread: 0.08,
      sideSpreadRad: 0.05,
      courseSpread: 0.08,
      courseSideRad: 0.05,
      courseCarry: 0.97,
      today: 1.02,
      todaySd: 0.02,
      todayDay: 46155,
      highestPower: 1.05,
      aimFor: "circle",
      uphillFactor: 1.2,
      uphillSd: 0.1,
      headwindFactor: 0.9,
      headwindSd: 0.2,
      tailwindFactor: -0.3,
      tailwindSd: 0.4,
    });
  });

  test("units may stand below what they belong to", () => {
    const settings = readSettings([
      ["Temperature", 68],
      ["Altitude", 5000],
      ["Temperature in", "F"],
    ]);
    expect(settings.temperatureC).toBeCloseTo(20, 12);
    expect(settings.altitudeM).toBeCloseTo(1524, 9);
  });

  test.each([[""], [0], [null]])(
    "Memory left blank (%p) never ages; left out it is usual",
    (blank) => {
      expect(readSettings([["Memory (days)", blank]]).memoryDays).toBe(Infinity);
      expect(readSettings([["Player", "Ana"]]).memoryDays).toBe(DEFAULT_SETTINGS.memoryDays);
    },
  );

  test("a 0 is a value where it makes sense, and this host does not send blanks as 0", () => {
    const zeros = [
      ["Temperature", 0],
      ["Field altitude", 0],
      ["Uphill factor ±", 0],
      ["Wind from", 0],
    ];
    expect(readSettings([["Player", ""], ["Temperature in", "C"], ...zeros])).toMatchObject({
      temperatureC: 0,
      fieldAltitudeM: 0,
      uphillSd: 0,
      windFromDegrees: 0,
    });
    expect(readSettings([["Player", 0], ["Circle", 0], ...zeros])).toEqual(DEFAULT_SETTINGS);
  });

  test("every setting has its usual value", () => {
    expect(DEFAULT_SETTINGS).toMatchObject({
      memoryDays: 180,
      usualSpread: 0.07,
      sideSpreadRad: 0.06,
      courseSpread: 0.0735,
      courseSideRad: 0.063,
      courseCarry: 1,
      today: 1,
      todaySd: 0,
      highestPower: 1,
      aimFor: "strokes",
      uphillFactor: 1,
      uphillSd: 0.3,
      headwindFactor: 1,
      headwindSd: 0.5,
      tailwindFactor: 0,
      tailwindSd: 0.7,
      windFromDegrees: null,
      fieldAltitudeM: null,
      fieldTemperatureC: null,
    });
  });

  test("a date may be ISO 8601 text", () => {
    expect(readSettings([["As of", "2026-05-12"]]).asOfDay).toBe(46154);
  });

  test("putting pairs under their label, nearest first, in the distance unit", () => {
    const { putting } = readSettings([
      ["Putting", ""],
      [10, 0.4],
      ["", ""],
      [5, 0.9],
      ["Distances in", "m"],
    ]);
    expect(putting).toEqual([
      { distanceM: 5, share: 0.9 },
      { distanceM: 10, share: 0.4 },
    ]);
    expect(
      readSettings([
        ["Putting", ""],
        ["", ""],
      ]).putting,
    ).toBe(DEFAULT_SETTINGS.putting);
  });

  test.each([
    [[["Colour", "red"]], /no setting called 'Colour'/],
    [[["", 5]], /row 1.*without a label/],
    [[[10, 0.5]], /no setting called '10'/],
    [
      [
        ["Player", "A"],
        ["player", "B"],
      ],
      /row 2.*there already/,
    ],
    [[["Distances in", "yards"]], /Distances in must be ft or m; it is text, 'yards'/],
    [[["Wind in", "knots"]], /Wind in must be mph or km\/h or m\/s/],
    [[["Aim for", 3]], /Aim for must be strokes or circle; it is 3/],
    [[["Temperature", "20"]], /Temperature must be a number; it is text, '20'/],
    [[["Temperature", 200]], /Temperature must lie from -76 to 140; it is 200/],
    [[["Altitude", 9e5]], /Altitude must lie from -1640 to 29528/],
    [[["Altitude (m)", 1500]], /'Altitude \(m\)' is read in ft/],
    [[["Circle (ft)", 33]], /'Circle \(ft\)' is read in m/],
    [[["Humidity", 45]], /Humidity must lie from 0 to 1; it is 45/],
    [[["Memory (days)", -3]], /Memory \(days\) must lie from 1/],
    [[["Usual spread", 7]], /Usual spread must lie from 0.005 to 0.5/],
    [[["Side spread", true]], /Side spread must be a number; it is TRUE/],
    [[["Lowest power", 0.9]], /no setting called 'Lowest power'/],
    [[["Wind speed", 90]], /Wind speed must lie from 0 to 89; it is 90/],
    [[["Wind speed (m/s)", 5]], /'Wind speed \(m\/s\)' is read in mph/],
    [[["Wind from", "north-ish"]], /Wind from must be degrees or a compass point/],
    [[["Temperature (C)", 20]], /'Temperature \(C\)' is read in F/],
    [[["Field altitude (m)", 20]], /'Field altitude \(m\)' is read in ft/],
    [[["Course spread", 3]], /Course spread must lie from 0 to 0.5; it is 3/],
    [[["Today is", "yesterday"]], /Today is must be a date/],
    [
      [["Uphill factor", { error: "#REF!" }]],
      /Uphill factor must be a number; it is an error, #REF!/,
    ],
    [[["As of", "12/5/26"]], /As of must be a date; it is text, '12\/5\/26'/],
    [[["Player", { code: "#N/A" }]], /Player must be text; it is an error, #N\/A/],
    [
      [
        ["Putting", ""],
        [20, 1.2],
      ],
      /Putting at 20 must lie from 0 to 1; it is 1.2/,
    ],
    [
      [
        ["Putting", ""],
        [20, 0.5],
        [20, 0.6],
      ],
      /Putting has two rows for 20/,
    ],
    [
      [
        ["Putting", ""],
        ["20", 0.5],
      ],
      /no setting called '20'/,
    ],
  ] as [unknown[][], RegExp][])("%j is refused", (cells, message) => {
    expect(messageOf(cells)).toMatch(message);
  });
});
