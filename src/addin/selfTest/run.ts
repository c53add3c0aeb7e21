/**
 * The self-test: what only Excel itself can show, tried in a new workbook and told in a report. It
 * builds the starter workbook, asks every function on a sheet of its own, adds, changes and takes
 * back a throw, and measures.
 */
import { cellRef } from "../../workbook/a1";
import { starterBlueprint } from "../../workbook/blueprint";
import { DATA_TABLES } from "../../workbook/blueprint/dataTables";
import { addRows } from "../../pane/book/book";
import { takeBack } from "../../pane/undo/takeBack";
import type { CellValue, TableData, WorkbookPort } from "../../workbook/port";

export interface Check {
  readonly what: string;
  /** null where something is only told. */
  readonly ok: boolean | null;
  readonly seen: string;
}

const SCRATCH = "Self-test";
/** Rows and columns that the longest and the widest answer of a function may take. */
const ROOM = { rows: 150, columns: 20 };
const ABREAST = 5;
const { throws: THROWS } = DATA_TABLES;
const THROW = { Date: 46_000, Disc: "Copper mid", Carry: 299 };

/** How long Excel may take to answer, and how often it is asked. */
export interface Patience {
  readonly forMs: number;
  readonly everyMs: number;
}

export class SelfTest {
  readonly checks: Check[] = [];

  constructor(
    private readonly port: Required<Pick<WorkbookPort, "health">> & WorkbookPort,
    private readonly examples: readonly string[],
    private readonly told: (checks: readonly Check[]) => void = () => {},
    private readonly patience: Patience = { forMs: 60_000, everyMs: 500 },
  ) {}

  /** Runs everything once. Refuses, and does nothing, in a workbook that holds tables of ours. */
  async run(): Promise<readonly Check[]> {
    const tables = await this.port.tableNames();
    const ours = Object.values(DATA_TABLES).filter((name) => tables.includes(name));
    if (ours.length > 0) {
      const seen = `This workbook has ${ours.join(", ")} already. Open a new, empty one.`;
      this.tell({ what: "A new workbook", ok: false, seen });
      return this.checks;
    }
    this.tell({ what: "Excel", ok: null, seen: surroundings() });
    await this.build();
    await this.askFunctions();
    await this.rowsAndBack();
    await this.settle();
    return this.checks;
  }

  private tell(check: Check): void {
    this.checks.push(check);
    this.told(this.checks);
  }

  /** Tries one thing; `work` answers what was seen, and throws where that is wrong. */
  private async try(what: string, work: () => Promise<string>): Promise<void> {
    const start = performance.now();
    try {
      const seen = await work();
      const took = `${Math.round(performance.now() - start)} ms`;
      this.tell({ what, ok: true, seen: [seen, took].filter(Boolean).join(", ") });
    } catch (error) {
      this.tell({ what, ok: false, seen: wordsOf(error) });
    }
  }

  private async build(): Promise<void> {
    await this.try("Build the starter workbook", async () => {
      const { made, lacking = [] } = await this.port.build(starterBlueprint());
      if (lacking.length > 0) throw new Error(lacking.join(" "));
      return `${made.length} things made`;
    });
    await this.try("No cell shows #NAME?", async () => {
      const { unanswered, remarks } = await this.port.health(starterBlueprint());
      if (unanswered) throw new Error("Cells of ours show #NAME? right after building.");
      return remarks.join(" ");
    });
  }

  private async askFunctions(): Promise<void> {
    const spots = this.examples.map((_, index) =>
      cellRef({
        row: 1 + Math.floor(index / ABREAST) * ROOM.rows,
        column: 1 + (index % ABREAST) * ROOM.columns,
      }),
    );
    await this.try("Write every function's example", async () => {
      await this.port.replaceSheet({
        name: SCRATCH,
        blocks: this.examples.map((formula, index) => ({
          ...{ kind: "formula", at: spots[index]!, formula },
        })),
      });
      return `${this.examples.length} formulas`;
    });
    for (const [index, formula] of this.examples.entries())
      await this.try(formula, async () => {
        const value = await this.answerAt(`${SCRATCH}!${spots[index]!}`);
        if (typeof value === "object") throw new Error(`${value.error} ${value.message ?? ""}`);
        if (value === "") throw new Error("The cell is blank.");
        return String(value);
      });
    await this.try("A line of sight of 301 at 4° is 301 × cos 4°", async () => {
      const at = this.examples.findIndex((formula) => formula === "=CARRY.LEVEL(301,4)");
      const value = await this.answerAt(`${SCRATCH}!${spots[at]!}`);
      const expected = 301 * Math.cos((4 * Math.PI) / 180);
      if (typeof value !== "number" || Math.abs(value - expected) > 0.01)
        throw new Error(`${JSON.stringify(value)} instead of ${expected.toFixed(2)}`);
      return value.toFixed(2);
    });
  }

  /** The value of a cell once it is no longer busy. */
  private async answerAt(ref: string): Promise<CellValue> {
    const until = performance.now() + this.patience.forMs;
    for (;;) {
      const value = (await this.port.readRange(ref))?.[0]?.[0] ?? "";
      const isBusy = typeof value === "object" && /BUSY|GETTING/.test(value.error);
      if (!isBusy || performance.now() > until) return value;
      await this.pause();
    }
  }

  private pause(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve, this.patience.everyMs));
  }

  private async throws(): Promise<TableData> {
    const table = await this.port.readTable(THROWS);
    if (!table) throw new Error(`There is no table ${THROWS}.`);
    return table;
  }

  private async rowsAndBack(): Promise<void> {
    const before = JSON.stringify((await this.throws().catch(() => null))?.rows);
    const isAsBefore = async (): Promise<void> => {
      const { rows } = await this.throws();
      const filled = rows.filter((row) => row.some((cell) => cell !== ""));
      const earlier = (JSON.parse(before) as CellValue[][]).filter((row) =>
        row.some((cell) => cell !== ""),
      );
      if (JSON.stringify(filled) !== JSON.stringify(earlier))
        throw new Error("The log is not as it was.");
    };
    await this.try("Add a throw, hear of it, and take it back", async () => {
      let heard = 0;
      const stop = this.port.onChange(() => (heard += 1));
      await this.pause();
      const change = await addRows(this.port, THROWS, [THROW]);
      await this.pause();
      await takeBack(this.port, [change]);
      stop();
      await isAsBefore();
      if (heard === 0) throw new Error("Excel did not tell of the change.");
      return `told ${heard} times`;
    });
    await this.try("Change a throw and change it back", async () => {
      const { headers, rows } = await this.throws();
      const was = { Carry: rows[0]![headers.indexOf("Carry")]! };
      await this.port.changeRows(THROWS, [{ index: 0, was, becomes: { Carry: 287 } }]);
      await this.port.changeRows(THROWS, [{ index: 0, was: { Carry: 287 }, becomes: was }]);
      await isAsBefore();
      return "";
    });
    await this.try("Text that looks like a date, a number or a formula stays text", async () => {
      for (const text of ["1/2", "007", "=1+1"]) {
        await this.port.writeRange(`${SCRATCH}!A149`, [[text]]);
        const found = (await this.port.readRange(`${SCRATCH}!A149`))?.[0]?.[0];
        if (found !== text) throw new Error(`${text} became ${JSON.stringify(found)}`);
      }
      return "";
    });
  }

  private async settle(): Promise<void> {
    await this.try("Write every formula again", async () => {
      return `${await this.port.repairFormulas()} formulas`;
    });
    await this.try("Recalculate, until Card answers", async () => {
      await this.port.recalculate();
      const value = await this.answerAt("Card!A5");
      if (value !== "Disc") throw new Error(`Card begins with ${JSON.stringify(value)}`);
      return "";
    });
    await this.try("Read all tables and settings at once", async () => {
      const read = await this.port.readTogether?.(Object.values(DATA_TABLES), ["Settings"]);
      const rows = read?.tables.reduce((sum, table) => sum + (table?.rows.length ?? 0), 0);
      return `${rows} rows`;
    });
  }
}

const wordsOf = (error: unknown): string => {
  if (!(error instanceof Error)) return String(error);
  const cause = error.cause as { code?: string; message?: string } | undefined;
  return cause ? `${error.message} (${cause.code ?? ""} ${cause.message ?? ""})` : error.message;
};

const VERSIONS = [14, 15, 16, 17, 18, 19, 20].map((minor) => `1.${minor}`);

/** Which Excel this is: system, version, language, and what it supports. */
function surroundings(): string {
  const { diagnostics, contentLanguage, requirements } = Office.context as Partial<Office.Context>;
  const newest = VERSIONS.filter((version) => requirements?.isSetSupported("ExcelApi", version));
  const sets = [
    ["SharedRuntime", "1.1"],
    ["CustomFunctionsRuntime", "1.3"],
    ["CustomFunctionsRuntime", "1.4"],
    ["DelayForCellEdit", "1.1"],
  ].filter(([name = "", version]) => requirements?.isSetSupported(name, version));
  return [
    diagnostics ? `${diagnostics.platform} ${diagnostics.version}` : "unknown version",
    contentLanguage ?? "unknown language",
    `ExcelApi ${newest.at(-1) ?? "before 1.14"}`,
    ...sets.map((set) => set.join(" ")),
  ].join(", ");
}

/** The report as text to copy. */
export function reportOf(checks: readonly Check[]): string {
  const failed = checks.filter(({ ok }) => ok === false).length;
  const lines = checks.map(({ what, ok, seen }) => {
    const verdict = ok === null ? "told  " : ok ? "ok    " : "FAILED";
    return `${verdict}  ${what}: ${seen}`;
  });
  return [failed === 0 ? "All passed" : `${failed} of ${checks.length} failed`, ...lines].join(
    "\n",
  );
}
