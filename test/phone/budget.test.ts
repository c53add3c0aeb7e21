/** What the phone page costs before it shows anything, counted in bytes: no machine is too slow for that. */
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { gzipSync } from "node:zlib";

const FOLDER = resolve(__dirname, "../../dist/phone");
const read = (path: string): Buffer => readFileSync(join(FOLDER, path));
const html = read("index.html").toString();
const named = [...html.matchAll(/(?:href|src)="([^"]+)"/g)].map(([, path]) => path!);

test("the first load is at most 120 kB compressed", () => {
  const first = ["index.html", "starter.json", ...named.filter((path) => /\.(js|css)$/.test(path))];
  const bytes = first.reduce((sum, path) => sum + gzipSync(read(path)).length, 0);
  expect(bytes).toBeLessThanOrEqual(120_000);
});

test("what opens and saves files is not part of it", () => {
  const scripts = named.filter((path) => path.endsWith(".js")).map((path) => read(path).toString());
  expect(scripts.join("")).not.toContain("sheetData");
  expect(readdirSync(join(FOLDER, "parts")).some((name) => name.startsWith("lightFile"))).toBe(
    true,
  );
});

test("the service worker has every file of the page in its list", () => {
  const worker = read("serviceWorker.js").toString();
  const files = readdirSync(FOLDER, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== "serviceWorker.js")
    .map(({ name }) => name);
  expect(files.filter((name) => !worker.includes(name))).toEqual([]);
});
