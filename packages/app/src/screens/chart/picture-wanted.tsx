import type { ChangeEvent } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import type { Keeping } from "../../frame/use-keeping.ts";
import { PhotoButton } from "../walk/photo-button.tsx";

interface PictureWantedProps {
  readonly kind: "table" | "envelope";
  readonly keeping: Keeping;
  readonly onPicture: (file: Blob) => void;
  /** Absent where nothing can be pasted. */
  readonly onPaste: (() => void) | undefined;
}

/** Asks for the picture of a paper; what is wrong with the one that was given stands right under it. */
export function PictureWanted({ kind, keeping, onPicture, onPaste }: PictureWantedProps) {
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.currentTarget.files?.[0];
    if (file !== undefined) onPicture(file);
    event.currentTarget.value = "";
  };
  const what = kind === "table" ? "chart" : "envelope";
  return (
    <>
      <PhotoButton
        label={keeping.busy ? "Opening" : `Photograph the ${what}`}
        className="button filled tall full"
        onPhoto={onPicture}
      />
      <label className="button full file-button" aria-busy={keeping.busy}>
        Choose a picture
        <input type="file" accept="image/*" onChange={choose} />
      </label>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      {onPaste === undefined ? null : (
        <button type="button" className="button full" onClick={onPaste}>
          Paste a table
        </button>
      )}
      <p className="chart-note">
        Lay the paper flat, in even light, and fill the picture with the {what}. It need not be taken straight
        on. A scanned page serves as well.
      </p>
      <p className="chart-note">
        The approved manual stays what counts: what is made here is a copy of it, and as good as its two check
        points.
      </p>
    </>
  );
}
