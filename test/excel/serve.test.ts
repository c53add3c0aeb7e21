/** What `npm run excel` stands on: the folder over https, with a certificate that needs no rights. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { get } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ownCertificate } from "../../src/tools/certificate";
import { serveFolder } from "../../src/tools/staticServer";

const folder = mkdtempSync(join(tmpdir(), "carrybook-serve-"));
afterAll(() => rmSync(folder, { recursive: true }));

test("a page is served under a certificate for localhost, which is kept", async () => {
  writeFileSync(join(folder, "addin.html"), "<p>here</p>");
  const certificate = await ownCertificate(join(folder, "own"));
  expect(await ownCertificate(join(folder, "own"))).toEqual(certificate);
  const server = await serveFolder(folder, 0, certificate);
  const page = await new Promise<string>((resolve, reject) => {
    get(`${server.address}addin.html`, { ca: certificate.ca }, (response) => {
      response.setEncoding("utf8");
      response.on("data", resolve);
    }).on("error", reject);
  });
  await server.close();
  expect(server.address).toMatch(/^https:\/\/localhost:/);
  expect(page).toBe("<p>here</p>");
});
