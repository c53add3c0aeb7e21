/**
 * What a host must send, as one list: the folder is checked against it after every build, and a
 * host, here or on the web, when somebody asks. `npx tsx src/tools/hosting.ts [https://…]`
 */
import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";

const FOLDER = resolve(__dirname, "../../dist");

interface HostedFile {
  readonly path: string;
  /** What the Content-Type must begin with. */
  readonly type: RegExp;
}

const PAGE = /^text\/html\b/i;
const SCRIPT = /^(?:text|application)\/javascript\b/i;

/** Files that Excel and its players ask for by name; the pictures come from the manifest. */
export const HOSTED: readonly HostedFile[] = [
  { path: "manifest.xml", type: /^(?:text|application)\/xml\b/i },
  { path: "addin.html", type: PAGE },
  { path: "addin.js", type: SCRIPT },
  { path: "functions.js", type: SCRIPT },
  // Excel on the web takes it as application/json only, and asks from its own origin.
  { path: "functions.json", type: /^application\/json\b/i },
  { path: "functions.html", type: PAGE },
  { path: "support.html", type: PAGE },
  { path: "third-party-notices.txt", type: /^text\/plain\b/i },
  { path: "page/index.html", type: PAGE },
  { path: "phone/index.html", type: PAGE },
  { path: "phone/phone.js", type: SCRIPT },
  // Browsers run a worker only where it comes as a script.
  { path: "phone/serviceWorker.js", type: SCRIPT },
  { path: "phone/manifest.webmanifest", type: /^application\/(manifest\+)?json\b/i },
  { path: "phone/starter.xlsx", type: /^application\/vnd\.openxmlformats/i },
  { path: "carrybook-starter.xlsx", type: /^application\/vnd\.openxmlformats/i },
  { path: "carrybook-starter-plain.xlsx", type: /^application\/vnd\.openxmlformats/i },
];

interface Metadata {
  readonly allowErrorForDataTypeAny?: boolean;
  readonly functions: readonly { readonly id: string; readonly helpUrl?: string }[];
}

/** Where the manifest of a folder says that the folder is. */
const rootIn = (manifest: string): string =>
  /<SourceLocation DefaultValue="([^"]+)\/addin\.html"/.exec(manifest)?.[1] ?? "";

/**
 * What a built folder lacks before it can go to the host that its manifest names, in sentences.
 *
 * @example faultsOf("dist") // []
 */
export function faultsOf(folder: string): string[] {
  const missing = HOSTED.filter(({ path }) => !existsSync(join(folder, path)));
  if (missing.length > 0) return missing.map(({ path }) => `${path} is not there.`);
  const read = (path: string): string => readFileSync(join(folder, path), "utf8");
  const manifest = read("manifest.xml");
  const root = rootIn(manifest);
  const faults: string[] = [];
  const expectTrue = (is: boolean, sentence: string): void => {
    if (!is) faults.push(sentence);
  };
  expectTrue(root.startsWith("https://"), "The manifest names no https address for addin.html.");
  for (const [, address = ""] of manifest.matchAll(/DefaultValue="(https?:[^"]+)"/g)) {
    if (!address.startsWith(`${root}/`)) {
      faults.push(`The manifest names another place: ${address}`);
      continue;
    }
    const path = address.slice(root.length + 1).replace(/\?.*$/, "");
    expectTrue(existsSync(join(folder, path)), `The manifest names ${path}, which is not there.`);
    if (/^functions\.js/.test(path))
      expectTrue(/\?v=.+$/.test(address), `The address of ${path} carries no version.`);
  }
  for (const [, address = ""] of read("addin.html").matchAll(
    /<script src="?(?!https:)([^"> ]+)/g,
  )) {
    const [path = "", version = ""] = address.split("?");
    expectTrue(existsSync(join(folder, path)), `addin.html names ${path}, which is not there.`);
    expectTrue(version !== "", `addin.html loads ${path} without a version.`);
  }
  const metadata = JSON.parse(read("functions.json")) as Metadata;
  const reference = read("functions.html");
  const home = root.replaceAll("&amp;", "&");
  expectTrue(
    metadata.allowErrorForDataTypeAny === true,
    "functions.json keeps error cells out, so that one would stop a whole formula.",
  );
  for (const { id, helpUrl } of metadata.functions) {
    expectTrue(helpUrl === `${home}/functions.html#${id}`, `The help of ${id} leads elsewhere.`);
    expectTrue(
      reference.includes(`id="${id}"`),
      `functions.html says nothing of ${id}: npm run reference, then build again.`,
    );
  }
  return faults;
}

/**
 * What a host does not send as it must, in sentences: asks it for each file.
 *
 * @param address where `dist/` is read, with or without a slash at its end
 */
export async function faultsOfHost(address: string): Promise<string[]> {
  const root = `${address.replace(/\/+$/, "")}/`;
  const faults = await Promise.all(
    HOSTED.map(async ({ path, type }) => {
      const asked = await fetch(new URL(path, root), {
        headers: { Origin: "https://excel.officeapps.live.com" },
      }).catch(() => null);
      await asked?.body?.cancel();
      if (!asked?.ok) return [`${path}: ${asked ? `status ${asked.status}` : "no answer"}.`];
      const sent = asked.headers.get("Content-Type") ?? "no type";
      const origin = asked.headers.get("Access-Control-Allow-Origin");
      return [
        ...(type.test(sent) ? [] : [`${path} is sent as ${sent}.`]),
        ...(origin === "*" ? [] : [`${path} is sent without Access-Control-Allow-Origin: *.`]),
      ];
    }),
  );
  return faults.flat();
}

async function main([address]: readonly string[]): Promise<void> {
  const faults = address === undefined ? faultsOf(FOLDER) : await faultsOfHost(address);
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) process.exitCode = 1;
  else if (address !== undefined) console.log(`${address} sends all that it must.`);
  else {
    const root = rootIn(readFileSync(join(FOLDER, "manifest.xml"), "utf8"));
    console.log(`dist holds all that ${root} must send.`);
  }
}

if (require.main === module) void main(process.argv.slice(2));
