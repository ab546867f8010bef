import type { LedgerEvent } from "@witnessmark/ledger";
import type {
  About,
  AircraftList,
  Client,
  DevicesAnswer,
  PullAnswer,
  PullPlace,
  PushAnswer,
} from "@witnessmark/server/client";

export type { About, PullAnswer, PullPlace, PushAnswer };

/** The rules of the wire that this app speaks; the server's protocol.ts says the same, and a test compares them. */
export const PROTOCOL_VERSION = 1;
export const PAGE_EVENTS = 500;

const PATIENCE_MS = 20_000;
const PHOTO_PATIENCE_MS = 120_000;

/** No answer, or none from a Witnessmark server, or one that asks to come back later. */
export class OutOfReach extends Error {
  override readonly name = "OutOfReach";
}

/** The server answered, and said no. */
export class Refused extends Error {
  override readonly name = "Refused";
  readonly status: number;
  readonly code: string;
  constructor(status: number, code: string, message: string, options?: ErrorOptions) {
    super(message, options);
    this.status = status;
    this.code = code;
  }
}

/** The server, as the exchange speaks to it. Every call throws {OutOfReach} or {Refused} when it does not succeed. */
export interface Server {
  about(): Promise<About>;
  aircraft(): Promise<AircraftList>;
  push(aircraft: string, events: readonly LedgerEvent[]): Promise<PushAnswer>;
  /** @throws {Refused} `another-history` when another event than `afterId` stands at `after` */
  pull(aircraft: string, place: PullPlace): Promise<PullAnswer>;
  devices(aircraft: string): Promise<DevicesAnswer>;
  hasPhoto(sha256: string): Promise<boolean>;
  putPhoto(sha256: string, bytes: ArrayBuffer): Promise<void>;
  /** `null` when the server does not have it. */
  getPhoto(sha256: string): Promise<Blob | null>;
}

/** @param fetch such as the page's own */
export function reachServer(fetch: typeof globalThis.fetch): Server {
  /** Comes in a part of its own: the first screen does not wait for it. */
  let client: Promise<Client> | null = null;

  async function ask<T>(question: (client: Client) => Promise<T>): Promise<T> {
    try {
      client ??= import("@witnessmark/server/client").then(({ makeClient }) =>
        makeClient("", patiently(fetch)),
      );
      return await question(await client);
    } catch (error) {
      throw ours(error);
    }
  }

  return {
    about: () => ask((server) => server.about()),
    aircraft: () => ask((server) => server.aircraft()),
    push: (aircraft, events) => ask((server) => server.push(aircraft, events)),
    pull: (aircraft, place) => ask((server) => server.pull(aircraft, { ...place, limit: PAGE_EVENTS })),
    devices: (aircraft) => ask((server) => server.devices(aircraft)),
    hasPhoto: (sha256) => ask((server) => server.hasPhoto(sha256)),
    async putPhoto(sha256, bytes) {
      await ask((server) => server.putPhoto(sha256, new Uint8Array(bytes)));
    },
    getPhoto: (sha256) => ask((server) => server.getPhoto(sha256)),
  };
}

/** A line that has gone dead says nothing: an answer that takes too long is none. */
const patiently =
  (fetch: typeof globalThis.fetch): typeof globalThis.fetch =>
  (input, init) => {
    const patience_ms = String(input).includes("/photos/") ? PHOTO_PATIENCE_MS : PATIENCE_MS;
    return fetch(input, { ...init, signal: AbortSignal.timeout(patience_ms) });
  };

/** The client's errors by name, so that they can be told apart without loading it. */
function ours(error: unknown): Error {
  if (isRefusal(error)) {
    const { status, code, message } = error;
    // 507: it is there and has no room left, which somebody must be told. The other five hundreds pass.
    const passes = (status >= 500 && status !== 507) || status === 408 || status === 429;
    return passes
      ? new OutOfReach(message, { cause: error })
      : new Refused(status, code, message, { cause: error });
  }
  return new OutOfReach(error instanceof Error ? error.message : String(error), { cause: error });
}

const isRefusal = (error: unknown): error is Error & { readonly status: number; readonly code: string } =>
  error instanceof Error && error.name === "Refused" && "status" in error && "code" in error;
