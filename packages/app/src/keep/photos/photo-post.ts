import { OutOfReach, Refused, type Server } from "../exchange/server.ts";
import type { Locks } from "../locks.ts";
import type { Connection } from "../storage/open-database.ts";
import { sendPhotos } from "./photos.ts";

/** Sends photos beside the exchanges, so that a large picture never holds up an answer. */
export interface PhotoPost {
  go(): void;
  /** Resolves when nothing is under way. */
  settled(): Promise<void>;
  trouble(): string | null;
}

export function makePhotoPost(parts: {
  readonly connection: Connection;
  readonly server: Server;
  readonly locks: Locks;
  readonly report: (error: unknown) => void;
  readonly onChange: () => Promise<void>;
}): PhotoPost {
  let under: Promise<void> | null = null;
  let isWanted = false;
  let trouble: string | null = null;

  async function sendAll(): Promise<void> {
    while (isWanted) {
      isWanted = false;
      try {
        const { connection, server, onChange } = parts;
        trouble = await parts.locks.hold("photos", () => sendPhotos(connection, server, onChange));
      } catch (error) {
        // Out of reach: the next exchange that gets through starts it again.
        if (error instanceof Refused) trouble = `The server does not take photos now: ${error.message}`;
        else if (!(error instanceof OutOfReach)) parts.report(error);
      }
    }
    await parts.onChange();
    under = null;
    if (isWanted) under = sendAll(); // asked for while the last one was being counted
  }

  return {
    go() {
      isWanted = true;
      under ??= sendAll();
    },
    async settled() {
      await under;
    },
    trouble: () => trouble,
  };
}
