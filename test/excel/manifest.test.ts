/**
 * @jest-environment jsdom
 *
 * The manifest, rule by rule. Microsoft's validator cannot be reached from everywhere, so what its
 * schema and the documentation of Office Add-ins ask for stands here: order of elements, every
 * resid resolved, lengths, addresses, icons, one runtime for all.
 */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { NEEDED } from "../../src/addin/versions";
import { LOCAL_HOST, manifestFor } from "../../src/tools/manifestFor";

const ROOT = join(__dirname, "../..");
const XML = readFileSync(join(ROOT, "manifest.xml"), "utf8");

const parsed = (xml: string): Document => new DOMParser().parseFromString(xml, "application/xml");
const all = (place: Document | Element, name: string): Element[] => [
  ...place.getElementsByTagNameNS("*", name),
];
const names = ({ children }: Element): string[] => [...children].map(({ localName }) => localName);
const manifest = parsed(XML);
const one = (name: string): Element => all(manifest, name)[0]!;
const value = (element: Element): string => element.getAttribute("DefaultValue")!;

/** Order of the elements in the schema of task pane add-ins (MS-OWEMXML). */
const ORDER: Readonly<Record<string, readonly string[]>> = {
  OfficeApp: [
    ...["Id", "Version", "ProviderName", "DefaultLocale", "DisplayName", "Description"],
    ...["IconUrl", "HighResolutionIconUrl", "SupportUrl", "AppDomains", "Hosts", "Requirements"],
    ...["DefaultSettings", "Permissions", "VersionOverrides"],
  ],
  VersionOverrides: ["Description", "Requirements", "Hosts", "Resources"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  Group: ["Label", "Icon", "Control"],
  Control: ["Label", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  Resources: ["Images", "Urls", "ShortStrings", "LongStrings"],
};

test("is well-formed and without anything that its schema does not know", () => {
  expect(all(manifest, "parsererror")).toEqual([]);
  expect(manifest.documentElement.namespaceURI).toBe(
    "http://schemas.microsoft.com/office/appforoffice/1.1",
  );
  expect(all(manifest, "TaskpaneId")).toEqual([]);
});

test.each(Object.entries(ORDER))(
  "%s has its elements in the order of the schema",
  (name, order) => {
    const found = name === "OfficeApp" ? [manifest.documentElement] : all(manifest, name);
    expect(found.length).toBeGreaterThan(0);
    for (const element of found) {
      const places = names(element).map((child) => order.indexOf(child));
      expect(places).not.toContain(-1);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  },
);

test("Runtimes comes first in the host, before all form factors", () => {
  const host = all(one("VersionOverrides"), "Host")[0]!;
  expect(names(host)).toEqual(["Runtimes", "AllFormFactors", "DesktopFormFactor"]);
});

test("names no domain but its own, which needs no naming (AppDomains takes origins only)", () =>
  expect(all(manifest, "AppDomains")).toEqual([]));

test("who needs help is led to a page for it, not to the pane", () => {
  expect(value(one("SupportUrl"))).toBe(`${LOCAL_HOST}/support.html`);
  const id = one("LearnMoreUrl").getAttribute("resid");
  expect(value(all(manifest, "Url").find((found) => found.id === id)!)).toBe(
    `${LOCAL_HOST}/support.html`,
  );
});

test("what Excel keeps for a day has the build in its address, and nothing else has", () => {
  const dated = [...manifestFor(XML, LOCAL_HOST, "0.1.0-ab&c").matchAll(/"([^"]*\?[^"]*)"/g)]
    .map(([, found]) => found!)
    .filter((found) => found.startsWith("https"));
  expect(dated).toEqual([
    `${LOCAL_HOST}/functions.js?v=0.1.0-ab%26c`,
    `${LOCAL_HOST}/functions.json?v=0.1.0-ab%26c`,
  ]);
});

test("has a GUID and a version of four parts", () => {
  expect(one("Id").textContent).toMatch(
    /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
  );
  expect(one("Version").textContent).toMatch(/^\d+\.\d+\.\d+\.\d+$/);
});

test("asks for what the add-in needs, and the page checks the same", () => {
  const asked = all(one("Requirements"), "Set").map((set) => [
    set.getAttribute("Name"),
    set.getAttribute("MinVersion"),
  ]);
  expect(Object.fromEntries(asked)).toEqual(NEEDED);
});

describe("one runtime for all", () => {
  test("runtime, functions, ribbon commands and pane name one and the same page", () => {
    const pane = all(manifest, "Action").find(
      (action) => action.getAttribute("xsi:type") === "ShowTaskpane",
    )!;
    const pages = [
      one("Runtime"),
      all(one("Page"), "SourceLocation")[0]!,
      one("FunctionFile"),
      all(pane, "SourceLocation")[0]!,
    ].map((element) => element.getAttribute("resid"));
    expect(new Set(pages)).toEqual(new Set(["Page.Url"]));
    expect(one("Runtime").getAttribute("lifetime")).toBe("long");
  });

  test("the page is the pane's own address too", () =>
    expect(value(all(one("DefaultSettings"), "SourceLocation")[0]!)).toBe(
      value(all(manifest, "Url").find(({ id }) => id === "Page.Url")!),
    ));

  test("every button of the ribbon has its work in the page", () => {
    const script = readFileSync(join(ROOT, "src/addin/addin.ts"), "utf8");
    const wanted = all(manifest, "FunctionName").map(({ textContent }) => textContent);
    expect(wanted).toEqual(["recalculate"]);
    for (const name of wanted) expect(script).toContain(`Office.actions.associate("${name}"`);
  });

  test("the namespace is that of the formulas in the sheets", () => {
    const id = one("Namespace").getAttribute("resid");
    expect(value(all(manifest, "String").find((text) => text.id === id)!)).toBe("CARRY");
  });
});

describe("resources", () => {
  const defined = all(one("Resources"), "*").filter((element) => element.hasAttribute("id"));
  const used = [...manifest.querySelectorAll("[resid]")].map((element) =>
    element.getAttribute("resid")!,
  );

  test("all that are used are there, once, and none is idle", () => {
    const ids = defined.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...new Set(used)].sort()).toEqual([...ids].sort());
  });

  test("every id is at most 32 letters, and unique in the ribbon", () => {
    const ids = [...manifest.querySelectorAll("[id]")].map(({ id }) => id);
    for (const id of [...ids, ...used]) expect(id.length).toBeLessThanOrEqual(32);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("short strings are at most 125 letters, long ones 250", () => {
    for (const [kind, most] of [
      ["ShortStrings", 125],
      ["LongStrings", 250],
    ] as const)
      for (const text of all(one(kind), "String")) {
        expect(value(text).length).toBeGreaterThan(0);
        expect(value(text).length).toBeLessThanOrEqual(most);
      }
    expect(value(one("DisplayName")).length).toBeLessThanOrEqual(125);
    expect(value(one("Description")).length).toBeLessThanOrEqual(250);
  });

  test("a label that a string names is a short one, a tip a long one", () => {
    const short = new Set(all(one("ShortStrings"), "String").map(({ id }) => id));
    const long = new Set(all(one("LongStrings"), "String").map(({ id }) => id));
    for (const name of ["Label", "Title", "Namespace"])
      for (const element of all(manifest, name))
        expect(short.has(element.getAttribute("resid")!)).toBe(true);
    for (const place of [...all(manifest, "Supertip"), one("GetStarted")])
      expect(long.has(all(place, "Description")[0]!.getAttribute("resid")!)).toBe(true);
  });
});

describe("icons", () => {
  /** Width and height stand at bytes 16 and 20 of a PNG file (ISO/IEC 15948, 11.2.2). */
  const sizeOf = (address: string): [number, number] => {
    const file = readFileSync(join(ROOT, address.replace(`${LOCAL_HOST}/`, "")));
    expect(file.subarray(1, 4).toString()).toBe("PNG");
    return [file.readUInt32BE(16), file.readUInt32BE(20)];
  };

  test("of the ribbon are there at 16, 32 and 80 px, and are of that size", () => {
    for (const icon of all(manifest, "Icon")) {
      const images = all(icon, "Image");
      expect(images.map((image) => image.getAttribute("size"))).toEqual(["16", "32", "80"]);
      for (const image of images) {
        const id = image.getAttribute("resid");
        const size = Number(image.getAttribute("size"));
        const address = value(all(one("Images"), "Image").find((found) => found.id === id)!);
        expect(sizeOf(address)).toEqual([size, size]);
      }
    }
  });

  test("of the list of add-ins are 32 and 64 px", () => {
    expect(sizeOf(value(one("IconUrl")))).toEqual([32, 32]);
    expect(sizeOf(value(one("HighResolutionIconUrl")))).toEqual([64, 64]);
  });
});

describe("addresses", () => {
  const addresses = (xml: string): string[] =>
    [...xml.matchAll(/DefaultValue="(https?:[^"<]*)/g)].map(([, found]) => found!);

  test("are all https, on the place where it is developed", () => {
    expect(addresses(XML).length).toBeGreaterThan(12);
    for (const address of addresses(XML)) expect(address.startsWith(LOCAL_HOST)).toBe(true);
  });

  test.each([
    ["https://example.org/carrybook", "https://example.org/carrybook"],
    ["https://example.org/carrybook/", "https://example.org/carrybook"],
    ["https://example.org", "https://example.org"],
    ["https://example.org:8443/a/b", "https://example.org:8443/a/b"],
    ["https://example.org/a&b", "https://example.org/a&amp;b"],
  ])("for %s are rewritten one and all", (host, root) => {
    const xml = manifestFor(XML, host);
    expect(xml).not.toContain("localhost");
    expect(all(parsed(xml), "parsererror")).toEqual([]);
    expect(addresses(xml)).toHaveLength(addresses(XML).length);
    for (const address of addresses(xml)) expect(address.startsWith(root)).toBe(true);
  });

  test.each([
    "http://example.org",
    "example.org",
    "",
    "https://example.org/?a=1",
    "ftp://example.org",
  ])("are not rewritten for %j", (host) => expect(() => manifestFor(XML, host)).toThrow(/https/));
});

test("Microsoft's own reader of manifests takes it, and its debugger loads", () => {
  const script = `
    require("office-addin-debugging");
    const { OfficeAddinManifest } = require("office-addin-manifest");
    OfficeAddinManifest.readManifestFile("dist/manifest.xml").then((info) => console.log(JSON.stringify(info)));`;
  const said = execFileSync(process.execPath, ["-e", script], { cwd: ROOT, encoding: "utf8" });
  expect(JSON.parse(said)).toMatchObject({
    ...{ id: one("Id").textContent, version: "1.0.0.0", displayName: "Carrybook" },
    ...{ hosts: ["Workbook"], permissions: "ReadWriteDocument" },
  });
});
