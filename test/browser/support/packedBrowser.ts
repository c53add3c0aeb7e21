/**
 * The browser that comes from npm, for a machine that has none. Its package unpacks itself only on
 * the servers that it is made for, so it is unpacked here, with the libraries and fonts beside it.
 */
import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { brotliDecompressSync } from "node:zlib";

const packages = join(dirname(require.resolve("@sparticuz/chromium")), "../..");

function unpackTar(name: string, into: string): void {
  const input = brotliDecompressSync(readFileSync(join(packages, "bin", name)));
  mkdirSync(into);
  const { status, stderr } = spawnSync("tar", ["-x", "-C", into], { input });
  if (status !== 0) throw new Error(`tar could not unpack ${name}: ${String(stderr)}`);
}

/** The browser finds fonts through this file only: the machine's, and those of the package. */
const fontConfiguration = (folder: string): string =>
  `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>/usr/share/fonts</dir><dir>${folder}/fonts</dir><cachedir>${folder}/cache</cachedir></fontconfig>`;

/** Unpacked beside and moved into place whole, so that test runs at the same time do not meet half of it. */
function unpack(folder: string): void {
  const beside = mkdtempSync(join(tmpdir(), "carrybook-unpack-"));
  const binary = brotliDecompressSync(readFileSync(join(packages, "bin/chromium.br")));
  writeFileSync(join(beside, "chromium"), binary, { mode: 0o755 });
  unpackTar("al2023.tar.br", join(beside, "libraries"));
  unpackTar("fonts.tar.br", join(beside, "fonts"));
  writeFileSync(join(beside, "fonts.conf"), fontConfiguration(folder));
  try {
    renameSync(beside, folder);
  } catch (reason) {
    rmSync(beside, { recursive: true, force: true });
    if (!existsSync(folder)) throw reason;
  }
}

export interface PackedBrowser {
  readonly executablePath: string;
  readonly env: Record<string, string>;
}

export function packedBrowser(): PackedBrowser {
  const { version } = JSON.parse(readFileSync(join(packages, "package.json"), "utf8")) as {
    version: string;
  };
  const folder = join(tmpdir(), `carrybook-chromium-${version}`);
  if (!existsSync(folder)) unpack(folder);
  const libraries = join(folder, "libraries/lib");
  const before = process.env["LD_LIBRARY_PATH"];
  return {
    executablePath: join(folder, "chromium"),
    env: {
      ...(process.env as Record<string, string>),
      LD_LIBRARY_PATH: before ? `${libraries}:${before}` : libraries,
      FONTCONFIG_FILE: join(folder, "fonts.conf"),
    },
  };
}
