import { StoreError } from "../store-error.ts";

function sqlState(error: unknown): string | null {
  if (!(error instanceof Error) || !("code" in error) || typeof error.code !== "string") return null;
  return error.code;
}

/** The statement asks for what this server does not have or does not allow (PostgreSQL, appendix A: classes 0A, 42). */
export function isNotOffered(error: unknown): boolean {
  const state = sqlState(error);
  return state !== null && /^(0A000|42501|42883|42P01)$/.test(state);
}

/** A row with the same key is there already (PostgreSQL, appendix A: unique_violation). */
export function isThereAlready(error: unknown): boolean {
  return sqlState(error) === "23505";
}

/**
 * What PostgreSQL or the way to it said, in words a person can act on. What is no fault of the database passes
 * unchanged.
 *
 * @source PostgreSQL documentation, appendix A: error codes
 */
export function asStoreError(error: unknown): unknown {
  if (error instanceof StoreError) return error;
  const state = sqlState(error);
  // 53100 disk_full; 54000 to 54023 program limits are ours to answer for, not the disk's.
  if (state === "53100") {
    return new StoreError(
      "full",
      "The database server has no room left. Nothing of this was kept. Make room there; then send again.",
      error,
    );
  }
  // 40001 serialisation failure, 40P01 deadlock, 55P03 lock not available, 57014 cancelled by a timeout.
  if (state !== null && /^(40001|40P01|55P03|57014)$/.test(state)) {
    return new StoreError("busy", "The database was held by others for too long. Send again.", error);
  }
  // Class 08 connection, 53300 too many connections, class 57P shutting down or starting up; and the system's own codes.
  // The driver's own errors carry no code.
  const lost =
    state === null
      ? error instanceof Error && /timeout exceeded|connection terminated|not queryable/i.test(error.message)
      : /^(08...|53300|57P..|25006|E[A-Z]+)$/.test(state);
  if (lost) {
    return new StoreError(
      "unreachable",
      `The database does not answer (${error instanceof Error ? error.message : String(error)}). Check that it runs and that DATABASE_URL is right; then send again.`,
      error,
    );
  }
  return error;
}
