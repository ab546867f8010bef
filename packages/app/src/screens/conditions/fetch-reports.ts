/** What asking for reports gave: the text as it came and who it is from, or why there is none. */
export type Fetched =
  | { readonly ok: true; readonly text: string; readonly from: string; readonly missing: readonly string[] }
  | { readonly ok: false; readonly why: string };

const PATIENCE_ms = 15_000;

const patiently: typeof globalThis.fetch = (input, init) =>
  globalThis.fetch(input, { ...init, signal: AbortSignal.timeout(PATIENCE_ms) });

/**
 * Asks our own server, which asks a weather service. Never throws for what a net or a server may do.
 *
 * @param codes of fields, four letters or figures each
 */
export async function fetchReports(codes: readonly string[]): Promise<Fetched> {
  if (!navigator.onLine)
    return { ok: false, why: "There is no net here. Paste the reports, or type what you were told." };
  try {
    // comes in a part of its own: nobody who pastes a report has to load it
    const { makeClient } = await import("@witnessmark/server/client");
    const { reports, from } = await makeClient("", patiently).weather(codes);
    const text = reports.flatMap(({ metar, taf }) => [metar, taf].filter((one) => one !== undefined));
    const missing = codes.filter(
      (code) => !reports.some((report) => report.code === code && (report.metar ?? report.taf) !== undefined),
    );
    return { ok: true, text: text.join("\n"), from, missing };
  } catch (error) {
    return { ok: false, why: reasonOf(error) };
  }
}

function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return `Nothing could be fetched: ${String(error)}.`;
  if (error.name === "Refused") return error.message;
  if (error.name === "NoAnswer" || error.name === "TimeoutError" || error.name === "TypeError")
    return "The server is out of reach. Paste the reports, or type what you were told.";
  return `Nothing could be fetched: ${error.message}.`;
}
