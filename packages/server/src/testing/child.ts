import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";

/** Each start after the first finds the program compiled. */
const COMPILED = join(tmpdir(), "witnessmark-compiled");

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
export function spawnServer(environment: Readonly<Record<string, string>>): Child {
  const program = new URL("./child-server.ts", import.meta.url).pathname;
  const child = spawn(process.execPath, [program], {
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
