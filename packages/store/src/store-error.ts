/**
 * `full`: no room on the disk. `busy`: another process holds the database. `unreachable`: the database does not answer.
 * `newer`: it belongs to a newer program. `altered`: it was changed by something else. `damaged`: what came out is not
 * what was put in.
 */
export type StoreFault = "full" | "busy" | "unreachable" | "newer" | "altered" | "damaged";

/** The database refused. Nothing of the call that threw it was kept. */
export class StoreError extends Error {
  override readonly name = "StoreError";
  readonly code: StoreFault;
  constructor(code: StoreFault, message: string, cause?: unknown) {
    super(message, cause === undefined ? undefined : { cause });
    this.code = code;
  }
}
