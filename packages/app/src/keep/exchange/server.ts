import type { LedgerEvent } from "@witnessmark/ledger";
import * as z from "zod/mini";

/** The rules of the wire that this app speaks; see the server's protocol.ts. */
export const PROTOCOL_VERSION = 1;
export const PAGE_EVENTS = 500;

const JSON_PATIENCE_MS = 20_000;
const PHOTO_PATIENCE_MS = 120_000;

/** No answer, or none from a Witnessmark server: try again later. */
export class OutOfReach extends Error {
  override readonly name = "OutOfReach";
}

/** The server answered, and said no. */
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

const Count = z.int().check(z.gte(0));

const About = z.object({
  program: z.literal("witnessmark"),
  protocolVersion: z.int(),
  operator: z.string(),
  epoch: z.string(),
  now: z.string(),
});
const AircraftList = z.object({
  epoch: z.string(),
  aircraft: z.array(z.object({ aircraft: z.string(), head: Count })),
});
const PushAnswer = z.object({
  epoch: z.string(),
  head: Count,
  results: z.array(
    z.discriminatedUnion("outcome", [
      z.object({ id: z.string(), outcome: z.enum(["accepted", "duplicate"]), ledgerSeq: Count }),
      z.object({ id: z.string(), outcome: z.enum(["conflict", "quarantined"]), reason: z.string() }),
    ]),
  ),
});
const PullAnswer = z.object({
  epoch: z.string(),
  head: Count,
  events: z.array(z.object({ ledgerSeq: Count, event: z.unknown() })),
});
const DevicesAnswer = z.object({ epoch: z.string(), devices: z.record(z.string(), Count) });
const ErrorAnswer = z.object({ error: z.object({ code: z.string(), message: z.string() }) });

/** One message of the live stream. */
export const LiveMessage = z.object({ aircraft: z.string(), head: Count, epoch: z.string() });

export type About = z.infer<typeof About>;
export type PushAnswer = z.infer<typeof PushAnswer>;
export type PullAnswer = z.infer<typeof PullAnswer>;

/** The server, as the exchange speaks to it. Every call throws {OutOfReach} or {Refused} when it does not succeed. */
export interface Server {
  about(): Promise<About>;
  aircraft(): Promise<z.infer<typeof AircraftList>>;
  push(aircraft: string, events: readonly LedgerEvent[]): Promise<PushAnswer>;
  pull(aircraft: string, after: number): Promise<PullAnswer>;
  devices(aircraft: string): Promise<z.infer<typeof DevicesAnswer>>;
  hasPhoto(sha256: string): Promise<boolean>;
  putPhoto(sha256: string, bytes: ArrayBuffer, mediaType: string): Promise<void>;
  /** `null` when the server does not have it. */
  getPhoto(sha256: string): Promise<Blob | null>;
}

export function reachServer(fetch: typeof globalThis.fetch): Server {
  async function ask(path: string, init: RequestInit, patience_ms: number): Promise<Response> {
    let response: Response;
    try {
      response = await fetch(path, { ...init, cache: "no-store", signal: AbortSignal.timeout(patience_ms) });
    } catch (error) {
      throw new OutOfReach(`${path}: no answer`, { cause: error });
    }
    if (response.ok) return response;
    throw await refusal(path, response);
  }

  async function json<S extends z.ZodMiniType>(
    path: string,
    shape: S,
    init: RequestInit = {},
  ): Promise<z.infer<S>> {
    const response = await ask(path, init, JSON_PATIENCE_MS);
    let value: unknown;
    try {
      value = await response.json();
    } catch (error) {
      // A hotel's sign-in page answers everything with 200 and HTML.
      throw new OutOfReach(`${path}: expected JSON, received something else`, { cause: error });
    }
    const parsed = z.safeParse(shape, value);
    if (!parsed.success) {
      throw new OutOfReach(
        `${path}: expected an answer of a Witnessmark server (${z.prettifyError(parsed.error)})`,
      );
    }
    return parsed.data;
  }

  const at = (aircraft: string) => `/api/aircraft/${encodeURIComponent(aircraft)}`;

  return {
    about: () => json("/api/about", About),
    aircraft: () => json("/api/aircraft", AircraftList),
    push: (aircraft, events) =>
      json(`${at(aircraft)}/events`, PushAnswer, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ protocolVersion: PROTOCOL_VERSION, events }),
      }),
    pull: (aircraft, after) => json(`${at(aircraft)}/events?after=${after}&limit=${PAGE_EVENTS}`, PullAnswer),
    devices: (aircraft) => json(`${at(aircraft)}/devices`, DevicesAnswer),
    async hasPhoto(sha256) {
      return (await orMissing(ask(`/api/photos/${sha256}`, { method: "HEAD" }, JSON_PATIENCE_MS))) !== null;
    },
    async putPhoto(sha256, bytes, mediaType) {
      await ask(
        `/api/photos/${sha256}`,
        { method: "PUT", headers: { "content-type": mediaType }, body: bytes },
        PHOTO_PATIENCE_MS,
      );
    },
    async getPhoto(sha256) {
      const response = await orMissing(ask(`/api/photos/${sha256}`, {}, PHOTO_PATIENCE_MS));
      if (response === null) return null;
      try {
        return await response.blob();
      } catch (error) {
        throw new OutOfReach(`/api/photos/${sha256}: broken off`, { cause: error });
      }
    },
  };
}

async function refusal(path: string, response: Response): Promise<OutOfReach | Refused> {
  const { status } = response;
  // 507: it is there and has no room left, which somebody must be told.
  if ((status >= 500 && status !== 507) || status === 408 || status === 429) {
    return new OutOfReach(`${path}: answered ${status}`);
  }
  let value: unknown = null;
  try {
    value = await response.json();
  } catch {
    // HEAD has no body, and a proxy may answer in HTML: the status alone says enough.
  }
  const parsed = z.safeParse(ErrorAnswer, value);
  const { code, message } = parsed.success
    ? parsed.data.error
    : { code: `http-${status}`, message: `${path}: the server answered ${status}` };
  return new Refused(status, code, message);
}

async function orMissing(asked: Promise<Response>): Promise<Response | null> {
  try {
    return await asked;
  } catch (error) {
    if (error instanceof Refused && error.status === 404) return null;
    throw error;
  }
}
