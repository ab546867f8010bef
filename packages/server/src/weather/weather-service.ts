import { Refusal } from "../refusal.ts";

/** Where reports come from when nothing else is said: the text data service of the United States government. */
export const PUBLIC_SERVICE = "https://aviationweather.gov/api/data";

/** The reports of one field, as text; absent when the service has none. */
export interface FieldReports {
  readonly code: string;
  readonly metar?: string;
  readonly taf?: string;
}

export interface WeatherService {
  /** Host of the service, for a person to know whose word it is; `null` when none is asked. */
  readonly from: string | null;
  /** @throws {Refusal} when it is switched off, out of reach, or answers something else */
  reports(codes: readonly string[]): Promise<readonly FieldReports[]>;
}

const PATIENCE_ms = 10_000;
/** More than this is no list of reports. */
const LONGEST_letters = 200_000;

/**
 * @param url of a service that answers `/metar?ids=A,B&format=raw` and `/taf?…` with reports as plain text; `off` for
 *   none
 */
export function weatherService(
  url: string,
  fetch: typeof globalThis.fetch = globalThis.fetch,
): WeatherService {
  if (url === "off") {
    return {
      from: null,
      reports: () =>
        Promise.reject(
          new Refusal(
            503,
            "weather-off",
            "No weather service is set on this server. Paste the reports, or set WEATHER_URL.",
          ),
        ),
    };
  }
  const base = new URL(url);
  const text = async (kind: "metar" | "taf", codes: readonly string[]): Promise<string> => {
    const address = new URL(`${base.pathname.replace(/\/$/, "")}/${kind}`, base);
    address.search = new URLSearchParams({ ids: codes.join(","), format: "raw" }).toString();
    let answer: Response;
    try {
      answer = await fetch(address, {
        signal: AbortSignal.timeout(PATIENCE_ms),
        headers: { Accept: "text/plain" },
      });
    } catch (error) {
      throw new Refusal(
        503,
        "weather-out-of-reach",
        `${base.host} is out of reach from the server (${reasonOf(error)}). Paste the reports.`,
      );
    }
    if (answer.status === 204 || answer.status === 404) return "";
    if (!answer.ok) throw wrongAnswer(base.host, `it answered ${answer.status}`);
    const found = await answer.text();
    if (found.length > LONGEST_letters || /<(!doctype|html)\b/i.test(found)) {
      throw wrongAnswer(base.host, "it answered something that is no report");
    }
    return found;
  };
  return {
    from: base.host,
    async reports(codes) {
      const [metars, tafs] = await Promise.all([text("metar", codes), text("taf", codes)]);
      return codes.map((code) => {
        const metar = reportOf(metars, code);
        const taf = reportOf(tafs, code);
        return { code, ...(metar === undefined ? {} : { metar }), ...(taf === undefined ? {} : { taf }) };
      });
    },
  };
}

const reasonOf = (error: unknown): string =>
  error instanceof Error && error.name === "TimeoutError" ? "no answer in 10 seconds" : "no connection";

const wrongAnswer = (host: string, what: string) =>
  new Refusal(502, "weather-wrong-answer", `${host} gave no reports: ${what}. Paste the reports.`);

/** The first report of a field: a line that begins with its code, and the indented lines after it. */
function reportOf(text: string, code: string): string | undefined {
  const begins = new RegExp(`^(?:(?:METAR|SPECI|TAF)\\s+)?(?:(?:AMD|COR)\\s+)?${code}\\s`);
  const lines = text.split(/\r?\n/);
  const first = lines.findIndex((line) => begins.test(line));
  if (first < 0) return undefined;
  const next = lines.findIndex((line, index) => index > first && !/^\s+\S/.test(line));
  return lines
    .slice(first, next < 0 ? undefined : next)
    .join(" ")
    .replaceAll(/\s+/g, " ")
    .trim();
}
