import * as served from "@witnessmark/server/client";
import { checkNeeded, checkPage } from "./check-page.ts";
import { OutOfReach, PAGE_EVENTS, Refused, type Server } from "./server.ts";

const PATIENCE_MS = 20_000;
/** For a photo over a thin line, and for what is needed of a long ledger: a server looks through all of it first. */
const LONG_PATIENCE_MS = 120_000;

/** @param fetch such as the page's own */
export function reachServer(fetch: typeof globalThis.fetch): Server {
  const client = served.makeClient("", patiently(fetch));

  async function ask<T>(question: (client: served.Client) => Promise<T>): Promise<T> {
    try {
      return await question(client);
    } catch (error) {
      throw ours(error);
    }
  }

  return {
    about: () => ask((server) => server.about()),
    aircraft: () => ask((server) => server.aircraft()),
    push: (aircraft, events) => ask((server) => server.push(aircraft, events)),
    pull: (aircraft, place) =>
      ask(async (server) =>
        checkPage(aircraft, await server.pull(aircraft, { ...place, limit: PAGE_EVENTS })),
      ),
    needed: (aircraft, place) =>
      ask(async (server) => checkNeeded(aircraft, await server.needed(aircraft, place))).catch(
        (error: unknown) => {
          if (error instanceof Refused && error.status === 404) return null; // it is older than this question
          throw error;
        },
      ),
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
    const patience_ms = /\/(photos\/|needed\b)/.test(String(input)) ? LONG_PATIENCE_MS : PATIENCE_MS;
    return fetch(input, { ...init, signal: AbortSignal.timeout(patience_ms) });
  };

function ours(error: unknown): Error {
  if (error instanceof served.Refused) {
    const { status, code, message } = error;
    // 507: it is there and has no room left, which somebody must be told. The other five hundreds pass.
    const passes = (status >= 500 && status !== 507) || status === 408 || status === 429;
    return passes
      ? new OutOfReach(message, { cause: error })
      : new Refused(status, code, message, { cause: error });
  }
  return new OutOfReach(error instanceof Error ? error.message : String(error), { cause: error });
}
