import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Compilation, sources, type Compiler } from "webpack";
import { manifestFor } from "./manifestFor";

const ROOT = resolve(__dirname, "../..");
const HASH_LETTERS = 8;

/** Emits the manifest for a host, with the version of what was just built in its addresses. */
export class ManifestPlugin {
  constructor(private readonly host: string) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("Manifest", (compilation) => {
      // Last of all, when the scripts are as they will be written.
      const stage = Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "Manifest", stage }, (assets) => {
        const hash = createHash("sha256");
        for (const name of Object.keys(assets)
          .filter((name) => /\.js(on)?$/.test(name))
          .sort())
          hash.update(assets[name]!.buffer());
        const { version } = JSON.parse(readFileSync(resolve(ROOT, "package.json"), "utf8"));
        const build = `${version}-${hash.digest("hex").slice(0, HASH_LETTERS)}`;
        const xml = readFileSync(resolve(ROOT, "manifest.xml"), "utf8");
        compilation.emitAsset(
          "manifest.xml",
          new sources.RawSource(manifestFor(xml, this.host, build)),
        );
      });
    });
  }
}
