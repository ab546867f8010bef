import { sha256 } from "@witnessmark/ledger";
import type { Draft } from "../contract.ts";
import type { Locks } from "../locks.ts";
import type { PhotoRow } from "../storage/schema.ts";
import type { SmallPicture } from "./shrink.ts";

/** A picture as it is kept, and what its event says of it. */
export interface ReadyPhoto {
  readonly about: Omit<Extract<Draft, { readonly type: "photo.attached" }>["body"], "subject">;
  readonly row: PhotoRow;
}

/** Makes pictures small and hashes them, once for each file. */
export function makeReadyPhotos(
  locks: Locks,
  shrink: (file: Blob) => Promise<SmallPicture>,
): (file: Blob) => Promise<ReadyPhoto> {
  const small = new WeakMap<Blob, Promise<ReadyPhoto>>();

  async function make(file: Blob): Promise<ReadyPhoto> {
    const { blob, mediaType, width_px, height_px } = await locks.hold("shrink", () => shrink(file));
    const bytes = await blob.arrayBuffer();
    const hash = await sha256(new Uint8Array(bytes));
    const about = { sha256: hash, mediaType, size_B: bytes.byteLength, width_px, height_px };
    return { about, row: { sha256: hash, mediaType, bytes } };
  }

  return (file) => {
    const known = small.get(file);
    if (known !== undefined) return known;
    const made = make(file);
    small.set(file, made);
    made.catch(() => small.delete(file)); // the next try is told why
    return made;
  };
}
