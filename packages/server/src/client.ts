import type { LedgerEvent } from "@witnessmark/ledger";
import { hc } from "hono/client";
import type { z } from "zod";
import type { Api } from "./api.ts";
import { readLive } from "./live-reader.ts";
import {
  type About,
  type AircraftList,
  type DevicesAnswer,
  type LiveMessage,
  type NeededAnswer,
  PROTOCOL_VERSION,
  type PullAnswer,
  type PushAnswer,
  type QuarantineAnswer,
  type WeatherAnswer,
} from "./protocol.ts";
import {
  AboutSchema,
  AircraftListSchema,
  DevicesAnswerSchema,
  ErrorAnswerSchema,
  NeededAnswerSchema,
  PullAnswerSchema,
  PushAnswerSchema,
  QuarantineAnswerSchema,
  WeatherAnswerSchema,
} from "./schemas.ts";

export type * from "./protocol.ts";
export { PAGE_EVENTS, PROTOCOL_VERSION } from "./protocol.ts";

/** Nobody answered, or something that is not this program: a sign-in page of a hotel answers everything. */
export class NoAnswer extends Error {
  override readonly name = "NoAnswer";
}

/** The server answered, and refused. */
export class Refused extends Error {
  override readonly name = "Refused";
  readonly status: number;
  readonly code: string;
  constructor(status: number, code: string, message: string) {
    super(message);
    this.status = status;
    this.code = code;
  }
}

/** Where a reader stands in an aircraft's ledger. */
export interface PullPlace {
  readonly after: number;
  /** The id of the event there; with it the server sees when another history is in its place. */
  readonly afterId?: string;
  readonly limit?: number;
}

/** How far a phone has come that asks for what it needs of a long ledger; `upTo` is left out in the first question. */
export interface NeededPlace {
  readonly after: number;
  readonly upTo?: number;
}

/** The server, call by call. Each throws {NoAnswer} or {Refused} when it does not succeed. */
export interface Client {
  about(): Promise<About>;
  aircraft(): Promise<AircraftList>;
  push(aircraft: string, events: readonly LedgerEvent[]): Promise<PushAnswer>;
  pull(aircraft: string, place: PullPlace): Promise<PullAnswer>;
  needed(aircraft: string, place: NeededPlace): Promise<NeededAnswer>;
  devices(aircraft: string): Promise<DevicesAnswer>;
  quarantine(aircraft: string): Promise<QuarantineAnswer>;
  putPhoto(sha256: string, bytes: Uint8Array<ArrayBuffer>): Promise<"stored" | "present">;
  hasPhoto(sha256: string): Promise<boolean>;
  /** `null` when the server does not have it. */
  getPhoto(sha256: string): Promise<Blob | null>;
  ledgerFile(aircraft: string): Promise<string>;
  /** The record of a period as a PDF; a day that is left out is the first on record, or today. */
  recordPdf(aircraft: string, period: { readonly from?: string; readonly to?: string }): Promise<Blob>;
  /** The latest reports of fields, from the weather service that the server asks. */
  weather(codes: readonly string[]): Promise<WeatherAnswer>;
  /** Hears of new events until the line breaks or `signal` ends it. @throws {NoAnswer} when the line breaks */
  live(onHead: (message: LiveMessage) => void, signal: AbortSignal): Promise<void>;
}

/**
 * @param baseUrl such as `http://127.0.0.1:4460`, or "" for the page's own server
 * @param fetch for tests, and for what has to be put around every request
 */
export function makeClient(baseUrl: string, fetch: typeof globalThis.fetch = globalThis.fetch): Client {
  const api = hc<Api>(`${baseUrl}/api`, { fetch });
  const at = (aircraft: string) => ({ param: { aircraft } });

  return {
    about: () => read(api.about.$get(), AboutSchema),
    aircraft: () => read(api.aircraft.$get(), AircraftListSchema),
    push: (aircraft, events) =>
      read(
        api.aircraft[":aircraft"].events.$post({
          ...at(aircraft),
          json: { protocolVersion: PROTOCOL_VERSION, events: [...events] },
        }),
        PushAnswerSchema,
      ),
    pull: (aircraft, { after, afterId, limit }) =>
      read(
        api.aircraft[":aircraft"].events.$get({
          ...at(aircraft),
          query: {
            after: String(after),
            ...(limit === undefined ? {} : { limit: String(limit) }),
            ...(afterId === undefined ? {} : { afterId }),
          },
        }),
        PullAnswerSchema,
      ),
    needed: (aircraft, { after, upTo }) =>
      read(
        api.aircraft[":aircraft"].needed.$get({
          ...at(aircraft),
          query: { after: String(after), ...(upTo === undefined ? {} : { upTo: String(upTo) }) },
        }),
        NeededAnswerSchema,
      ),
    devices: (aircraft) => read(api.aircraft[":aircraft"].devices.$get(at(aircraft)), DevicesAnswerSchema),
    quarantine: (aircraft) =>
      read(api.aircraft[":aircraft"].quarantine.$get({ ...at(aircraft), query: {} }), QuarantineAnswerSchema),
    putPhoto: async (sha256, bytes) => {
      const answer = await answered(fetch(`${baseUrl}/api/photos/${sha256}`, { method: "PUT", body: bytes }));
      return answer.status === 201 ? "stored" : "present";
    },
    hasPhoto: async (sha256) =>
      (await orMissing(answered(fetch(`${baseUrl}/api/photos/${sha256}`, { method: "HEAD" })))) !== null,
    getPhoto: async (sha256) => {
      const answer = await orMissing(answered(api.photos[":sha256"].$get({ param: { sha256 } })));
      return answer === null ? null : answer.blob();
    },
    ledgerFile: async (aircraft) =>
      (await answered(api.aircraft[":aircraft"]["ledger.jsonl"].$get(at(aircraft)))).text(),
    recordPdf: async (aircraft, period) =>
      (
        await answered(api.aircraft[":aircraft"]["record.pdf"].$get({ ...at(aircraft), query: period }))
      ).blob(),
    weather: (codes) => read(api.weather.$get({ query: { codes: codes.join(",") } }), WeatherAnswerSchema),
    live: async (onHead, signal) => {
      const answer = await answered(fetch(`${baseUrl}/api/live`, { signal }));
      try {
        await readLive(answer, onHead);
      } catch (error) {
        if (signal.aborted) return;
        throw new NoAnswer("The live line broke.", { cause: error });
      }
      if (!signal.aborted) throw new NoAnswer("The server ended the live line.");
    },
  };
}

/** As much of a response as is used: the typed client's and the browser's own both fit. */
type Answer = Pick<Response, "ok" | "status" | "json" | "text" | "blob" | "body">;

async function answered(asked: Promise<Answer>): Promise<Answer> {
  let answer: Answer;
  try {
    answer = await asked;
  } catch (error) {
    throw new NoAnswer("The server is out of reach.", { cause: error });
  }
  if (answer.ok) return answer;
  const said = ErrorAnswerSchema.safeParse(await jsonOf(answer));
  if (!said.success) {
    // HEAD has no body: its status alone tells.
    throw answer.status === 404
      ? new Refused(404, "nothing-here", "There is nothing at this address.")
      : new NoAnswer(`Something answered ${answer.status} that is not a Witnessmark server.`);
  }
  throw new Refused(answer.status, said.data.error.code, said.data.error.message);
}

async function read<S extends z.ZodType>(asked: Promise<Answer>, schema: S): Promise<z.infer<S>> {
  const parsed = schema.safeParse(await jsonOf(await answered(asked)));
  if (!parsed.success)
    throw new NoAnswer("Something answered that is not a Witnessmark server of this version.");
  return parsed.data;
}

async function jsonOf(answer: Answer): Promise<unknown> {
  try {
    return await answer.json();
  } catch {
    // Not JSON: whoever answered is not this program, which the caller says.
    return null;
  }
}

async function orMissing(asked: Promise<Answer>): Promise<Answer | null> {
  try {
    return await asked;
  } catch (error) {
    if (error instanceof Refused && error.status === 404) return null;
    throw error;
  }
}
