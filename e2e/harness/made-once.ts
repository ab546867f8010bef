import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT, startServer } from "./server.ts";

let folder: string | null = null;

/**
 * Made once for a run of the browser tests, before the first of them: the database with the demo in it, as the program
 * itself makes it when it is started with none, and the app's files compressed. Every scene begins with a copy.
 */
export async function setup(): Promise<void> {
  folder = mkdtempSync(join(tmpdir(), "witnessmark-once-"));
  const compressed = join(folder, "compressed");
  mkdirSync(compressed);
  process.env["KEPT_COMPRESSED"] = compressed;
  const first = await startServer();
  await askForAll(first.url);
  await first.stop();
  const demo = join(folder, "demo");
  cpSync(first.dataDirectory, demo, { recursive: true });
  await first.remove();
  process.env["DEMO_MADE"] = demo;
}

/** Takes it away again after the last of them. */
export function teardown(): void {
  if (folder !== null) rmSync(folder, { recursive: true, force: true });
}

/** Asks for every file of the app in every form, so that each is compressed. */
async function askForAll(url: string): Promise<void> {
  const files = readdirSync(
    join(process.env["WITNESSMARK_APP_DIRECTORY"] ?? join(ROOT, "packages/app/dist"), "assets"),
  );
  if (files.length === 0) throw new Error("made-once: expected the app to be built");
  await Promise.all(
    files.flatMap((file) =>
      ["br", "gzip"].map(async (form) => {
        const answer = await fetch(`${url}/assets/${file}`, {
          method: "HEAD",
          headers: { "accept-encoding": form },
        });
        if (!answer.ok) throw new Error(`made-once: expected ${file} of the app, received ${answer.status}`);
      }),
    ),
  );
}
