import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import { contentType, isCompressible } from "./content-type.ts";

export type Encoding = "br" | "gzip" | "identity";

export interface AppFile {
  readonly type: string;
  readonly etag: string;
  /** Its name holds a hash of its contents, so that it never changes. */
  readonly isImmutable: boolean;
  readonly encodings: readonly Encoding[];
  /** Compressed once, when first asked for or by `compressAll`. */
  bytes(encoding: Encoding): Promise<Uint8Array<ArrayBuffer>>;
}

/** Below this a compressed file is hardly smaller. */
const WORTH_COMPRESSING_B = 512;

/**
 * The app's files, read into memory once. What is not in the map is not served, whatever is asked for: no address from
 * outside is ever made into a path.
 *
 * @returns by the address that they are asked for with; empty when the folder is not there
 */
export function readAppFiles(folder: string): ReadonlyMap<string, AppFile> {
  const files = new Map<string, AppFile>();
  if (!existsSync(folder)) return files;
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    // A link could lead out of the folder, and a hidden file is none of the app's.
    if (!entry.isFile() || entry.name.startsWith(".")) continue;
    const path = join(entry.parentPath, entry.name);
    const address = `/${relative(folder, path).split(sep).map(encodeURIComponent).join("/")}`;
    files.set(address, appFile(address, new Uint8Array(readFileSync(path))));
  }
  return files;
}

/** Compresses everything beforehand, off the main thread, so that the first visitor does not wait for it. */
export async function compressAll(files: ReadonlyMap<string, AppFile>): Promise<void> {
  for (const file of files.values()) {
    for (const encoding of file.encodings) await file.bytes(encoding);
  }
}

function appFile(address: string, contents: Uint8Array<ArrayBuffer>): AppFile {
  const type = contentType(address);
  const compressible = isCompressible(type) && contents.byteLength >= WORTH_COMPRESSING_B;
  const made = new Map<Encoding, Promise<Uint8Array<ArrayBuffer>>>([["identity", Promise.resolve(contents)]]);
  return {
    type,
    // Weak: one for all encodings of the same contents.
    etag: `W/"${createHash("sha256").update(contents).digest("base64url").slice(0, 22)}"`,
    isImmutable: address.startsWith("/assets/"),
    encodings: compressible ? ["br", "gzip", "identity"] : ["identity"],
    bytes: (encoding) => {
      let bytes = made.get(encoding);
      if (bytes === undefined) {
        bytes = compress(contents, encoding);
        made.set(encoding, bytes);
      }
      return bytes;
    },
  };
}

async function compress(contents: Uint8Array, encoding: Encoding): Promise<Uint8Array<ArrayBuffer>> {
  const compressed =
    encoding === "br"
      ? await promisify(brotliCompress)(contents, {
          params: {
            // 11 takes ten times as long for some hundredths less.
            [constants.BROTLI_PARAM_QUALITY]: 9,
            [constants.BROTLI_PARAM_SIZE_HINT]: contents.byteLength,
          },
        })
      : await promisify(gzip)(contents, { level: 9 });
  return new Uint8Array(compressed);
}
