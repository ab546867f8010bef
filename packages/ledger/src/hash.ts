import { canonical } from "./canonical.ts";
import type { LedgerEvent } from "./event.ts";

const encoder = new TextEncoder();

/**
 * The platform's Web Crypto, the same in browser and Node.
 *
 * @throws {Error} where there is none: a page from plain http on another host has none
 */
export function subtle(): SubtleCrypto {
  // `subtle` is typed as always there, but a browser leaves it out on a page that is not secure.
  const found: SubtleCrypto | undefined = globalThis.crypto?.subtle;
  if (found === undefined) {
    throw new Error(
      "Web Crypto: expected a secure page (https, or localhost), found none; open the page by https to keep records",
    );
  }
  return found;
}

/** SHA-256 as 64 lower-case hexadecimal figures; text is hashed as UTF-8. */
export async function sha256(data: string | Uint8Array<ArrayBuffer>): Promise<string> {
  const bytes = typeof data === "string" ? encoder.encode(data) : data;
  return hex(new Uint8Array(await subtle().digest("SHA-256", bytes)));
}

/**
 * The hash of an event: SHA-256 over RFC 8785 canonical JSON of all of it but `hash` and `signature`. Fields that
 * this version does not know are in it.
 *
 * @throws {Error} when the event has no canonical JSON (see `canonical`)
 */
export function hashOfEvent(event: UnsealedParts): Promise<string> {
  const { hash: _hash, signature: _signature, ...covered } = event;
  return sha256(canonical(covered));
}

type UnsealedParts = Omit<LedgerEvent, "hash" | "signature"> & {
  readonly hash?: string;
  readonly signature?: string;
};

const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));

function hex(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += HEX[byte];
  return text;
}
