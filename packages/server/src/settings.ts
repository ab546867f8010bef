import { join } from "node:path";
import { parseArgs } from "node:util";
import { PUBLIC_SERVICE } from "./weather/weather-service.ts";

/** How the server is run, from the command line or, where that says nothing, from the environment. */
export interface Settings {
  readonly port: number;
  readonly host: string;
  readonly databaseUrl: string | undefined;
  readonly file: string;
  readonly operator: string;
  readonly publicOrigins: readonly string[];
  readonly behindProxy: boolean;
  /** What of the demo goes into a new database: two years of it, its last days alone, or nothing. */
  readonly demo: "long" | "short" | "none";
  /** Base of the weather service, or `off`. */
  readonly weatherUrl: string;
}

export const USAGE = `Usage: npm start -- [options]

  --port N            PORT            where it listens (4460; 0 for any free port)
  --host NAME         HOST            127.0.0.1: this machine only
  --data FOLDER       DATA_DIR        where the database file is (./data)
  --database-url URL  DATABASE_URL    a PostgreSQL database instead of the file
  --operator NAME     OPERATOR        whose records these are (own)
  --public-origin URL PUBLIC_ORIGIN   how others reach it, such as https://walk.example; several with commas
  --behind-proxy      BEHIND_PROXY=1  a proxy of yours stands in front and writes X-Forwarded-For
  --weather-url URL   WEATHER_URL     where reports are fetched from; off for nowhere
                                      (${PUBLIC_SERVICE})
  --no-demo           DEMO=0          leaves the demo aircraft out of a new database
                      DEMO=short      puts them in without their two years of flights
  --help              this text
`;

/**
 * @param args the command line after the program's name
 * @returns `null` when only help was asked for
 * @throws {Error} with what was expected, when a setting does not read
 */
export function readSettings(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): Settings | null {
  const { values } = parseArgs({
    args: [...args],
    options: {
      port: { type: "string" },
      host: { type: "string" },
      data: { type: "string" },
      "database-url": { type: "string" },
      operator: { type: "string" },
      "public-origin": { type: "string" },
      "behind-proxy": { type: "boolean" },
      "no-demo": { type: "boolean" },
      "weather-url": { type: "string" },
      help: { type: "boolean" },
    },
  });
  if (values.help === true) return null;
  const setting = (flag: string | undefined, name: string) => {
    const value = flag ?? env[name];
    return value === undefined || value === "" ? undefined : value;
  };
  const operator = setting(values.operator, "OPERATOR") ?? "own";
  if (operator.length > 120) throw new Error("OPERATOR: expected a name of at most 120 letters.");
  return {
    port: readPort(setting(values.port, "PORT") ?? "4460"),
    host: setting(values.host, "HOST") ?? "127.0.0.1",
    databaseUrl: setting(values["database-url"], "DATABASE_URL"),
    file: join(setting(values.data, "DATA_DIR") ?? "data", "witnessmark.sqlite"),
    operator,
    publicOrigins: (setting(values["public-origin"], "PUBLIC_ORIGIN") ?? "")
      .split(",")
      .map((origin) => origin.trim())
      .filter((origin) => origin !== ""),
    behindProxy: values["behind-proxy"] ?? env["BEHIND_PROXY"] === "1",
    weatherUrl: readWeatherUrl(setting(values["weather-url"], "WEATHER_URL") ?? PUBLIC_SERVICE),
    demo: values["no-demo"] === true ? "none" : readDemo(setting(undefined, "DEMO") ?? "1"),
  };
}

function readWeatherUrl(text: string): string {
  if (text === "off" || (URL.canParse(text) && /^https?:/.test(text))) return text;
  throw new Error(`WEATHER_URL: expected an address that begins with https://, or off, found ${text}.`);
}

function readDemo(text: string): Settings["demo"] {
  if (text === "0") return "none";
  if (text === "short") return "short";
  if (text === "1") return "long";
  throw new Error(`DEMO: expected 0, 1 or short, found ${text}.`);
}

function readPort(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65_535) {
    throw new Error(`PORT: expected a whole number from 0 to 65535, found ${text}.`);
  }
  return port;
}
