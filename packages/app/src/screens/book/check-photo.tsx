import { valueAt } from "@witnessmark/book";
import type { ChangeEvent } from "react";
import { PhotoStrip } from "../../frame/photo-strip.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { PhotoButton } from "../walk/photo-button.tsx";
import { useDesk } from "./use-desk.ts";

/**
 * The picture of what right looks like at a check: taken, chosen, replaced or taken out, each one step of the draft. The
 * picture itself is kept on this device before the draft names it, so that no net is needed, and stays there for an Undo.
 */
export function CheckPhoto({ index }: { readonly index: number }) {
  const desk = useDesk();
  const keep = useKeep();
  const keeping = useKeeping();
  const { registration, plain, draft } = desk;
  const path = ["checks", index, "photo"];
  const value = valueAt(plain ?? undefined, path);
  const title = valueAt(plain ?? undefined, ["checks", index, "title"]);
  const sha256 = typeof value === "string" && /^[0-9a-f]{64}$/.test(value) ? value : undefined;
  const faults = desk.faultsAt(path);
  if (draft === null && sha256 === undefined) return null;
  const take = (file: Blob) =>
    keeping.keep(async () => {
      desk.edit([{ set: path, to: await keep.keepBookPicture(registration, file) }]);
    });
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.currentTarget.files?.[0];
    if (file !== undefined) void take(file);
    event.currentTarget.value = "";
  };
  const isThere = value !== undefined;
  return (
    <section className="bk-photo" aria-label="Photo of what right looks like">
      <h3>Looks right</h3>
      {sha256 === undefined ? (
        <p className="note">
          {isThere ? "" : "A photo of it as it should be is shown on the walk, beside the words."}
        </p>
      ) : (
        <PhotoStrip
          photos={[{ sha256, recordedAt: "" }]}
          about={`what right looks like: ${typeof title === "string" ? title : "this check"}`}
        />
      )}
      {faults.map(({ expected, found }) => (
        <p className="bk-fault" key={expected}>
          Expected {expected}; found {found}.
        </p>
      ))}
      {draft === null ? null : (
        <div className="row-of-buttons">
          <PhotoButton
            label={keeping.busy ? "Keeping" : isThere ? "Take another" : "Take a photo"}
            className="button"
            onPhoto={(file) => void take(file)}
          />
          <label className="button file-button" aria-busy={keeping.busy}>
            {isThere ? "Choose another" : "Choose a picture"}
            <input type="file" accept="image/*" onChange={choose} />
          </label>
          {isThere ? (
            <button type="button" className="button" onClick={() => desk.edit([{ remove: path }])}>
              Take the photo out
            </button>
          ) : null}
        </div>
      )}
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
    </section>
  );
}
