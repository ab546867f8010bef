import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { rolldown } from "rolldown";

/** Each start after the first finds the program compiled. */
const COMPILED = join(tmpdir(), "witnessmark-compiled");
const ROOT = join(import.meta.dirname, "../../../..");

export interface Program {
  readonly file: string;
  remove(): void;
}

/**
 * The server's program and its six hundred modules in one file: to find and to link them takes most of a start, and it
 * is started some twenty times. What reads files of its own beside it, the store with its migrations, stays where it is.
 */
export async function inOneFile(): Promise<Program> {
  // below the root, so that it finds the packages there
  const folder = mkdtempSync(join(ROOT, "node_modules", ".child-server-"));
  const file = join(folder, "server.mjs");
  const all = await rolldown({
    input: join(import.meta.dirname, "child-server.ts"),
    platform: "node",
    external: [/^@witnessmark\/store/],
    logLevel: "silent",
  });
  await all.write({ file, format: "esm", codeSplitting: false });
  await all.close();
  return { file, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** A server in a process of its own. */
export interface Child {
  /** Opens the database and serves. @returns its address */
  go(): Promise<string>;
  /** SIGKILL: no chance to tidy up. */
  kill(): Promise<void>;
  /** SIGTERM. @returns the exit code */
  stop(): Promise<number | null>;
}

/** @param environment FILE or DATABASE_URL */
export function spawnServer({ file }: Program, environment: Readonly<Record<string, string>>): Child {
  const child = spawn(process.execPath, [file], {
    env: { ...process.env, NODE_COMPILE_CACHE: COMPILED, DATABASE_URL: "", ...environment },
    stdio: ["pipe", "pipe", "inherit"],
  });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const line = async () => {
    const { value, done } = await lines.next();
    if (done === true) throw new Error(`The server ended with ${child.exitCode} before it served.`);
    return String(value);
  };
  const loaded = line();
  loaded.catch(() => undefined); // told by `go`, if anyone calls it
  return {
    go: async () => {
      await loaded;
      child.stdin.write("go\n");
      return line();
    },
    kill: async () => {
      await end(child, "SIGKILL");
    },
    stop: () => end(child, "SIGTERM"),
  };
}

async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<number | null> {
  if (child.exitCode === null && child.signalCode === null) {
    const ended = once(child, "exit");
    child.kill(signal);
    await ended;
  }
  return child.exitCode;
}
