import { describe, expect, it } from "vitest";
import { readCases } from "./case-file.ts";
import { pageOnDisk, validationPage } from "./list-cases.ts";

describe("docs/validation.md", () => {
  const filed = readCases(import.meta.dirname);

  it("is up to date: otherwise run node reference/list-cases.ts --write", () => {
    expect(pageOnDisk()).toBe(validationPage(filed));
  });

  it("lists every case", () => {
    const page = pageOnDisk();
    expect(filed.filter(({ case: one }) => !page.includes(`| ${one.id} |`))).toEqual([]);
  });
});
