import type { Check } from "@witnessmark/book";
import { PhotoStrip } from "../../frame/photo-strip.tsx";

/** The book's picture of what right looks like, as a part of the check's list; nothing where it has none. */
export function RightLooks({ check }: { readonly check: Pick<Check, "photo" | "title"> }) {
  if (check.photo === undefined) return null;
  return (
    <>
      <dt>Looks right</dt>
      <dd>
        <PhotoStrip
          photos={[{ sha256: check.photo, recordedAt: "" }]}
          about={`what right looks like: ${check.title}`}
        />
      </dd>
    </>
  );
}
