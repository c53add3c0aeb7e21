/**
 * `npm run excel`: serves the built add-in on this machine over https and opens it in Excel. On
 * Windows and Mac Excel itself is opened with the add-in in it; elsewhere there is Excel on the
 * web, and the script says how the add-in gets there. With `-- --self-test` the pane shows the
 * self-test in place of the product.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { ownCertificate, trustedCertificate } from "./certificate";
import { LOCAL_HOST } from "./manifestFor";
import { serveFolder } from "./staticServer";

const ROOT = resolve(__dirname, "../..");
const IS_SELF_TEST = process.argv.includes("--self-test");
const MANIFEST = resolve(ROOT, IS_SELF_TEST ? "dist/self-test.xml" : "dist/manifest.xml");

/** The same add-in with another page: one runtime, so every address of the page changes. */
export const selfTestManifest = (xml: string): string =>
  xml.replaceAll("/addin.html", "/self-test.html");

/** How the add-in gets into Excel on the web. */
export const ON_THE_WEB = [
  `1. Open ${LOCAL_HOST}/addin.html once in the browser that you use Excel in, and accept its certificate.`,
  "2. Open a workbook on https://excel.cloud.microsoft. Where the browser asks, allow local network access.",
  "3. Home > Add-ins > More add-ins > My add-ins > Upload My Add-in.",
  `4. Choose ${MANIFEST}.`,
  "5. Carrybook stands under Home. Open it, and press Set-up.",
];

const hasExcel = process.platform === "win32" || process.platform === "darwin";

async function serve(): Promise<() => Promise<void>> {
  const certificate = hasExcel
    ? await trustedCertificate()
    : await ownCertificate(resolve(ROOT, "node_modules/.cache/carrybook"));
  const port = Number(new URL(LOCAL_HOST).port);
  const { close } = await serveFolder(resolve(ROOT, "dist"), port, certificate);
  return close;
}

async function openInExcel(): Promise<void> {
  const { AppType, startDebugging } = await import("office-addin-debugging");
  await startDebugging(MANIFEST, { appType: AppType.Desktop, enableDebugging: false });
  console.log("Excel opens with Carrybook under Home. Ctrl+C ends it.");
}

function explainTheWeb(): void {
  console.log("There is no Excel for this system. Excel on the web works:");
  for (const line of ON_THE_WEB) console.log(line);
  console.log("Ctrl+C ends the server. Without Excel at all: npm start.");
}

async function main(): Promise<void> {
  if (IS_SELF_TEST)
    writeFileSync(
      MANIFEST,
      selfTestManifest(readFileSync(resolve(ROOT, "dist/manifest.xml"), "utf8")),
    );
  const close = await serve();
  if (hasExcel) await openInExcel();
  else explainTheWeb();
  process.once("SIGINT", () => {
    void (async () => {
      if (hasExcel) await (await import("office-addin-debugging")).stopDebugging(MANIFEST);
      await close();
    })();
  });
}

if (require.main === module)
  main().catch((reason: unknown) => {
    console.error(`The add-in could not be served: ${String(reason)}`);
    process.exitCode = 1;
  });
