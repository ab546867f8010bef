import { fromBase64url, toBase64url } from "./base64url.ts";
import type { Bodies, EventType } from "./event.ts";
import { subtle } from "./hash.ts";

/** A device's public key as it stands on the record: the coordinates of a P-256 point, base64url. */
export type PublicKey = Extract<Bodies["device.introduced"]["key"], { kind: "ecdsa-p256" }>["publicKey"];

const CURVE = { name: "ECDSA", namedCurve: "P-256" } as const;
const SCHEME = { name: "ECDSA", hash: "SHA-256" } as const;

const SIGNED: ReadonlySet<string> = new Set<EventType>([
  "decision.signed",
  "discrepancy.closed",
  "discrepancy.relieved",
  "discrepancy.released",
  "timedItem.done",
]);

/** Whether an event of this type must carry a signature when its device has a key. */
export const mustBeSigned = (type: string): boolean => SIGNED.has(type);

/** ECDSA P-256 with SHA-256 over the 64 characters of an event's hash; base64url of r‖s. Differs at every call. */
export async function sign(key: CryptoKey, hash: string): Promise<string> {
  return toBase64url(new Uint8Array(await subtle().sign(SCHEME, key, new TextEncoder().encode(hash))));
}

/** Whether `signature` is one over `hash` by the holder of this key. `false` for a text that is no signature. */
export async function verify(key: CryptoKey, hash: string, signature: string): Promise<boolean> {
  const bytes = fromBase64url(signature);
  if (bytes === undefined || bytes.length !== 64) return false;
  return await subtle().verify(SCHEME, key, bytes, new TextEncoder().encode(hash));
}

/** @throws {DOMException} when the coordinates are no point of the curve */
export const importPublicKey = (key: PublicKey): Promise<CryptoKey> =>
  subtle().importKey("jwk", { kty: "EC", crv: "P-256", x: key.x, y: key.y, ext: true }, CURVE, true, [
    "verify",
  ]);

/** A key that signs, and what its device says of it when it introduces itself. */
export type DeviceKey =
  | {
      readonly privateKey: CryptoKey;
      readonly key: { readonly kind: "ecdsa-p256"; readonly publicKey: PublicKey };
    }
  | { readonly privateKey: null; readonly key: { readonly kind: "none"; readonly why: string } };

/**
 * A new key pair whose private half cannot leave this device, tried once. Where that fails, the answer says why, for
 * the record. Whoever stores the key reads it back and tries it again with `tryDeviceKey` before relying on it: some
 * browsers make keys that they cannot keep.
 */
export async function newDeviceKey(): Promise<DeviceKey> {
  try {
    const pair = await subtle().generateKey(CURVE, false, ["sign", "verify"]);
    const { x, y } = await subtle().exportKey("jwk", pair.publicKey);
    if (x === undefined || y === undefined) return noKey("the public key has no coordinates");
    return await tryDeviceKey(pair.privateKey, { x, y });
  } catch (error) {
    return noKey(error instanceof Error ? `${error.name}: ${error.message}` : String(error));
  }
}

/** Signs and verifies once, as the next reader of the ledger would. */
export async function tryDeviceKey(privateKey: CryptoKey, publicKey: PublicKey): Promise<DeviceKey> {
  try {
    const probe = "0".repeat(64);
    const good = await verify(await importPublicKey(publicKey), probe, await sign(privateKey, probe));
    return good
      ? { privateKey, key: { kind: "ecdsa-p256", publicKey } }
      : noKey("the key's own signature does not verify");
  } catch (error) {
    return noKey(error instanceof Error ? `${error.name}: ${error.message}` : String(error));
  }
}

const noKey = (why: string): DeviceKey => ({
  privateKey: null,
  key: { kind: "none", why: why.slice(0, 400) },
});
