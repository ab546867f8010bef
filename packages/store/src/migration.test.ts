import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it, onTestFinished } from "vitest";
import { readMigrations } from "./migration.ts";
import { temporaryFolder } from "./testing/temporary-folder.ts";

function folderWith(files: Readonly<Record<string, string>>): URL {
  const { path, remove } = temporaryFolder();
  onTestFinished(remove);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(path, name), text);
  return pathToFileURL(`${path}/`);
}

describe("readMigrations", () => {
  it("reads them in order of their numbers", () => {
    const read = readMigrations(folderWith({ "002-then.sql": "b", "001-first.sql": "a" }));
    expect(read.map(({ number, name, sql }) => [number, name, sql])).toEqual([
      [1, "first", "a"],
      [2, "then", "b"],
    ]);
  });

  it("gives one text one checksum, whatever its line ends", () => {
    const [unix] = readMigrations(folderWith({ "001-a.sql": "create\ntable" }));
    const [other] = readMigrations(folderWith({ "001-a.sql": "create\r\ntable" }));
    const [changed] = readMigrations(folderWith({ "001-a.sql": "create table" }));
    expect(other?.sha256).toBe(unix?.sha256);
    expect(changed?.sha256).not.toBe(unix?.sha256);
  });

  it.each([
    [{ "001-a.sql": "", "003-c.sql": "" }, "Expected migration 2"],
    [{ "001-a.sql": "", "001-b.sql": "" }, "Expected migration 2"],
    [{ "first.sql": "" }, "Expected migrations named like 001-first.sql, found first.sql"],
    [{}, "Expected at least one migration"],
  ])("refuses the folder %o", (files, says) => {
    expect(() => readMigrations(folderWith(files))).toThrow(says);
  });
});
