/** What `npm start` and `npm run excel` stand on: the built folder, as a host should send it. */
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { get as getSecurely } from "node:https";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ownCertificate } from "../../src/tools/certificate";
import { serveFolder, type StaticServer } from "../../src/tools/staticServer";

const folder = mkdtempSync(join(tmpdir(), "carrybook-serve-"));
const LONG_SCRIPT = "const carry = 301;\n".repeat(500);

beforeAll(() => {
  mkdirSync(join(folder, "page/parts"), { recursive: true });
  writeFileSync(join(folder, "addin.html"), "<p>here</p>");
  writeFileSync(join(folder, "functions.json"), '{"functions":[]}');
  writeFileSync(join(folder, "functions.js"), LONG_SCRIPT);
  writeFileSync(join(folder, "manifest.xml"), "<OfficeApp/>");
  writeFileSync(join(folder, "page/index.html"), "<p>page</p>");
  writeFileSync(join(folder, "page/parts/plan-ABCD1234.js"), "1");
  writeFileSync(join(folder, "starter.xlsx"), "PK");
  writeFileSync(join(folder, "closed.html"), "closed");
  copyFileSync(join(__dirname, "../../assets/icon-16.png"), join(folder, "icon-16.png"));
  chmodSync(join(folder, "closed.html"), 0);
});
afterAll(() => rmSync(folder, { recursive: true }));

let server: StaticServer;
let port: number;
beforeAll(async () => {
  server = await serveFolder(folder);
  port = Number(new URL(server.address).port);
});
afterAll(() => server.close());

/** Sends bytes as they are, and answers all that comes back, "" where the line is only closed. */
const send = (request: string): Promise<string> =>
  new Promise((resolve, reject) => {
    let heard = "";
    const line = connect(port, "127.0.0.1", () => line.write(request));
    line.setEncoding("latin1");
    line.on("data", (part: string) => (heard += part));
    line.on("close", () => resolve(heard));
    line.on("error", reject);
  });
const ask = (path: string, { method = "GET", host = "localhost", more = "" } = {}) =>
  send(`${method} ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n${more}\r\n`);
const statusOf = (answer: string): number => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1]);
const headersOf = (answer: string): Headers =>
  new Headers(
    answer
      .split("\r\n\r\n")[0]!
      .split("\r\n")
      .slice(1)
      .map((line) => line.split(/: (.*)/).slice(0, 2) as [string, string]),
  );

test.each([
  // Types: IANA media types; Excel on the web takes functions.json as application/json only.
  ["/functions.json", /^application\/json/],
  ["/functions.js", /^(text|application)\/javascript/],
  ["/addin.html", /^text\/html; charset=utf-8$/i],
  ["/manifest.xml", /^(text|application)\/xml/],
  ["/icon-16.png", /^image\/png$/],
  ["/starter.xlsx", /^application\/vnd\.openxmlformats-officedocument\.spreadsheetml\.sheet$/],
])("%s goes to any origin, with its type, which is not to be guessed", async (path, type) => {
  const answer = await ask(path);
  expect(statusOf(answer)).toBe(200);
  const headers = headersOf(answer);
  expect(headers.get("Content-Type")).toMatch(type);
  expect(headers.get("Access-Control-Allow-Origin")).toBe("*");
  expect(headers.get("X-Content-Type-Options")).toBe("nosniff");
});

test("what is long goes compressed to who takes it, and whole to who does not", async () => {
  const plain = await ask("/functions.js");
  const packed = await ask("/functions.js", {
    more: "Accept-Encoding: gzip\r\n",
  });
  expect(headersOf(plain).get("Content-Encoding")).toBeNull();
  expect(headersOf(packed).get("Content-Encoding")).toBe("gzip");
  expect(headersOf(packed).get("Vary")).toContain("Accept-Encoding");
  expect(packed.length).toBeLessThan(plain.length / 4);
  const answer = await fetch(`${server.address}functions.js`, {
    headers: { "Accept-Encoding": "gzip" },
  });
  expect(await answer.text()).toBe(LONG_SCRIPT);
});

describe("keeping", () => {
  const kept = async (path: string) => headersOf(await ask(path)).get("Cache-Control");

  test("a name with a hash in it is kept for good", async () =>
    expect(await kept("/page/parts/plan-ABCD1234.js")).toMatch(/max-age=31536000, immutable/));

  test.each(["/addin.html", "/functions.js", "/functions.json", "/page/"])(
    "%s is asked for again each time, and sent only when it is another",
    async (path) => {
      expect(await kept(path)).toBe("no-cache");
      const tag = headersOf(await ask(path)).get("ETag")!;
      const again = await ask(path, { more: `If-None-Match: ${tag}\r\n` });
      expect(statusOf(again)).toBe(304);
    },
  );

  test("a file that is built anew is sent anew, whole", async () => {
    writeFileSync(join(folder, "again.json"), "[1]");
    const tag = headersOf(await ask("/again.json")).get("ETag")!;
    writeFileSync(join(folder, "again.json"), "[1,2,3,4]");
    const again = await ask("/again.json", { more: `If-None-Match: ${tag}\r\n` });
    expect(again).toMatch(/\r\n\r\n\[1,2,3,4\]$/);
  });
});

describe("who asks, and how", () => {
  test.each(["localhost", "localhost:3000", "127.0.0.1:3000", "[::1]:3000"])(
    "%s is this machine",
    async (host) => expect(statusOf(await ask("/addin.html", { host }))).toBe(200),
  );

  test.each(["example.org", "localhost.example.org", "10.0.0.5:3000", "localhost@example.org", ""])(
    "a page that calls this machine %j gets nothing",
    async (host) => {
      const answer = await ask("/addin.html", { host });
      expect(statusOf(answer)).toBeGreaterThanOrEqual(400);
      expect(answer).not.toContain("here");
    },
  );

  test("HEAD answers without the content", async () => {
    const answer = await ask("/addin.html", { method: "HEAD" });
    expect(statusOf(answer)).toBe(200);
    expect(answer).toMatch(/\r\n\r\n$/);
  });

  test.each(["POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE"])(
    "%s is refused",
    async (method) => {
      const answer = await ask("/addin.html", { method });
      expect(statusOf(answer)).toBe(405);
      expect(headersOf(answer).get("Allow")).toBe("GET, HEAD");
      expect(answer).not.toContain("here");
    },
  );

  test("a folder without its slash leads to the one with it, so that links in it hold", async () => {
    const answer = await ask("/page");
    expect(statusOf(answer)).toBe(301);
    expect(headersOf(answer).get("Location")).toBe("/page/");
  });
});

test.each([
  ...[
    "//",
    "///",
    "//example.org/%2f..",
    "/%",
    "/%zz",
    "/%00",
    "/a%00b",
    "/\\..\\..\\x",
    "/..%5c..",
  ],
  ...[
    "/../package.json",
    "/%2e%2e/package.json",
    "/..;/x",
    "/?%",
    "/#",
    "*",
    "http://",
    "http://[",
  ],
  ...["http://example.org/addin.html", "x", "/.git/config", "/closed.html"],
  ...["/addin.html/", "/addin.html/x", "/page/%", "/page//..//..", "/con", "/nul.html"],
])("%s is answered without a file from elsewhere, and the next request too", async (path) => {
  expect(await ask(path)).not.toMatch(/"name": "carrybook"|<p>here/);
  expect(statusOf(await ask("/addin.html"))).toBe(200);
});

test("a path of 5,000 letters is not here", async () =>
  expect(statusOf(await ask(`/${"a".repeat(5_000)}`))).toBeGreaterThanOrEqual(400));

test.each(["bytes=5-2", "bytes=-", "bytes=99999-", "bytes=a-b", "bytes=0-0,5-2", "lines=1"])(
  "a range of %s does it no harm",
  async (range) => {
    expect(statusOf(await ask("/functions.js", { more: `Range: ${range}\r\n` }))).not.toBeNaN();
    expect(statusOf(await ask("/addin.html"))).toBe(200);
  },
);

test.each([
  "GET\r\n\r\n",
  "GET / HTTP/9.9\r\n\r\n",
  "\x16\x03\x01\x02\x00",
  "GET / HTTP/1.0\r\n\r\n",
])("%j, which is no request of ours, does it no harm", async (bytes) => {
  await send(`${bytes}\r\n\r\n`);
  expect(statusOf(await ask("/addin.html"))).toBe(200);
});

test("a reader that goes away in the middle does it no harm", async () => {
  await new Promise<void>((resolve) => {
    const line = connect(port, "127.0.0.1", () => {
      line.write("GET /functions.js HTTP/1.1\r\nHost: localhost\r\n\r\n");
      line.once("data", () => line.destroy());
      line.once("close", () => resolve());
    });
  });
  expect(statusOf(await ask("/addin.html"))).toBe(200);
});

test("a page is served under a certificate for localhost, which is kept", async () => {
  const certificate = await ownCertificate(join(folder, "own"));
  expect(await ownCertificate(join(folder, "own"))).toEqual(certificate);
  const secure = await serveFolder(folder, 0, certificate);
  const page = await new Promise<string>((resolve, reject) => {
    getSecurely(`${secure.address}addin.html`, { ca: certificate.ca }, (response) => {
      response.setEncoding("utf8");
      response.on("data", resolve);
    }).on("error", reject);
  });
  await secure.close();
  expect(secure.address).toMatch(/^https:\/\/localhost:/);
  expect(page).toBe("<p>here</p>");
});

/**
 * Windows as far as it can be had elsewhere: every module gets the paths of Windows, and a file
 * system that knows C:\site for the folder and takes back-slashes.
 */
describe("on Windows", () => {
  const SITE = "C:\\site";
  const here = (path: unknown): unknown =>
    typeof path === "string" && path.startsWith(SITE)
      ? `${folder}${path.slice(SITE.length).replaceAll("\\", "/")}`
      : path;

  async function askedThere(paths: readonly string[]): Promise<[number, string][]> {
    const answers: [number, string][] = [];
    await jest.isolateModulesAsync(async () => {
      const { win32 } = jest.requireActual<typeof import("node:path")>("node:path");
      const fs = jest.requireActual<Record<string, unknown>>("node:fs");
      const moved = Object.fromEntries(
        ["stat", "statSync", "createReadStream", "existsSync", "readFileSync", "lstat"].map(
          (name) => [
            name,
            (path: unknown, ...rest: unknown[]) =>
              (fs[name] as (...all: unknown[]) => unknown)(here(path), ...rest),
          ],
        ),
      );
      for (const name of ["path", "node:path"]) jest.doMock(name, () => win32);
      for (const name of ["fs", "node:fs"]) jest.doMock(name, () => ({ ...fs, ...moved }));
      const { serveFolder: serve } = await import("../../src/tools/staticServer");
      const there = await serve(SITE);
      for (const path of paths) {
        const answer = await fetch(new URL(path, there.address));
        answers.push([answer.status, await answer.text()]);
      }
      await there.close();
      for (const name of ["path", "node:path", "fs", "node:fs"]) jest.dontMock(name);
    });
    return answers;
  }

  test("the same files are served, and none from above", async () => {
    const answers = await askedThere([
      ...["addin.html", "page/", "page/parts/plan-ABCD1234.js"],
      ...["..%5cpackage.json", "page/..%5c..%5c..%5cetc%5cpasswd", "nothing.html"],
    ]);
    expect(answers.slice(0, 3)).toEqual([
      [200, readFileSync(join(folder, "addin.html"), "utf8")],
      [200, "<p>page</p>"],
      [200, "1"],
    ]);
    for (const [status] of answers.slice(3)) expect(status).toBeGreaterThanOrEqual(400);
  });
});
