import { closeSync, constants, openSync, readFileSync, writeSync } from "node:fs";

/** How far a database had come when this was last written: never further than it had. */
export interface Mark {
  readonly epoch: string;
  readonly commits: number;
}

/**
 * A small file beside the database that says how far it had come. It is written after each commit, so it can lag but
 * never lead; a database that is behind its mark is an older copy. A database without its mark was brought from
 * somewhere else.
 */
export class HighWaterMark {
  readonly #path: string;
  #handle: number | null = null;

  constructor(database: string) {
    this.#path = `${database}-mark`;
  }

  /** `null` when there is none, or none that reads. */
  read(): Mark | null {
    let text: string;
    try {
      text = readFileSync(this.#path, "utf8");
    } catch (error) {
      if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
      throw error;
    }
    const [, epoch, commits] = /^(\S+) (\d+) *\n/.exec(text) ?? [];
    return epoch === undefined || commits === undefined ? null : { epoch, commits: Number(commits) };
  }

  /** One write of one length, so that another process never reads half of it. */
  write({ epoch, commits }: Mark): void {
    this.#handle ??= openSync(this.#path, constants.O_RDWR | constants.O_CREAT, 0o600);
    writeSync(this.#handle, `${epoch} ${commits}`.padEnd(63).concat("\n"), 0);
  }

  close(): void {
    if (this.#handle !== null) closeSync(this.#handle);
    this.#handle = null;
  }
}

/** Whether a database that says `now` is an older copy than, or another than, the one the mark was written for. */
export function wasPutBack(mark: Mark | null, now: Mark): boolean {
  return mark === null || mark.epoch !== now.epoch || mark.commits > now.commits;
}
