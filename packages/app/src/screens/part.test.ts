import { createElement, Suspense } from "react";
import { renderToString } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { partOf } from "./part.ts";

const Words = ({ words }: { readonly words: string }) => words;
const shown = (part: ReturnType<typeof partOf<{ readonly words: string }>>) =>
  renderToString(
    createElement(Suspense, { fallback: "waiting" }, createElement(part.Screen, { words: "the screen" })),
  );

describe("a part of the app", () => {
  it("is waited for when it is not there yet", () => {
    expect(shown(partOf(async () => Words))).toContain("waiting");
  });

  it("is drawn at once when it was fetched before", async () => {
    const part = partOf(async () => Words);
    await part.fetch();
    expect(shown(part)).toContain("the screen");
  });

  it("is asked for again after it could not be fetched", async () => {
    let times = 0;
    const part = partOf(async () => {
      times += 1;
      if (times === 1) throw new Error("no net");
      return Words;
    });
    await expect(part.fetch()).rejects.toThrow("no net");
    await part.fetch();
    expect(shown(part)).toContain("the screen");
  });
});
