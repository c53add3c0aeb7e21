/** A small static server for the built page, on this machine only. */
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer, type RequestListener } from "node:http";
import { createServer as createSecureServer, type ServerOptions } from "node:https";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const TYPES: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".png": "image/png",
  ".xml": "application/xml; charset=utf-8",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/** The file for a request path, or null where it would leave the folder. */
function fileFor(folder: string, path: string): string | null {
  const clean = normalize(decodeURIComponent(path));
  if (!clean.startsWith("/") || clean.includes("..")) return null;
  return join(folder, clean.endsWith("/") ? `${clean}index.html` : clean);
}

async function isFile(file: string): Promise<boolean> {
  return stat(file).then(
    (found) => found.isFile(),
    () => false,
  );
}

export interface StaticServer {
  readonly address: string;
  close(): Promise<void>;
}

/** Serves a folder on 127.0.0.1, over https where there is a certificate; port 0 takes any free one. */
export async function serveFolder(
  folder: string,
  port = 0,
  certificate?: ServerOptions,
): Promise<StaticServer> {
  const respond: RequestListener = (request, response) => {
    const path = new URL(request.url ?? "/", "http://localhost").pathname;
    void answer(path).catch(() => response.writeHead(400).end());

    async function answer(path: string): Promise<void> {
      const file = fileFor(folder, path);
      if (file === null || !(await isFile(file))) {
        response.writeHead(404, { "Content-Type": "text/plain" }).end("Not here.");
        return;
      }
      response.writeHead(200, {
        "Content-Type": TYPES[extname(file)] ?? "application/octet-stream",
        "Cache-Control": "no-cache",
      });
      createReadStream(file).pipe(response);
    }
  };
  const server = certificate ? createSecureServer(certificate, respond) : createServer(respond);
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  const { port: given } = server.address() as AddressInfo;
  return {
    address: `${certificate ? "https" : "http"}://localhost:${given}/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
