/** What a host must send: the built folder has it, our own server sends it, and a lack is named. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { faultsOf, faultsOfHost, HOSTED } from "../../src/tools/hosting";
import { serveFolder } from "../../src/tools/staticServer";

const DIST = join(__dirname, "../../dist");
const folder = join(mkdtempSync(join(tmpdir(), "carrybook-host-")), "dist");
beforeEach(() => cpSync(DIST, folder, { recursive: true }));
afterEach(() => rmSync(folder, { recursive: true }));

const change = (path: string, from: string | RegExp, to: string): void => {
  const file = join(folder, path);
  const before = readFileSync(file, "utf8");
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  writeFileSync(file, after);
};

test("the built folder holds all of it", () => expect(faultsOf(DIST)).toEqual([]));

test.each(HOSTED.map(({ path }) => path))("without %s it is named", (path) => {
  rmSync(join(folder, path));
  expect(faultsOf(folder)).toEqual([`${path} is not there.`]);
});

test.each<[string, string, string | RegExp, string, RegExp]>([
  ["an icon gone", "manifest.xml", "icon-16.png", "icon-17.png", /icon-17\.png, which is not/],
  [
    "an address left behind",
    "manifest.xml",
    /"https:[^"]+support/,
    '"https://x.org/support',
    /x\.org/,
  ],
  [
    "no version in the manifest",
    "manifest.xml",
    /functions\.json\?v=[^"]+/,
    "functions.json",
    /json carries no/,
  ],
  [
    "no version in the page",
    "addin.html",
    /addin\.js\?\w+/,
    "addin.js",
    /addin\.js without a version/,
  ],
  [
    "error cells kept out",
    "functions.json",
    '"allowErrorForDataTypeAny": true',
    '"x": 1',
    /error cells/,
  ],
  ["help that leads elsewhere", "functions.json", /functions\.html#AIR/, "#AIR", /help of AIR/],
  ["a function without its place", "functions.html", 'id="AIR"', 'id="air"', /nothing of AIR/],
])("%s is named", (_what, path, from, to, words) => {
  change(path, from, to);
  expect(faultsOf(folder)).toEqual([expect.stringMatching(words)]);
});

test("our own server sends it as it must", async () => {
  const { address, close } = await serveFolder(DIST);
  expect(await faultsOfHost(address)).toEqual([]);
  await close();
});

test("a host that sends other types, and to its own pages only, is told of each file", async () => {
  const server = createServer((request, response) => {
    if (request.url === "/addin.html") response.statusCode = 404;
    response.end("x");
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  const faults = await faultsOfHost(`http://localhost:${port}`);
  expect(faults).toContain("addin.html: status 404.");
  expect(faults).toContain("functions.json is sent as no type.");
  expect(faults).toContain("functions.json is sent without Access-Control-Allow-Origin: *.");
  server.closeAllConnections();
  server.close();
  expect(await faultsOfHost(`http://localhost:${port}`)).toHaveLength(HOSTED.length);
});

test.each(["functions.html", "support.html"])(
  "%s runs no script and takes nothing from elsewhere",
  (path) => {
    const page = readFileSync(join(DIST, path), "utf8");
    expect(page).toMatch(/Content-Security-Policy" content="default-src 'none'/);
    expect(page).not.toMatch(/<script|src="|href="https?:/);
  },
);

test("the page for help says what it is, how to get help, and the licence", () => {
  const page = readFileSync(join(DIST, "support.html"), "utf8");
  const { version } = JSON.parse(readFileSync(join(__dirname, "../../package.json"), "utf8"));
  for (const words of [
    "add-in for Excel",
    "How to get help",
    "Permission is hereby granted",
    version,
  ])
    expect(page).toContain(words);
  const licence = readFileSync(join(__dirname, "../../LICENSE"), "utf8");
  expect(page).toContain(licence.split("\n").find((line) => line.startsWith("Copyright"))!);
});
