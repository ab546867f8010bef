// Loaded before each server of a run: what one has compressed, the next one reads. A server compresses all of the app
// when it starts, and a run starts some thirty of them with one and the same app. What it sends stays byte for byte
// what it would have made.
import { createHash } from "node:crypto";
import { readFile, renameSync, writeFileSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { join } from "node:path";
import zlib from "node:zlib";

type Done = (error: Error | null, made: Buffer) => void;
type Compress<Options> = (contents: Uint8Array, options: Options, done: Done) => void;

const folder = process.env["KEPT_COMPRESSED"];
if (folder === undefined || folder === "") {
  throw new Error("kept-compressed: expected the name of a folder in KEPT_COMPRESSED");
}

function kept<Options>(name: string, compress: Compress<Options>): Compress<Options> {
  return (contents, options, done) => {
    const hash = createHash("sha256").update(JSON.stringify(options)).update(contents).digest("hex");
    const file = join(folder ?? "", `${hash}.${name}`);
    readFile(file, (missing, found) => {
      if (missing === null) return done(null, found);
      compress(contents, options, (error, made) => {
        if (error === null) {
          // whole or not at all: another server may read at the same time
          const unfinished = `${file}.${process.pid}`;
          writeFileSync(unfinished, made);
          renameSync(unfinished, file);
        }
        done(error, made);
      });
    });
  };
}

Object.assign(zlib, {
  brotliCompress: kept("br", zlib.brotliCompress),
  gzip: kept("gz", zlib.gzip),
});
syncBuiltinESMExports();
