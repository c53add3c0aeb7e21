/**
 * The built page of the add-in in a browser, with Office's server answered from the npm package.
 * Inside Excel means: the real client library in the page, over a workbook in memory here.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { serveFolder } from "../../../src/tools/staticServer";
import { ExcelHost } from "./excelHost";
import { EXCEL_2021, type HostMessage, type RequestBody, type RequirementSets } from "./library";

const OFFICE = join(require.resolve("@microsoft/office-js/dist/office.js"), "..");
const CDN = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const LIBRARY = readFileSync(join(OFFICE, "excel-web-16.00.debug.js"), "utf8");

/** Where the page is opened. */
export type Place = "outside" | "unreachable" | { readonly sets: RequirementSets };

export interface ExcelPage {
  readonly page: Page;
  readonly host: ExcelHost;
  /** What the content-security policy refused. */
  readonly refused: string[];
  close(): Promise<void>;
}

/** What office.js does in Excel, for as much as the page asks of it. */
const inside = (sets: RequirementSets): string => `
  window.OSF = {};
  ${LIBRARY}
  {
    const sets = ${JSON.stringify(sets)};
    const minor = (version) => Number(String(version).split(".")[1] ?? 0);
    const isSetSupported = (name, version = "1.1") =>
      name in sets && minor(version) <= minor(sets[name]);
    window.Office = Object.create(Office, {
      context: { value: { requirements: { isSetSupported } } },
      HostType: { value: { Excel: "Excel" } },
      addin: { value: { onVisibilityModeChanged: async (look) => {
        const visibilityMode = (isShown) => (isShown ? "Taskpane" : "Hidden");
        const others = window.showPane ?? (() => {});
        window.showPane = (isShown) => (others(isShown), look({ visibilityMode: visibilityMode(isShown) }));
        return async () => {};
      } } },
      onReady: { value: async () => ({ host: "Excel" }) },
      actions: { value: { associate: (id, work) => (window.ribbon = { ...window.ribbon, [id]: work }) } },
    });
    const listeners = [];
    OSF.DDA = Object.assign(OSF.DDA ?? {}, { RichApi: { richApiMessageManager: {
      register: async (heard) => void listeners.push(heard) } } });
    window.tellExcel = (entries) => listeners.forEach((heard) => heard({ entries }));
    OfficeExtension.ClientRequestContext.defaultRequestUrlAndHeaders = {
      _resolveRequestUrlAndHeaderInfo: () => Promise.resolve(null),
      _createRequestExecutorOrNull: () => ({
        executeAsync: async (_data, flags, message) => ({
          HttpStatusCode: 200, ErrorCode: null, ErrorMessage: null, Headers: {},
          Body: JSON.parse(await answerExcel(JSON.stringify(message.Body), flags)),
        }),
      }),
    };
    CustomFunctions.associate = (id, run) => (window.registered = { ...window.registered, [id]: run });
  }`;

export async function openExcelPage(
  browser: Browser,
  place: Place,
  file = "addin.html",
): Promise<ExcelPage> {
  const server = await serveFolder(join(__dirname, "../../../dist"));
  const page = await browser.newPage({ viewport: { width: 350, height: 720 } });
  const host = new ExcelHost({ sets: EXCEL_2021 });
  const refused: string[] = [];
  page.on("console", (said) => {
    if (/Content.Security.Policy/i.test(said.text())) refused.push(said.text());
  });
  await page.exposeFunction("answerExcel", async (body: string, flags: number) =>
    JSON.stringify(await host.answer(JSON.parse(body) as RequestBody, flags)),
  );
  host.library.tell = (messages: readonly HostMessage[]) =>
    void page.evaluate(
      (entries) => (window as unknown as { tellExcel(all: unknown): void }).tellExcel(entries),
      messages as unknown[],
    );
  await page.route(`${CDN}**`, (route) => {
    if (place === "unreachable") return route.abort();
    const contentType = "text/javascript";
    if (place !== "outside") return route.fulfill({ contentType, body: inside(place.sets) });
    const file = new URL(route.request().url()).pathname.replace("/lib/1/hosted/", "");
    return route.fulfill({ contentType, body: readFileSync(join(OFFICE, file)) });
  });
  await page.goto(`${server.address}${file}`);
  return {
    ...{ page, host, refused },
    close: async () => {
      await page.close();
      await server.close();
    },
  };
}
