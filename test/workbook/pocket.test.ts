/**
 * The Pocket sheet against BEST and PLAYSLIKE, as LibreOffice works it out (where this machine has
 * it) and as the embedded workbook does, on 500 holes off the figures of its frozen grid.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { askLibreOffice, hasLibreOffice } from "../support/libreOffice";
import type { Shown, Trial } from "../support/pocketTrial";

jest.setTimeout(600_000);

const SAME_PICK = 0.97;
const WITHIN_FT = 2;
/** What stands under the answer where the sheet takes it for a rough one; that may not be often. */
const ROUGH = /^Near the edge/;
const MOST_ROUGH = 0.1;

let trial: Trial;
beforeAll(() => {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  try {
    const outfile = join(folder, "trial.cjs");
    const entryPoints = [join(__dirname, "../support/pocketTrial.ts")];
    buildSync({ entryPoints, bundle: true, platform: "node", format: "cjs", outfile });
    const asked = { encoding: "utf8", maxBuffer: 64_000_000 } as const;
    trial = JSON.parse(execFileSync(process.execPath, [outfile], asked)) as Trial;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

/** Compares what a program shows for each hole with the core. */
function judge(shown: readonly Shown[]): void {
  expect(shown).toHaveLength(trial.holes.length);
  const answered = trial.holes.flatMap((hole, index) => {
    const answer = trial.expected[index];
    const [disc, playsLike, sentence] = shown[index]!;
    return answer ? [{ hole, answer, disc, playsLike, rough: ROUGH.test(String(sentence)) }] : [];
  });
  expect(answered.length / shown.length).toBeGreaterThan(0.97);
  const same = answered.filter(({ answer, disc }) => answer.disc === disc);
  expect(same.length / answered.length).toBeGreaterThanOrEqual(SAME_PICK);
  const wrong = answered.filter(
    ({ answer, playsLike }) => !(Math.abs(Number(playsLike) - answer.playsLikeFt) <= WITHIN_FT),
  );
  expect(wrong).toEqual([]);
  expect(answered.filter(({ rough }) => rough).length / answered.length).toBeLessThan(MOST_ROUGH);
}

test("the holes are 500", () => expect(trial.holes).toHaveLength(500));

(hasLibreOffice() ? test : test.skip)(
  "LibreOffice shows the same disc and the same plays-like distance",
  () => {
    const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
    try {
      const file = join(folder, "pocket.xlsx");
      writeFileSync(file, Buffer.from(trial.file, "base64"));
      const shown = askLibreOffice(
        { file, sheet: "Pocket", inputs: ["B5", "B6", "B7"], outputs: ["B9", "B11", "A15"] },
        trial.holes,
      );
      judge(shown.map(([disc, playsLike, sentence]): Shown => [disc, playsLike, sentence]));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);

test("the embedded workbook shows the same disc and the same plays-like distance", () =>
  judge(trial.embedded));

test("says where no disc gets there", () =>
  expect(trial.beyond.map(([, , sentence]) => sentence)).toEqual([
    expect.stringContaining("No disc gets there"),
  ]));

test("needs nothing but plain formulas", () => {
  const formulas = trial.plan.blocks.flatMap((block) =>
    block.kind === "formula" ? [block.formula] : [],
  );
  const calls = formulas.flatMap((formula) =>
    [...formula.matchAll(/([A-Z][A-Z.]*)\(/g)].map((match) => match[1]!),
  );
  /** All stand in the file format's first list of functions: ECMA-376 part 1, 18.17.7. */
  const plain = [
    ...["ABS", "AND", "COUNT", "IF", "INDEX", "INT", "ISNUMBER", "LN", "MATCH", "MAX", "MIN", "N"],
    ...["NOT", "OR", "ROUND", "SUM", "SUMPRODUCT"],
  ];
  expect([...new Set(calls)].sort()).toEqual(plain);
});

test("says when it was frozen, for whom, what it does not know, and to take care", () => {
  const words = JSON.stringify(trial.plan.blocks);
  expect(words).toContain("Frozen 2026-11-25 for Me.");
  expect(words).toContain("This sheet knows 75 to 600 ft");
  expect(words).toContain("Throw only on a clear field");
});
