import { once } from "node:events";
import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { text as textOf } from "node:stream/consumers";
import { Refused } from "./refused.ts";

/** What a command may touch of the machine; tests give their own. */
export interface Io {
  out(line: string): void;
  err(line: string): void;
  /** The text of a file, or of standard input for `-`. @throws {Refused} with a way out */
  readText(path: string): Promise<string>;
  /** The bytes of a file. @throws {Refused} with a way out */
  readBytes(path: string): Promise<Uint8Array<ArrayBuffer>>;
  /** The names of the files in a folder. @throws {Refused} with a way out */
  namesIn(folder: string): Promise<readonly string[]>;
  /** Makes a folder, and those above it, where they are not there. @throws {Refused} with a way out */
  makeFolder(path: string): Promise<void>;
  /** @throws {Refused} with a way out */
  writeBytes(path: string, bytes: Uint8Array | string | AsyncIterable<string>): Promise<void>;
  now_ms(): number;
  /**
   * Until it is told that this is over, the first wish to stop (Ctrl-C, or the machine's own) does not end the program
   * at once: `stop` is called, and the command ends what it has begun. The second wish ends it.
   *
   * @returns tells that it is over
   */
  onStop(stop: () => void): () => void;
  readonly env: Readonly<Record<string, string | undefined>>;
}

const reasonOf = (error: unknown): string => {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (code === "ENOENT") return "there is no such file; check the name, or the folder you are in";
  if (code === "EISDIR") return "it is a folder; name a file in it";
  if (code === "EACCES" || code === "EPERM")
    return "this user may not read or write it; check its permissions";
  if (code === "ENOSPC") return "the disk is full; free some room and run the command again";
  return error instanceof Error ? error.message : String(error);
};

// a reader that has seen enough (`… | head`) closes the pipe; that is no fault of ours and no reason to shout
process.stdout.on("error", (error: Error & { code?: string }) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

const STOPS = ["SIGINT", "SIGTERM"] as const;

export const machineIo: Io = {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
  async readText(path) {
    try {
      return path === "-" ? await textOf(process.stdin) : await readFile(path, "utf8");
    } catch (error) {
      throw new Refused("unreadable", `${path} could not be read: ${reasonOf(error)}.`);
    }
  },
  async readBytes(path) {
    try {
      return new Uint8Array(await readFile(path));
    } catch (error) {
      throw new Refused("unreadable", `${path} could not be read: ${reasonOf(error)}.`);
    }
  },
  async namesIn(folder) {
    try {
      const entries = await readdir(folder, { withFileTypes: true });
      return entries.filter((entry) => entry.isFile()).map(({ name }) => name);
    } catch (error) {
      throw new Refused("unreadable", `${folder} could not be read: ${reasonOf(error)}.`);
    }
  },
  async makeFolder(path) {
    try {
      await mkdir(path, { recursive: true });
    } catch (error) {
      throw new Refused("unreadable", `${path} could not be made: ${reasonOf(error)}.`);
    }
  },
  async writeBytes(path, bytes) {
    try {
      if (path !== "-") await writeFile(path, bytes);
      else if (typeof bytes === "string" || bytes instanceof Uint8Array) process.stdout.write(bytes);
      else
        for await (const text of bytes) {
          if (!process.stdout.write(text)) await once(process.stdout, "drain");
        }
    } catch (error) {
      throw new Refused("unreadable", `${path} could not be written: ${reasonOf(error)}.`);
    }
  },
  now_ms: () => Date.now(),
  onStop(stop) {
    for (const signal of STOPS) process.once(signal, stop);
    return () => {
      for (const signal of STOPS) process.off(signal, stop);
    };
  },
  env: process.env,
};
