/** The table of tolerances says what the files do. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const FOLDER = join(__dirname, "golden");

interface Line {
  readonly file: string;
  readonly tolerance: string;
  readonly source: string;
}

const table: Line[] = readFileSync(join(FOLDER, "README.md"), "utf8")
  .split("\n")
  .filter((line) => line.startsWith("| `"))
  .map((line) => {
    const [, file, , tolerance, source] = line.split("|").map((cell) => cell.trim());
    return { file: file!.replaceAll("`", ""), tolerance: tolerance!, source: source! };
  });

/** All that stands under a key that begins with `name`, however deep. */
function allUnder(name: string, value: unknown): unknown[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key.startsWith(name) ? [inner] : allUnder(name, inner),
  );
}

const files = readdirSync(FOLDER).filter((file) => file.endsWith(".json"));

test.each(files)("%s", (file) => {
  const values = JSON.parse(readFileSync(join(FOLDER, file), "utf8")) as unknown;
  const lines = table.filter((line) => line.file === file);
  const tolerances = allUnder("tolerance", values).flatMap((found) =>
    typeof found === "object" ? Object.values(found as object) : [found],
  );
  const stated = lines
    .map(({ tolerance }) => Number(tolerance))
    .filter((tolerance) => tolerance > 0);
  expect(new Set(stated)).toEqual(new Set(tolerances));
  expect(new Set(lines.map(({ source }) => source))).toEqual(new Set(allUnder("source", values)));
});

test("no line for a file that is not there", () =>
  expect(table.filter(({ file }) => !files.includes(file))).toEqual([]));
