/**
 * Renders assets/*.svg to the sizes that Excel asks for: `npx tsx src/tools/icons.ts`. The PNG files
 * are committed; this runs again only when a drawing changes.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { openBrowser } from "../../test/browser/support/browser";

const FOLDER = resolve(__dirname, "../../assets");
/** Ribbon at normal, medium and high resolution, and the list of add-ins. */
const SIZES_PX = [16, 32, 64, 80];
/** The home screen of a phone. */
const PHONE_SIZES_PX = [192, 512];

async function main(): Promise<void> {
  const browser = await openBrowser();
  const page = await browser.newPage();
  for (const name of readdirSync(FOLDER).filter((file) => file.endsWith(".svg")))
    for (const size of name === "icon.svg" ? [...SIZES_PX, ...PHONE_SIZES_PX] : SIZES_PX) {
      const drawing = readFileSync(join(FOLDER, name)).toString("base64");
      await page.setViewportSize({ width: size, height: size });
      await page.setContent(
        `<style>body{margin:0}img{display:block;width:${size}px;height:${size}px}</style><img src="data:image/svg+xml;base64,${drawing}">`,
      );
      await page.screenshot({
        path: join(FOLDER, name.replace(".svg", `-${size}.png`)),
        omitBackground: true,
      });
    }
  await browser.close();
}

void main();
