import { basename } from "node:path";
import { type Pack, readPack } from "@witnessmark/pack";
import type { Io } from "./io.ts";
import { Refused } from "./refused.ts";

/** Whether a file is a book with its pictures, by its name. */
export const isPack = (path: string): boolean => path.toLowerCase().endsWith(".zip");

/** A book with its pictures from a file. @throws {Refused} `faults`, with all that is wrong with it */
export async function packOf(io: Io, path: string): Promise<Pack> {
  const result = await readPack(await io.readBytes(path));
  if (result.ok) return result.pack;
  const lines = result.faults.map(({ entry, says }) =>
    entry === "" ? `${basename(path)}: ${says}` : `${basename(path)}, ${entry}: ${says}`,
  );
  throw new Refused("faults", lines.join("\n"));
}
