import { StoreError } from "./store-error.ts";

/** One row as a driver gives it. */
export type Row = Readonly<Record<string, unknown>>;

function damaged(column: string, expected: string, found: unknown): StoreError {
  return new StoreError(
    "damaged",
    `The database gave ${found === null ? "nothing" : typeof found} in column ${column} where ${expected} was expected; it was changed by something else or is damaged.`,
  );
}

/** @throws {StoreError} `damaged` when the column holds no text */
export function textOf(row: Row, column: string): string {
  const value = row[column];
  if (typeof value !== "string") throw damaged(column, "text", value);
  return value;
}

/** @throws {StoreError} `damaged` when the column holds no whole number that JavaScript can hold exactly */
export function wholeOf(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== "number" || !Number.isSafeInteger(value))
    throw damaged(column, "a whole number", value);
  return value;
}

/** @throws {StoreError} `damaged` when the column holds no bytes */
export function bytesOf(row: Row, column: string): Uint8Array<ArrayBuffer> {
  const value = row[column];
  if (!(value instanceof Uint8Array)) throw damaged(column, "bytes", value);
  return new Uint8Array(value);
}
