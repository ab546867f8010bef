import { type ChildProcess, spawn } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

export const ROOT = resolve(import.meta.dirname, "../..");

export interface RunningServer {
  readonly url: string;
  readonly port: number;
  readonly dataDirectory: string;
  /** SIGKILL: no chance to tidy up. Its data stays. */
  kill(): Promise<void>;
  /** SIGTERM, as a person would stop it. Its data stays. */
  stop(): Promise<void>;
  /** Starts it again with the same data on the same port: to the phones it is the same server. */
  again(changed?: { readonly appDirectory?: string }): Promise<RunningServer>;
  /** Stops it when it still runs, and removes its data. */
  remove(): Promise<void>;
}

export interface ServerGiven {
  /** How much of the demo: its last days alone, unless two years are asked for with "1". */
  readonly past?: "short" | "1";
  readonly dataDirectory?: string;
  readonly port?: number;
  /** Another build of the app than the one that `npm start` serves. */
  readonly appDirectory?: string;
  /** How far its clock is ahead of the machine's. */
  readonly shift_ms?: number;
}

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((done) => {
    if (child.exitCode !== null || child.signalCode !== null) done();
    else child.once("exit", () => done());
  });

/**
 * Starts the program itself, as `npm start` does, on a free port and a database of its own with the demo in it. With
 * another build of the app, a small program of the harness starts the same server with that one.
 */
export async function startServer(given: ServerGiven = {}): Promise<RunningServer> {
  const dataDirectory = given.dataDirectory ?? newDataDirectory(given);
  const appDirectory = given.appDirectory ?? process.env["WITNESSMARK_APP_DIRECTORY"];
  if (appDirectory === undefined) return run(MAIN, { ...given, dataDirectory });
  // the demo is put in by the program itself
  if (!existsSync(join(dataDirectory, DATABASE))) await (await run(MAIN, { ...given, dataDirectory })).stop();
  return run(WITH_OTHER_APP, { ...given, dataDirectory, appDirectory });
}

/** Of its own; with the demo in it where a run has made that already, and otherwise the program will. */
function newDataDirectory({ past = "short", shift_ms }: ServerGiven): string {
  const directory = mkdtempSync(join(tmpdir(), "witnessmark-e2e-"));
  const made = process.env["DEMO_MADE"];
  // the demo ends some days before now, by the clock of the server that it is made for
  if (made !== undefined && past === "short" && shift_ms === undefined)
    cpSync(made, directory, { recursive: true });
  return directory;
}

const MAIN = "packages/server/src/main.ts";
const WITH_OTHER_APP = "e2e/harness/serve.ts";
/** The one file that everything is kept in. */
export const DATABASE = "witnessmark.sqlite";

async function run(
  program: string,
  given: ServerGiven & { readonly dataDirectory: string },
): Promise<RunningServer> {
  const { dataDirectory, appDirectory } = given;
  const before = [
    ...(given.shift_ms === undefined ? [] : ["shifted-clock.ts"]),
    ...(process.env["KEPT_COMPRESSED"] === undefined ? [] : ["kept-compressed.ts"]),
  ].flatMap((name) => ["--import", join(ROOT, "e2e/harness", name)]);
  const child = spawn(process.execPath, [...before, join(ROOT, program)], {
    cwd: ROOT,
    env: {
      ...process.env,
      PORT: String(given.port ?? 0),
      DATA_DIR: dataDirectory,
      DATABASE_URL: "",
      DEMO: given.past ?? "short",
      TZ: "Europe/London",
      ...(appDirectory === undefined ? {} : { APP_DIRECTORY: appDirectory }),
      ...(given.shift_ms === undefined ? {} : { CLOCK_SHIFT_ms: String(given.shift_ms) }),
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const url = await addressOf(child);
  const port = Number(new URL(url).port);
  const end = async (signal: "SIGKILL" | "SIGTERM") => {
    child.kill(signal);
    await ended(child);
  };
  return {
    url,
    port,
    dataDirectory,
    kill: () => end("SIGKILL"),
    stop: () => end("SIGTERM"),
    again: (changed = {}) => startServer({ ...given, ...changed, dataDirectory, port }),
    async remove() {
      await end("SIGTERM");
      rmSync(dataDirectory, { recursive: true, force: true });
    },
  };
}

/** The address that the program says once it listens. */
function addressOf(child: ChildProcess): Promise<string> {
  let said = "";
  return new Promise((done, fail) => {
    const hear = (part: Buffer) => {
      said += part.toString("utf8");
      const found = /http:\/\/[^\s/]+:\d+/.exec(said);
      if (found !== null) done(found[0]);
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    child.once("exit", (code) =>
      fail(new Error(`The server ended with ${code} before it said its address:\n${said}`)),
    );
  });
}
