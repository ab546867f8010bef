import { basename, join } from "node:path";
import { endingOf } from "@witnessmark/pack";
import { type Command, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { packOf } from "../pack-file.ts";

export const bookUnpackCommand: Command = {
  words: ["book", "unpack"],
  usage: "book unpack <file.zip> [--output folder]",
  about: "Takes a book with its pictures apart, after everything in it was looked at.",
  options: { output: { type: "string" } },
  async run(given) {
    const { io } = given;
    const path = oneWord(given, bookUnpackCommand, "a book with its pictures");
    const { text, photos } = await packOf(io, path);
    const folder = textOption(given, "output") ?? basename(path).replace(/\.zip$/i, "");
    await io.makeFolder(join(folder, "photos"));
    await io.writeBytes(join(folder, "book.yaml"), text);
    for (const { sha256, mediaType, bytes } of photos) {
      await io.writeBytes(join(folder, "photos", `${sha256}.${endingOf(mediaType)}`), bytes);
    }
    io.out(`${folder}: the book and ${photos.length === 1 ? "1 picture" : `${photos.length} pictures`}.`);
    return EXIT.done;
  },
};
