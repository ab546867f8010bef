import { describe, expect, it } from "vitest";
import { StoreError } from "../store-error.ts";
import { asStoreError, isNotOffered } from "./postgres-fault.ts";

const withCode = (code: string, message = "it said") => Object.assign(new Error(message), { code });

describe("asStoreError", () => {
  it.each([
    // PostgreSQL documentation, appendix A
    ["53100", "full"],
    ["40P01", "busy"],
    ["55P03", "busy"],
    ["57P01", "unreachable"],
    ["08006", "unreachable"],
    ["53300", "unreachable"],
    ["25006", "unreachable"],
    // Node.js: errors of the system
    ["ECONNREFUSED", "unreachable"],
    ["ECONNRESET", "unreachable"],
  ])("turns %s into %s, with what to do", (code, is) => {
    const error = asStoreError(withCode(code));
    expect(error).toBeInstanceOf(StoreError);
    expect(error).toMatchObject({ code: is, message: expect.stringMatching(/(then )?send again\.$/i) });
  });

  it("knows the driver's own words for a lost connection", () => {
    const lost = ["Connection terminated unexpectedly", "timeout exceeded when trying to connect"];
    for (const words of lost) expect(asStoreError(new Error(words))).toMatchObject({ code: "unreachable" });
  });

  it("leaves every other error as it is", () => {
    for (const error of [withCode("23505"), withCode("42601"), new Error("x is not a function"), null]) {
      expect(asStoreError(error)).toBe(error);
    }
  });

  it("tells what a server does not offer from what fails", () => {
    expect(["42501", "42883", "0A000", "57P01"].map((code) => isNotOffered(withCode(code)))).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });
});
