import type { PackFault } from "@witnessmark/pack";
import type { BookPicture } from "../../keep/contract.ts";

/** A book from a file, with the pictures that came with it. */
export type BookFileRead =
  | { readonly text: string; readonly name: string; readonly pictures: readonly BookPicture[] }
  | { readonly packFaults: readonly PackFault[] };

/** Every ZIP begins so, whatever it is called. */
const ZIP = [0x50, 0x4b] as const;

/** A text is read as it is; a ZIP only after its reader has come, which trusts nothing in it. */
export async function readBookFile(file: File): Promise<BookFileRead> {
  const start = new Uint8Array(await file.slice(0, ZIP.length).arrayBuffer());
  if (!ZIP.every((byte, i) => start[i] === byte)) {
    return { text: await file.text(), name: file.name, pictures: [] };
  }
  const { MOST_PACK_B, readPack } = await import("@witnessmark/pack");
  if (file.size > MOST_PACK_B) {
    const says = `The pack has ${Math.round(file.size / 1_000_000)} MB; at most ${MOST_PACK_B / 1_000_000} MB are taken.`;
    return { packFaults: [{ entry: "", says }] };
  }
  const result = await readPack(new Uint8Array(await file.arrayBuffer()));
  if (!result.ok) return { packFaults: result.faults };
  return {
    text: result.pack.text,
    name: `book.yaml in ${file.name}`,
    pictures: result.pack.photos.map(({ sha256, mediaType, bytes }) => ({
      sha256,
      mediaType,
      bytes: bytes.slice().buffer, // its own bytes, not a window on those of the pack
    })),
  };
}
