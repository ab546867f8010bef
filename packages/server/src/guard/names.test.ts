import { describe, expect, it } from "vitest";
import { namesOf } from "./names.ts";

describe("namesOf", () => {
  it("takes this machine's own names with the port", () => {
    const { hosts, origins } = namesOf(4460, []);
    expect([...hosts]).toEqual(["127.0.0.1:4460", "localhost:4460", "[::1]:4460"]);
    expect([...origins]).toEqual(["http://127.0.0.1:4460", "http://localhost:4460", "http://[::1]:4460"]);
  });

  it("takes them also without the port that browsers leave out", () => {
    expect(namesOf(80, []).hosts).toContain("localhost");
  });

  it("takes the origins that were allowed, with a port where they have one", () => {
    const { hosts, origins } = namesOf(4460, ["https://walk.example", "http://hangar.example:8080"]);
    expect(hosts).toContain("walk.example");
    expect(hosts).toContain("hangar.example:8080");
    expect(origins).toContain("https://walk.example");
  });

  it.each([
    "walk.example",
    "https://walk.example/",
    "https://walk.example/app",
    "*",
    "file:///",
    "https://WALK.example",
  ])("refuses %s, which is no origin", (origin) => {
    expect(() => namesOf(4460, [origin])).toThrow(
      `Expected an origin such as https://walk.example, without a path, found ${origin}.`,
    );
  });
});
