import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { temporaryFolder } from "@witnessmark/store/testing/temporary-folder";
import { describe, expect, it, onTestFinished } from "vitest";
import { rawRequest } from "../testing/raw-request.ts";
import { serve } from "../testing/serve.ts";

const SCRIPT = `console.log("${"walk ".repeat(400)}");`;
const SECRET = "nobody may read this";

/** An app of a few files, with a secret beside and a link to it within. */
function appFolder(): string {
  const folder = temporaryFolder();
  onTestFinished(folder.remove);
  const app = join(folder.path, "dist");
  mkdirSync(join(app, "assets"), { recursive: true });
  writeFileSync(join(folder.path, "secret.txt"), SECRET);
  symlinkSync(join(folder.path, "secret.txt"), join(app, "link.txt"));
  writeFileSync(join(app, ".env"), SECRET);
  writeFileSync(join(app, "index.html"), "<!doctype html><title>Witnessmark</title>");
  writeFileSync(join(app, "sw.js"), "self.skipWaiting;");
  writeFileSync(join(app, "manifest.webmanifest"), "{}");
  writeFileSync(join(app, "assets", "index-Bq3x9.js"), SCRIPT);
  writeFileSync(join(app, "assets", "icon-Aa1.png"), new Uint8Array(2_000));
  return app;
}

const PAGE = { headers: { accept: "text/html" } };

describe("the app's files", () => {
  it("are served with their type; what has a hash in its name for ever, the rest asked after each time", async () => {
    const { url } = await serve({ appDirectory: appFolder() });
    const index = await rawRequest(url, "/");
    expect(index.status).toBe(200);
    expect(index.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(index.headers["cache-control"]).toBe("no-cache");
    const script = await rawRequest(url, "/assets/index-Bq3x9.js");
    expect(script.body).toBe(SCRIPT);
    expect(script.headers["content-type"]).toBe("text/javascript; charset=utf-8");
    expect(script.headers["cache-control"]).toBe("public, max-age=31536000, immutable");
    expect((await rawRequest(url, "/sw.js")).headers["cache-control"]).toBe("no-cache");
    const manifest = await rawRequest(url, "/manifest.webmanifest");
    expect(manifest.headers["content-type"]).toBe("application/manifest+json; charset=utf-8");
  });

  it("come compressed to whoever can read that", async () => {
    const { url } = await serve({ appDirectory: appFolder() });
    const get = async (accepted: string) => {
      const response = await fetch(`${url}/assets/index-Bq3x9.js`, {
        headers: { "accept-encoding": accepted },
      });
      return { encoding: response.headers.get("content-encoding"), text: await response.text() };
    };
    expect(await get("gzip, br")).toEqual({ encoding: "br", text: SCRIPT });
    expect(await get("gzip")).toEqual({ encoding: "gzip", text: SCRIPT });
    expect(await get("br;q=0, gzip;q=0.5")).toEqual({ encoding: "gzip", text: SCRIPT });
    expect(await get("identity")).toEqual({ encoding: null, text: SCRIPT });
  });

  it("are the same bytes compressed, with their length and that it depends on the asker", async () => {
    const { readAppFiles } = await import("./app-files.ts");
    const file = readAppFiles(appFolder()).get("/assets/index-Bq3x9.js");
    if (file === undefined) throw new Error("Expected the script.");
    expect(brotliDecompressSync(await file.bytes("br")).toString()).toBe(SCRIPT);
    expect(gunzipSync(await file.bytes("gzip")).toString()).toBe(SCRIPT);
    const { url } = await serve({ appDirectory: appFolder() });
    const { headers } = await rawRequest(url, "/assets/index-Bq3x9.js", {
      headers: { "accept-encoding": "br" },
    });
    expect(headers["content-length"]).toBe(String((await file.bytes("br")).byteLength));
    expect(headers["vary"]).toBe("Accept-Encoding");
  });

  it("are not compressed again when they are already", async () => {
    const { url } = await serve({ appDirectory: appFolder() });
    const { headers } = await rawRequest(url, "/assets/icon-Aa1.png", {
      headers: { "accept-encoding": "br" },
    });
    expect(headers["content-encoding"]).toBeUndefined();
  });

  it("need not be sent again when they are the same", async () => {
    const { url } = await serve({ appDirectory: appFolder() });
    const first = await rawRequest(url, "/");
    const etag = String(first.headers["etag"]);
    const again = await rawRequest(url, "/", { headers: { "if-none-match": `"x", ${etag}` } });
    expect([again.status, again.body]).toEqual([304, ""]);
    expect((await rawRequest(url, "/", { headers: { "if-none-match": '"x"' } })).status).toBe(200);
  });

  it("have their page at every place within the app, and only there", async () => {
    const { url } = await serve({ appDirectory: appFolder() });
    for (const place of ["/ZZ-SKR", "/ZZ-SKR/walk", "/settings/"]) {
      const { status, body } = await rawRequest(url, place, PAGE);
      expect([place, status]).toEqual([place, 200]);
      expect(body).toContain("<title>Witnessmark</title>");
    }
    for (const none of ["/missing.js", "/assets/gone-1.js", "/api/none", "/a.b/c"]) {
      expect([none, (await rawRequest(url, none, PAGE)).status]).toEqual([none, 404]);
    }
    expect((await rawRequest(url, "/ZZ-SKR", { headers: { accept: "application/json" } })).status).toBe(404);
  });

  it.each([
    "/../secret.txt",
    "/assets/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/assets/..%2f..%2fsecret.txt",
    "/%2e%2e%2fsecret.txt",
    "/%252e%252e%252fsecret.txt",
    "/..%5csecret.txt",
    "/..\\secret.txt",
    "/%00",
    "/index.html%00.js",
    "/secret.txt%00.html",
    "//etc/passwd",
    "/etc/passwd",
    "//%2fetc%2fpasswd",
    "/file:///etc/passwd",
    "/link.txt",
    "/.env",
    "/%2eenv",
    "/assets",
    "/assets/",
    "/__proto__",
    "/constructor",
  ])("are all there is: %s reaches nothing", async (path) => {
    const { url } = await serve({ appDirectory: appFolder() });
    for (const headers of [{}, PAGE.headers]) {
      const { status, body } = await rawRequest(url, path, { headers });
      expect(body).not.toContain(SECRET);
      expect(body).not.toContain("root:");
      if (status === 200) expect(body).toContain("<title>Witnessmark</title>");
    }
  });

  it("are missed, in words, when the app was not built", async () => {
    const { url } = await serve({ appDirectory: "/nowhere/dist" });
    const { status, body } = await rawRequest(url, "/");
    expect(status).toBe(404);
    expect(JSON.parse(body).error.message).toContain("The app is not built");
  });
});
