/** The certificate under which this machine serves the add-in to Excel. */
import { existsSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";

export interface Certificate {
  readonly ca: Buffer;
  readonly cert: Buffer;
  readonly key: Buffer;
}

const MS_PER_DAY = 86_400_000;
/** Certificates are made for 30 days; a day early they are made anew. */
const MOST_DAYS = 29;
const NAMES = ["ca.crt", "localhost.crt", "localhost.key"] as const;

/** One that Windows or macOS trusts from then on; it asks before it installs it. */
export async function trustedCertificate(): Promise<Certificate> {
  const { getHttpsServerOptions } = await import("office-addin-dev-certs");
  return getHttpsServerOptions();
}

/**
 * One that is kept in a folder of ours, and that no system trusts: the browser asks once. So
 * nothing has to be installed with the rights of an administrator.
 */
export async function ownCertificate(folder: string): Promise<Certificate> {
  const [ca, cert, key] = NAMES.map((name) => join(folder, name)) as [string, string, string];
  const isFresh =
    [ca, cert, key].every((file) => existsSync(file)) &&
    Date.now() - statSync(cert).mtimeMs < MOST_DAYS * MS_PER_DAY;
  if (!isFresh) {
    const { generateCertificates } = await import("office-addin-dev-certs");
    await generateCertificates(ca, cert, key);
  }
  return { ca: readFileSync(ca), cert: readFileSync(cert), key: readFileSync(key) };
}
