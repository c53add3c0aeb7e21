/**
 * Every @example of the core is run. Where it states a value, that value must come; where it
 * rests on data (a card, a log …), those of the starter workbook, the answer must be of that shape.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { bookOf, readRawBook } from "../../src/pane/book/book";
import { starterBlueprint } from "../../src/workbook/blueprint";
import { MemoryPort } from "../support/memoryPort";

const CORE = join(__dirname, "../../src/core");
const files = readdirSync(CORE, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts"))
  .map((name) => join(CORE, name));

interface Example {
  readonly name: string;
  readonly code: string;
  readonly says: string;
}

/** The lines under an @example, up to the end of the comment, as code and what stands behind it. */
function examplesIn(file: string): Example[] {
  return [...readFileSync(file, "utf8").matchAll(/@example((?:.*\n)+?)\s*\*\//g)].map(
    ([, text]) => {
      const lines = text!.split("\n").map((line) => line.replace(/^\s*\*? ?/, ""));
      const [code, says] = lines
        .join("\n")
        .trim()
        .split(/\s*\/\/ ?([^]*)$/);
      return {
        name: `${relative(CORE, file)}: ${code!.split("\n").at(-1)}`,
        code: code!,
        says: says ?? "",
      };
    },
  );
}

const exported = (async () => {
  const modules = await Promise.all(files.map((file) => import(file)));
  return Object.assign({}, ...modules) as Record<string, unknown>;
})();
const toEvaluate = (code: string): string => {
  const statements = code.trim().split("\n");
  const last = statements.pop()!;
  const source = [...statements, `return (${last.replace(/;$/, "")});`].join("\n");
  return ts.transpileModule(`function f() {${source}}`, {
    compilerOptions: { target: ts.ScriptTarget.ES2022 },
  }).outputText;
};

/** A stated number stands for all that agree with its digits. */
function expectNumber(found: unknown, stated: string): void {
  const digits = stated.replace("−", "-").replace("…", "");
  const decimals = digits.split(".")[1]?.length ?? 0;
  expect(typeof found).toBe("number");
  expect(Math.abs((found as number) - Number(digits))).toBeLessThanOrEqual(10 ** -decimals);
}

const NUMBER = /^[−-]?\d+(?:\.\d+)?…?(?=$|[ ;(])/;
const DATA = /\b(card|bag|log|settings|holes|rounds|row|cells)\b/;

test.each(files.flatMap(examplesIn))("$name", async ({ code, says }) => {
  const { raw, settings, bag, log, card, holes, rounds } = await book;
  const row = card.rows.find(({ disc }) => disc === "Violet driver");
  const cells = [raw.throws!.headers, ...raw.throws!.rows];
  const scope: Record<string, unknown> = {
    ...(await exported),
    settings,
    bag,
    log,
    card,
    holes,
    rounds,
    row,
    cells,
  };
  const run = new Function(...Object.keys(scope), `${toEvaluate(code)} return f();`);
  const found: unknown = run(...Object.values(scope));
  expect(found).toBeDefined();
  const onData = DATA.test(code);
  if (NUMBER.test(says)) {
    if (onData) expect(typeof found).toBe("number");
    else expectNumber(found, NUMBER.exec(says)![0]);
  } else if (/^"/.test(says)) {
    if (onData) expect(typeof found).toBe("string");
    else expect(found).toBe(JSON.parse(/^"[^"]*"/.exec(says)![0]));
  } else if (/^\{/.test(says)) {
    const keys = [...says.matchAll(/(\w+):/g)].map(([, key]) => key!);
    expect(Object.keys(found as object)).toEqual(expect.arrayContaining(keys));
  } else if (/^(true|false)\b/.test(says)) expect(String(found)).toBe(/^\w+/.exec(says)![0]);
});

const book = (async () => bookOf(await readRawBook(new MemoryPort(starterBlueprint()))))();
