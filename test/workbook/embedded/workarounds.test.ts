import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { inside, SEEN_IN } from "../../../src/workbook/embedded/workarounds/seenIn";

/** The work-arounds know the inside of one version of the grid engine, and say so. */
const root = resolve(__dirname, "../../..");
const folders = ["src/workbook/embedded/workarounds", "src/page/workarounds"];
const files = folders.flatMap((folder) =>
  readdirSync(join(root, folder))
    .filter((name) => !["index.ts", "seenIn.ts"].includes(name))
    .map((name) => join(folder, name)),
);

describe("the work-arounds of the grid engine", () => {
  it("were made for the version that is installed", () => {
    const engine = join(root, "node_modules/@univerjs");
    const versions = readdirSync(engine).map((name) => {
      const text = readFileSync(join(engine, name, "package.json"), "utf8");
      return `${name} ${(JSON.parse(text) as { version: string }).version}`;
    });
    const others = versions.filter((line) => !line.endsWith(` ${SEEN_IN}`));
    // These two have versions of their own.
    expect(others.filter((line) => !/^(icons|protocol)\b/.test(line))).toEqual([]);
  });

  it.each(files)("%s says what it cures, and in which version it was seen", (file) => {
    const text = readFileSync(join(root, file), "utf8");
    expect(text).toMatch(/^\/\*\*\n \* Cures: /);
    expect(text.replace(/\n \*/g, "")).toContain(`Seen in ${SEEN_IN}`);
  });

  it("stop the start where another version of the engine lacks what they count on", () => {
    expect(() => inside<{ gone(): void }>({}, "gone")).toThrow(
      `The grid engine lacks gone: the work-arounds were made for version ${SEEN_IN}.`,
    );
  });
});
