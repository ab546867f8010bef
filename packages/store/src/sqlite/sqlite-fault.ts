import { StoreError } from "../store-error.ts";

/** Primary result codes of SQLite (sqlite.org/rescode.html), from the low byte of an extended code. */
const BUSY = 5;
const LOCKED = 6;
const READ_ONLY = 8;
const IO_ERROR = 10;
const CORRUPT = 11;
const FULL = 13;
const CANNOT_OPEN = 14;
const NOT_A_DATABASE = 26;

function primaryCode(error: unknown): number | null {
  if (!(error instanceof Error) || !("errcode" in error) || typeof error.errcode !== "number") return null;
  return error.errcode & 0xff;
}

export function isBusy(error: unknown): boolean {
  const code = primaryCode(error);
  return code === BUSY || code === LOCKED;
}

/** What SQLite said, in words a person can act on. What is no fault of the database passes unchanged. */
export function asStoreError(error: unknown, file: string): unknown {
  if (error instanceof StoreError) return error;
  switch (primaryCode(error)) {
    case FULL:
      return new StoreError(
        "full",
        `There is no room left for ${file}. Nothing of this was kept. Make room on the disk; then send again.`,
        error,
      );
    case BUSY:
    case LOCKED:
      return new StoreError(
        "busy",
        `Another program held ${file} for too long. Nothing of this was kept. Send again.`,
        error,
      );
    case READ_ONLY:
    case IO_ERROR:
    case CANNOT_OPEN:
      return new StoreError(
        "unreachable",
        `${file} cannot be read or written. Check that the folder exists, is on a healthy local disk, and belongs to the user who runs this program.`,
        error,
      );
    case CORRUPT:
    case NOT_A_DATABASE:
      return new StoreError(
        "damaged",
        `${file} is damaged, or is no database of this program. Put back a copy of it; the phones send again what the copy lacks.`,
        error,
      );
    default:
      return error;
  }
}
