import { basename, join } from "node:path";
import { faultSentence, readBook } from "@witnessmark/book";
import { type PackedPhoto, photosOf, pictureType, sha256Of, writePack } from "@witnessmark/pack";
import { type Command, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import type { Io } from "../io.ts";
import { Refused } from "../refused.ts";

export const bookPackCommand: Command = {
  words: ["book", "pack"],
  usage: "book pack <file.yaml> [--photos folder] [--output file.zip]",
  about: "Puts a book and the pictures that its checks name into one ZIP file.",
  options: { photos: { type: "string" }, output: { type: "string" } },
  async run(given) {
    const { io } = given;
    const path = oneWord(given, bookPackCommand, "a book");
    const text = await io.readText(path);
    const read = await readBook(text, basename(path));
    if (!read.ok) throw new Refused("faults", read.faults.map(faultSentence).join("\n"));
    const named = photosOf(read.book);
    const folder = textOption(given, "photos");
    const found = folder === undefined ? [] : await picturesIn(io, folder, new Set(named));
    const photos = named.map((sha256) => found.find((photo) => photo.sha256 === sha256));
    const missing = named.filter((_, i) => photos[i] === undefined);
    if (missing.length > 0) {
      throw new Refused(
        "faults",
        `The book names pictures that are not there: ${missing.join(", ")}.\nName the folder they are in with --photos, or take them out of the book.`,
      );
    }
    const output = textOption(given, "output") ?? path.replace(/\.ya?ml$/i, "").concat(".zip");
    const taken = photos.filter((photo) => photo !== undefined);
    try {
      await io.writeBytes(output, await writePack({ text, photos: taken }));
    } catch (error) {
      if (error instanceof RangeError) throw new Refused("faults", error.message);
      throw error;
    }
    io.out(`${output}: the book and ${taken.length === 1 ? "1 picture" : `${taken.length} pictures`}.`);
    return EXIT.done;
  },
};

/** The pictures of a folder, whatever they are called; each one's hash is told, for the check that shall name it. */
async function picturesIn(
  io: Io,
  folder: string,
  named: ReadonlySet<string>,
): Promise<readonly PackedPhoto[]> {
  const photos: PackedPhoto[] = [];
  for (const name of await io.namesIn(folder)) {
    const bytes = await io.readBytes(join(folder, name));
    const mediaType = pictureType(bytes);
    if (mediaType === undefined) continue;
    const sha256 = await sha256Of(bytes);
    io.out(`${name}: ${sha256}, ${named.has(sha256) ? "what right looks like" : "no check names it"}`);
    photos.push({ sha256, mediaType, bytes });
  }
  return photos;
}
