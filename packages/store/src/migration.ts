import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { StoreError } from "./store-error.ts";

/** One numbered change of the schema. Never edited after a release: the next change gets the next number. */
export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sql: string;
  readonly sha256: string;
}

/** A migration that a database says was applied to it. */
export interface Applied {
  readonly number: number;
  readonly name: string;
  readonly sha256: string;
}

const FILE = /^(\d{3})-([a-z0-9-]+)\.sql$/;

/**
 * The migrations of a folder, in order. Line ends count as one, so that a checkout with other line ends has the same
 * checksums.
 *
 * @throws {Error} when a file is misnamed, or a number is missing or doubled
 */
export function readMigrations(folder: URL): readonly Migration[] {
  const migrations = readdirSync(folder)
    .sort()
    .map((file) => {
      const [, number, name] = FILE.exec(file) ?? [];
      if (number === undefined || name === undefined) {
        throw new Error(`Expected migrations named like 001-first.sql, found ${file} in ${folder.pathname}.`);
      }
      const sql = readFileSync(new URL(file, folder), "utf8").replaceAll("\r\n", "\n");
      return { number: Number(number), name, sql, sha256: createHash("sha256").update(sql).digest("hex") };
    });
  for (const [index, { number }] of migrations.entries()) {
    if (number !== index + 1) {
      throw new Error(`Expected migration ${index + 1} in ${folder.pathname}, found ${number}.`);
    }
  }
  if (migrations.length === 0) throw new Error(`Expected at least one migration in ${folder.pathname}.`);
  return migrations;
}

/**
 * The migrations still to apply.
 *
 * @param where the database, for the message
 * @throws {StoreError} `newer` when a newer program has changed the database; `altered` when an applied migration is
 *   not the one this program knows
 */
export function pendingMigrations(
  known: readonly Migration[],
  applied: readonly Applied[],
  where: string,
): readonly Migration[] {
  const newest = Math.max(0, ...applied.map(({ number }) => number));
  if (newest > known.length) {
    throw new StoreError(
      "newer",
      `${where} was made ready by a newer Witnessmark (schema ${newest}; this one knows up to ${known.length}). Start the newer program, or put back a copy from before the update. Nothing was changed.`,
    );
  }
  for (const { number, name, sha256 } of applied) {
    const ours = known.find((migration) => migration.number === number);
    if (ours?.sha256 !== sha256) {
      throw new StoreError(
        "altered",
        `${where} says that migration ${number} (${name}) was applied, but with other contents than this program knows. It was changed by hand or by another build. Nothing was changed.`,
      );
    }
  }
  return known.filter(({ number }) => !applied.some((one) => one.number === number));
}
