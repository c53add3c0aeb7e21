/**
 * The built functions in the real invocation proxy of the client library: what Excel sends on the
 * wire goes in, what goes back over the wire is looked at. Message numbers and shapes are those of
 * the library's own source.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import {
  loadLibrary,
  type OfficeLibrary,
  type RequestBody,
  type ResponseBody,
} from "./support/library";

const DIST = join(__dirname, "../../dist");
const described = (
  JSON.parse(readFileSync(join(DIST, "functions.json"), "utf8")) as {
    functions: { id: string; parameters: unknown[] }[];
  }
).functions;
const ids = described.map(({ id }) => id);

/** As Excel sends them: null for each argument that is left out. */
function allArguments(name: string, given: readonly unknown[]): unknown[] {
  const count = described.find(({ id }) => id === name)?.parameters.length ?? 0;
  return [...given, ...Array<null>(Math.max(0, count - given.length)).fill(null)];
}

const CALL = { messageCategory: 1, messageType: 1000 };
/** Bit of a call that says that error cells may come in (allowErrorForDataTypeAny). */
const ERRORS_ALLOWED = 4;
/** Numbers by which the library sends #N/A and #VALUE! with a message. */
const NOT_AVAILABLE = 1;
const INVALID_VALUE = 7;

interface Answer {
  readonly ok: boolean;
  readonly value: unknown;
  readonly code?: number;
}

/** One call of a function as Excel makes it, over the wire and back. */
class Caller {
  private readonly waiting = new Map<number, (answer: Answer) => void>();
  private readonly library: OfficeLibrary;
  private count = 0;
  private isReady = (): void => {};
  private readonly ready = new Promise<void>((resolve) => (this.isReady = resolve));

  constructor() {
    this.library = loadLibrary({ answer: async (body) => this.receive(body) });
    this.library.run(readFileSync(join(DIST, "functions.js"), "utf8"));
    this.library.startFunctions();
  }

  /** The answer, a lone one without its array. */
  async call(name: string, ...values: unknown[]): Promise<Answer> {
    const answer = await this.send(name, ...values);
    const { value } = answer;
    const lone = Array.isArray(value) && value.length === 1 && value[0].length === 1;
    return lone ? { ...answer, value: value[0][0] } : answer;
  }

  private async send(name: string, ...values: unknown[]): Promise<Answer> {
    await this.ready;
    const id = ++this.count;
    const answered = new Promise<Answer>((resolve) => this.waiting.set(id, resolve));
    const message = JSON.stringify([
      id,
      name,
      allArguments(name, values),
      "Log!A1",
      ERRORS_ALLOWED,
    ]);
    this.library.tell([{ ...CALL, message }]);
    return answered;
  }

  private receive({ Actions }: RequestBody): ResponseBody {
    if (Actions.some(({ Name }) => Name.startsWith("_SetOsfControlContainerReady"))) this.isReady();
    for (const { Name, ArgumentInfo } of Actions)
      if (Name === "SetInvocationArrayResults")
        for (const result of ArgumentInfo!.Arguments![0] as unknown[][]) {
          const [id, ok, value, code] = result as [number, boolean, unknown, number?];
          this.waiting.get(id)?.({ ok, value, ...(code === undefined ? {} : { code }) });
        }
    return { Results: Actions.map(({ Id }) => ({ ActionId: Id, Value: null })) };
  }
}

const caller = new Caller();
const call = (name: string, ...values: unknown[]) => caller.call(name, ...values);

const LOG = [
  ["Disc", "Carry", "Date"],
  ["Copper mid", 271, 46000],
  ["Copper mid", 276, 46001],
  ["Mint fairway", 318, 46001],
  ["Mint fairway", 305, 46003],
];
const SETTINGS = [["Distances in", "ft"]];
/** Number formats and links come as rich values, errors as objects, when the function allows them. */
const errorCell = (code: string) => ({ type: "CustomFunctionError", code });

test("every function of functions.json is registered under its id", async () => {
  expect(ids.length).toBeGreaterThan(20);
  const answers = await Promise.all(ids.map((id) => call(id)));
  // Not one is unknown to the library (it says so with the code of #N/A and no sentence).
  for (const { ok, value, code } of answers)
    if (!ok) {
      expect([NOT_AVAILABLE, INVALID_VALUE]).toContain(code);
      expect(String(value)).toMatch(/[a-z] [a-z].*\.$/);
    }
});

test("a function that nobody registered fails, so the test above can", async () => {
  expect(await call("NOSUCH")).toMatchObject({ ok: false, value: "" });
});

describe("what comes in", () => {
  test.each([[null], [""], [0]])("an optional argument as %j is not given", async (blank) => {
    const plain = await call("PLAYSLIKE", 300, null, null, null, null);
    expect(plain.ok).toBe(true);
    expect(await call("PLAYSLIKE", 300, blank, blank, blank, null)).toEqual(plain);
  });

  test.each([[null], [""], [0]])("blank cells of a range as %j are blank", async (blank) => {
    const padded = LOG.map((row) => [...row, blank]).concat([
      [blank, blank, blank, blank] as never,
    ]);
    expect(await call("SMOOTH", "Copper mid", padded, SETTINGS)).toEqual(
      await call("SMOOTH", "Copper mid", LOG, SETTINGS),
    );
  });

  test("an error cell in the log leaves out its row and no other", async () => {
    const broken = [...LOG, ["Copper mid", errorCell("#REF!"), 46004]];
    expect(await call("SMOOTH", "Copper mid", broken, null)).toEqual(
      await call("SMOOTH", "Copper mid", LOG, null),
    );
  });

  test("an error cell as an argument is named", async () => {
    const { ok, value, code } = await call(
      "PLAYSLIKE",
      errorCell("#DIV/0!"),
      null,
      null,
      null,
      null,
    );
    expect({ ok, code }).toEqual({ ok: false, code: INVALID_VALUE });
    expect(value).toContain("#DIV/0!");
  });

  test("rich values count by their plain value", async () => {
    const rich = (basicValue: unknown) => ({
      type: "FormattedNumber",
      basicType: "Double",
      basicValue,
    });
    const log = LOG.map(([disc, carry, day]) => [
      disc,
      typeof carry === "number" ? rich(carry) : carry,
      day,
    ]);
    expect(await call("SMOOTH", "Copper mid", log, null)).toEqual(
      await call("SMOOTH", "Copper mid", LOG, null),
    );
  });

  test("a single cell that comes as a range of one is that cell", async () => {
    expect(await call("LEVEL", [[300]], [[2]])).toEqual(await call("LEVEL", 300, 2));
  });
});

describe("what goes back", () => {
  test("a number goes back as it is", async () => {
    const { ok, value } = await call("LEVEL", 300, 60);
    expect(ok).toBe(true);
    expect(value).toBeCloseTo(150, 6); // cos 60° = 1/2
  });

  test.each([
    ["CARD", [LOG, SETTINGS, null]],
    ["OPTIONS", [280, LOG, SETTINGS, null, null, 5]],
    ["GAPS", [LOG, SETTINGS]],
    ["PLAYSBAND", [300, 12, null, null]],
    ["FLIGHT", [300, null, null, null, null]],
    ["WEAR", ["Copper mid", LOG, SETTINGS]],
    ["NOTES", ["mint fairway 318, 305 x 270", null]],
  ])("%s spills a rectangle of values that a cell can hold", async (name, args) => {
    const { ok, value } = await call(name, ...args);
    expect(ok).toBe(true);
    const rows = value as unknown[][];
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row).toHaveLength(rows[0]!.length);
      for (const cell of row)
        if (typeof cell === "object") expect(cell).toMatchObject({ basicType: "Error" });
        else expect(["string", "number", "boolean"]).toContain(typeof cell);
      // The wire turns what JSON cannot say into null, which Excel shows as 0.
      expect(row).not.toContain(null);
    }
  });

  test("dates go back as serial numbers", async () => {
    const { value } = await call("CARD", LOG, SETTINGS, null);
    const [header, first] = value as unknown[][];
    expect(first![header!.indexOf("Last")]).toBe(46003);
  });

  test("what makes no sense goes back as #VALUE! with a sentence", async () => {
    expect(await call("PLAYSLIKE", "far", null, null, null, null)).toEqual({
      ...{ ok: false, code: INVALID_VALUE },
      value: expect.stringMatching(/^distance must be a number; it is text, 'far'/),
    });
  });

  test("what cannot be answered goes back as #N/A with a sentence", async () => {
    expect(await call("SMOOTH", "Slate putter", LOG, null)).toEqual({
      ...{ ok: false, code: NOT_AVAILABLE },
      value: expect.stringContaining("Slate putter"),
    });
  });
});
