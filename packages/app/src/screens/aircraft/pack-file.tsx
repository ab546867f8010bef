import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { saveFile } from "../../frame/save-file.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { Keep } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { tally } from "../../words/figures.ts";

interface PackFileProps {
  readonly open: OpenAircraft;
  readonly text: string;
}

/** The book with its pictures of what right looks like, as one file. */
export function PackFile({ open, text }: PackFileProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [missing, setMissing] = useState(0);
  const { book, registration } = open;
  const save = () =>
    keeping.keep(async () => {
      const { file, left } = await packOf(keep, book, text);
      setMissing(left);
      saveFile(file, `${registration.toLowerCase()}-rev-${book.revision}.zip`);
    });
  return (
    <>
      <button type="button" className="button" aria-busy={keeping.busy} onClick={() => void save()}>
        {keeping.busy ? "Packing" : "Save the book with its pictures"}
      </button>
      {missing === 0 ? null : (
        <p role="status">
          {tally(missing, "picture")} of it {missing === 1 ? "is" : "are"} not on this device and could not be
          fetched: left out of the file.
        </p>
      )}
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
    </>
  );
}

async function packOf(keep: Keep, book: OpenAircraft["book"], text: string) {
  const { photosOf, pictureType, writePack } = await import("@witnessmark/pack");
  const photos = [];
  let left = 0;
  for (const sha256 of photosOf(book)) {
    const blob = await keep.photo(sha256);
    const bytes = blob === null ? undefined : new Uint8Array(await blob.arrayBuffer());
    const mediaType = bytes === undefined ? undefined : pictureType(bytes);
    if (bytes === undefined || mediaType === undefined) left += 1;
    else photos.push({ sha256, mediaType, bytes });
  }
  const file = new Blob([await writePack({ text, photos })], { type: "application/zip" });
  return { file, left };
}
