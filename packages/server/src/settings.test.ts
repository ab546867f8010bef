import { describe, expect, it } from "vitest";
import { readSettings } from "./settings.ts";

describe("readSettings", () => {
  it("serves this machine only, from one file, when nothing is said", () => {
    expect(readSettings([], {})).toEqual({
      port: 4460,
      host: "127.0.0.1",
      databaseUrl: undefined,
      file: "data/witnessmark.sqlite",
      operator: "own",
      publicOrigins: [],
      behindProxy: false,
      demo: "long",
      weatherUrl: "https://aviationweather.gov/api/data",
    });
  });

  it("takes the environment, and an empty setting as none", () => {
    const env = {
      PORT: "0",
      HOST: "0.0.0.0",
      DATABASE_URL: "postgres://db/walk",
      DATA_DIR: "/var/lib/walk",
      OPERATOR: "island",
      PUBLIC_ORIGIN: "https://a.example, https://b.example",
      BEHIND_PROXY: "1",
      DEMO: "0",
      WEATHER_URL: "off",
    };
    expect(readSettings([], env)).toEqual({
      port: 0,
      host: "0.0.0.0",
      databaseUrl: "postgres://db/walk",
      file: "/var/lib/walk/witnessmark.sqlite",
      operator: "island",
      publicOrigins: ["https://a.example", "https://b.example"],
      behindProxy: true,
      demo: "none",
      weatherUrl: "off",
    });
    expect(readSettings([], { PORT: "", DATABASE_URL: "" })).toMatchObject({
      port: 4460,
      databaseUrl: undefined,
    });
  });

  it("lets the command line win", () => {
    expect(readSettings(["--port", "5000", "--no-demo"], { PORT: "6000", DEMO: "short" })).toMatchObject({
      port: 5000,
      demo: "none",
    });
  });

  it.each(["80a", "-1", "70000", "4.5"])("refuses the port %s in words", (port) => {
    expect(() => readSettings([], { PORT: port })).toThrow(
      `PORT: expected a whole number from 0 to 65535, found ${port}.`,
    );
  });

  it.each(["weather", "file:///etc/passwd", "ftp://a.example"])(
    "refuses the weather service %s in words",
    (url) => {
      expect(() => readSettings(["--weather-url", url], {})).toThrow(
        `WEATHER_URL: expected an address that begins with https://, or off, found ${url}.`,
      );
    },
  );

  it("refuses what it does not know, and gives help when asked", () => {
    expect(() => readSettings(["--prot", "1"], {})).toThrow(/--prot/);
    expect(readSettings(["--help"], {})).toBeNull();
  });
});
