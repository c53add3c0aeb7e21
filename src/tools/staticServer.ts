/** Serves a built folder to this machine only, as a host on the web should serve it. */
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import { createServer as createSecureServer, type ServerOptions } from "node:https";
import type { AddressInfo } from "node:net";
import compression from "compression";
import serveStatic from "serve-static";

/** Names of this machine. Another name in a request is a page elsewhere that points its name here. */
const OWN_HOST = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i;
/** A name that changes with its content never needs to be asked for again. */
const HASHED_NAME = /-[A-Z0-9]{8}\.\w+$/;
const YEAR_S = 31_536_000;

/** Excel on the web asks for functions.json from its own origin, whatever that is. */
const HEADERS = {
  "Access-Control-Allow-Origin": "*",
  "X-Content-Type-Options": "nosniff",
} as const;

export interface StaticServer {
  readonly address: string;
  close(): Promise<void>;
}

function refuse(response: ServerResponse, status: number, words: string): void {
  if (response.headersSent) return void response.destroy();
  response.statusCode = status;
  response.setHeader("Content-Type", "text/plain; charset=utf-8");
  response.end(words);
}

/** Answers requests for the files of a folder, and never throws. */
export function answerFrom(
  folder: string,
): (request: IncomingMessage, response: ServerResponse) => void {
  const compress = compression();
  const files = serveStatic(folder, {
    cacheControl: false,
    setHeaders: (response, path) =>
      response.setHeader(
        "Cache-Control",
        HASHED_NAME.test(path) ? `public, max-age=${YEAR_S}, immutable` : "no-cache",
      ),
  });
  return (request, response) => {
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    if (!OWN_HOST.test(request.headers.host ?? ""))
      return refuse(response, 421, "This machine answers to its own name only.");
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.setHeader("Allow", "GET, HEAD");
      return refuse(response, 405, "Only GET and HEAD are answered.");
    }
    if (!request.url?.startsWith("/")) return refuse(response, 400, "That is no path.");
    const fail = (error?: unknown): void => {
      const { status = 404 } = (error ?? {}) as { status?: number };
      refuse(response, status, status === 404 ? "Not here." : "That cannot be answered.");
    };
    try {
      // Both take the plain request and response of Node, whatever their types say.
      const [asked, answer] = [request as never, response as never];
      compress(asked, answer, () => files(asked, answer, fail));
    } catch {
      refuse(response, 400, "That cannot be answered.");
    }
  };
}

/**
 * Serves a folder on 127.0.0.1, over https where there is a certificate; port 0 takes any free one.
 *
 * @example const { address, close } = await serveFolder("dist")
 */
export async function serveFolder(
  folder: string,
  port = 0,
  certificate?: ServerOptions,
): Promise<StaticServer> {
  const answer = answerFrom(folder);
  const server = certificate ? createSecureServer(certificate, answer) : createServer(answer);
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
