/**
 * Serves the built pages on this machine, prints their addresses and opens the workbook where there is a
 * browser to open. PORT chooses the port; `--no-open` only prints.
 */
import { spawn } from "node:child_process";
import { resolve } from "node:path";
import { serveFolder } from "./staticServer";

const USUAL_PORT = 3210;
const OPENERS: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  darwin: ["open"],
  win32: ["cmd", "/c", "start", ""],
  linux: ["xdg-open"],
};

function openInBrowser(address: string): void {
  const [command, ...rest] = OPENERS[process.platform] ?? [];
  if (command === undefined) return;
  const opener = spawn(command, [...rest, address], { stdio: "ignore", detached: true });
  opener.on("error", () => undefined);
  opener.unref();
}

/** The usual port, or any free one where another program has it. */
async function serve(folder: string, port: number): Promise<string> {
  const server = await serveFolder(folder, port).catch((reason: NodeJS.ErrnoException) => {
    if (reason.code !== "EADDRINUSE") throw reason;
    return serveFolder(folder);
  });
  return server.address;
}

async function main(): Promise<void> {
  const port = Number(process.env["PORT"] ?? USUAL_PORT);
  const address = await serve(resolve(__dirname, "../../dist/page"), port);
  const phone = await serve(resolve(__dirname, "../../dist/phone"), port === 0 ? 0 : port + 1);
  console.log(`Carrybook is at ${address} (Ctrl+C ends it).`);
  console.log(`The phone page is at ${phone}`);
  if (!process.argv.includes("--no-open")) openInBrowser(address);
}

void main();
