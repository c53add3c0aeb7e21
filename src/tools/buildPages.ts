/**
 * Makes the pages of the host that only tell something: the function reference, to which Excel's
 * help of each function leads, and the page for who needs help.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { marked } from "marked";
import { REFERENCE_PAGE } from "./functionsMetadata";

const ROOT = resolve(__dirname, "../..");
const FOLDER = join(ROOT, "dist");

const STYLE = `
  body { max-width: 44rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; color: #1c2326; background: #fff;
    font: 1rem/1.5 system-ui, sans-serif; overflow-wrap: break-word; }
  h1, h2, h3 { line-height: 1.2; scroll-margin-top: 1rem; }
  h2 { margin-top: 2.5rem; }
  h2:target { background: #e6f1f2; }
  a { color: #0b6e75; }
  code, pre { font-size: 0.9em; }
  pre { white-space: pre-wrap; }
  table { display: block; overflow-x: auto; border-collapse: collapse; }
  th, td { padding: 0.2rem 0.6rem; border-bottom: 1px solid #c9d1d4; text-align: left; }`;

const page = (title: string, body: string): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src 'self'; base-uri 'none'; form-action 'none'" />
    <title>${title}</title>
    <link rel="icon" href="assets/icon-32.png" />
    <style>${STYLE}</style>
  </head>
  <body>
${body}
  </body>
</html>
`;

/** The reference in Markdown as a page, each function under its id. */
export function referencePage(markdown: string): string {
  const body = marked.parse(markdown, { async: false });
  const anchored = body.replace(/<h2>(CARRY\.(\w+))/g, '<h2 id="$2">$1');
  return page("Carrybook: functions", anchored);
}

const support = (version: string, licence: string): string => `
# Carrybook

Carrybook is an add-in for Excel: the smooth carry of each of your discs, plays-like distance, and the
disc for a distance, from your own throws. Your throws stay in your workbook; nothing is sent anywhere.

- [What each function does](functions.html)
- [Try it in the browser](page/index.html), without Excel
- [The manifest](manifest.xml), which adds Carrybook to Excel
- [A starter workbook](carrybook-starter.xlsx) with invented data

## How to get help

Ask whoever gave you Carrybook: the person or the club whose address you see above. Tell them what you
pressed, what you saw, your Excel (File › Account) and this version: **${version}**.

- **A cell shows #NAME?.** The workbook was opened before Carrybook was there. Open Carrybook under Home:
  it mends such cells by itself, and says so. _Recalculate_ does too.
- **A cell stays at #BUSY!.** Close the workbook and open it again. If it stays, look at the connection:
  Carrybook is loaded from the address above, and Office's own script from its maker's.
- **A figure is old.** Press _Recalculate_ under Home. Under Formulas › Calculation Options, _Manual_ keeps
  every figure until you do.
- **Nothing can be written.** End typing in the cell with Enter, take off the protection under Review, or
  save a copy where the workbook is read-only. The sentence in the pane says which it is.
- **The functions are not there.** Custom functions need Excel of Microsoft 365, Excel on the web, Excel 2021
  for Mac, or a retail Excel 2021 for Windows from version 2311 on; a volume licence of Excel 2021 does not
  run them on Windows, and no phone or tablet does.

Throw only on a clear field, with nobody in range. Figures for wind and slope are estimates; the rules of
the course and the event decide.

## Licence

The licences of the packages in it are in [third-party-notices.txt](third-party-notices.txt).

\`\`\`text
${licence.trim()}
\`\`\`
`;

function main(): void {
  const read = (name: string): string => readFileSync(join(ROOT, name), "utf8");
  const { version } = JSON.parse(read("package.json")) as { version: string };
  writeFileSync(join(FOLDER, REFERENCE_PAGE), referencePage(read("src/functions/README.md")));
  const body = marked.parse(support(version, read("LICENSE")), { async: false });
  writeFileSync(join(FOLDER, "support.html"), page("Carrybook: help and licence", body));
}

if (require.main === module) main();
