import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const ROOT = resolve(import.meta.dirname, "../..");

export interface RunningServer {
  readonly url: string;
  readonly dataDirectory: string;
  /** SIGKILL: no chance to tidy up. */
  kill(): Promise<void>;
  /** SIGTERM, as a person would stop it. */
  stop(): Promise<void>;
}

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((done) => {
    if (child.exitCode !== null || child.signalCode !== null) done();
    else child.once("exit", () => done());
  });

/** Starts the program itself, as `npm start` does, on a free port and a database of its own with the demo in it. */
export async function startServer(
  given: { readonly dataDirectory?: string; readonly port?: number } = {},
): Promise<RunningServer> {
  const dataDirectory = given.dataDirectory ?? mkdtempSync(join(tmpdir(), "witnessmark-e2e-"));
  const child = spawn(process.execPath, [join(ROOT, "packages/server/src/main.ts")], {
    cwd: ROOT,
    env: { ...process.env, PORT: String(given.port ?? 0), DATA_DIR: dataDirectory, DATABASE_URL: "" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  const url = await new Promise<string>((done, fail) => {
    const hear = (part: Buffer) => {
      said += part.toString("utf8");
      const found = /http:\/\/[^\s/]+:\d+/.exec(said);
      if (found !== null) done(found[0]);
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.once("exit", (code) =>
      fail(new Error(`The server ended with ${code} before it said its address:\n${said}`)),
    );
  });
  return {
    url,
    dataDirectory,
    async kill() {
      child.kill("SIGKILL");
      await ended(child);
    },
    async stop() {
      child.kill("SIGTERM");
      await ended(child);
      if (given.dataDirectory === undefined) rmSync(dataDirectory, { recursive: true, force: true });
    },
  };
}
